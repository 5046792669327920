"""Every example in the notation reference is read as the reference says."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from truss_names import LETTERED

from tutor.notation import Reading, Unreadable, ValueReading, one_equation, read_line, value_of

PAGE = (Path(__file__).parents[2] / "docs" / "notation.md").read_text("utf-8")
MEANINGS = re.findall(r"^\| `([^`]+)` \| `([^`]+)` \|$", PAGE, re.MULTILINE)
REFUSALS = re.findall(r"^\| `([^`]+)` \| ([^`|]+) \|$", PAGE, re.MULTILINE)
RESULTS = re.findall(r"`([^`]+)`", PAGE.partition("## Results")[2].partition("##")[0])
LABELS = re.findall(r"`([^`]+:)`", PAGE)


def test_the_reference_has_examples_of_every_kind() -> None:
    counts = [len(found) for found in (MEANINGS, REFUSALS, RESULTS, LABELS)]
    assert all(count >= 5 for count in counts), counts


@pytest.mark.parametrize(("typed", "meant"), MEANINGS)
def test_an_example_means_what_stands_beside_it(typed: str, meant: str) -> None:
    one, other = one_equation(read_line(typed, LETTERED)), one_equation(read_line(meant, LETTERED))
    assert isinstance(one, Reading), one
    assert isinstance(other, Reading), other
    assert set(one.names) == set(other.names)
    for name in (*one.names, None):
        assert one.coefficient(name)[0] == pytest.approx(other.coefficient(name)[0])


@pytest.mark.parametrize(("typed", "said"), REFUSALS)
def test_an_unreadable_example_is_told_what_the_reference_says(typed: str, said: str) -> None:
    found = one_equation(read_line(typed, LETTERED))
    assert isinstance(found, Unreadable), found
    assert found.message == said


@pytest.mark.parametrize("typed", [text for text in RESULTS if any(map(str.isdigit, text))])
def test_an_example_of_a_result_is_read(typed: str) -> None:
    found = value_of(read_line(typed, LETTERED))
    assert isinstance(found, ValueReading), found


@pytest.mark.parametrize("label", LABELS)
def test_an_example_of_a_label_is_read(label: str) -> None:
    found = one_equation(read_line(f"{label} F_AB = 0", LETTERED))
    assert isinstance(found, Reading), found
    assert found.label is not None
