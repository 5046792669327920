"""No file, whatever is in it, takes much memory or is told at length."""

from __future__ import annotations

import re
import tracemalloc
from pathlib import Path

import pytest

from tutor.model import Defect
from tutor.model.read import outcome
from tutor.model.rules import Rules
from tutor.model.source import LARGEST

HEAD = 'title = "T"\nforce = "kN"\nlength = "m"\n'
ROOM = LARGEST - 400
MOST_BYTES = 150_000_000
MOST_SAID = 800
SHAPES = {
    "a long title": HEAD.replace('"T"', f'"{"T" * ROOM}"'),
    "a long story": f'{HEAD}story = """{"word " * (ROOM // 5)}"""\n',
    "a long name": f'{HEAD}members = ["AB"]\n[joints]\n{"A" * ROOM} = [0, 0]\n',
    "a long number": f'{HEAD}members = ["AB"]\n[joints]\nA = [{"9" * ROOM}, 0]\n',
    "a long formula": f'{HEAD}members = ["AB"]\n[joints]\nA = ["{"sqrt(" * (ROOM // 5)}", 0]\n',
    "many dots": f"{HEAD}a{'.a' * (ROOM // 2)} = 1\n",
    "a megabyte": f"{HEAD}{'#' * 1_000_000}",
}
CROWDED = {
    "many topics": "topics = [" + '"t", ' * (ROOM // 5) + "]",
    "many members": "members = [" + '"AB", ' * (ROOM // 6) + "]",
    "many numbers": "[vary]\nloads = { C = { down = [" + "1," * (ROOM // 2) + "] } }",
    "many words": "a = " + "b " * (ROOM // 2),
    "nested lists": "members = " + "[" * ROOM,
    "nested lists that end": f"members = {'[' * (ROOM // 2)}{']' * (ROOM // 2)}",
    "nested tables": "[vary]\nloads = " + "{ C = " * (ROOM // 6),
    "lists in tables": "loads = " + "[{at=" * (ROOM // 5),
    "closing brackets": "a = " + "]" * ROOM,
    "equals signs": "a " + "=" * ROOM,
}


@pytest.mark.parametrize("shape", SHAPES)
def test_a_file_made_to_be_large_is_refused_in_short_with_little_memory(
    tmp_path: Path, shape: str
) -> None:
    refused(tmp_path, SHAPES[shape])


@pytest.mark.parametrize("shape", CROWDED)
def test_a_file_of_too_many_parts_is_told_in_one_sentence(tmp_path: Path, shape: str) -> None:
    (defect,) = refused(tmp_path, f"{HEAD}{CROWDED[shape]}\n")
    assert re.fullmatch(
        r"the file has \d+ words, brackets, commas and =, more than 50000", defect.message
    )


def test_what_is_told_of_unknown_keys_is_the_same_however_many_there_are(tmp_path: Path) -> None:
    few, many = (
        refused(tmp_path, HEAD + "".join(f"x{place} = 1\n" for place in range(count)))
        for count in (300, 3000)
    )
    assert few[:200] == many[:200]
    assert many[-1].message.endswith("more defects follow")


def refused(folder: Path, text: str) -> tuple[Defect, ...]:
    """What is told of a file that cannot be used."""
    path = folder / "large.toml"
    path.write_text(text, "utf-8")
    tracemalloc.start()
    try:
        found = outcome(path, Rules())
        peak = tracemalloc.get_traced_memory()[1]
    finally:
        tracemalloc.stop()
    assert found.problem is None
    assert peak <= MOST_BYTES
    assert found.defects
    for defect in found.defects:
        assert len(defect.message) + len(defect.cure) <= MOST_SAID
    return found.defects
