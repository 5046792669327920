"""No file, whatever is in it, takes much memory or is told at length."""

from __future__ import annotations

import tracemalloc
from pathlib import Path

import pytest

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
SLOW = {
    "many topics": HEAD + "topics = [" + '"t", ' * (ROOM // 5) + "]\n",
    "many members": HEAD + "members = [" + '"AB", ' * (ROOM // 6) + "]\n",
    "nested lists": f"{HEAD}members = {'[' * ROOM}\n",
    "nested lists that end": f"{HEAD}members = {'[' * (ROOM // 2)}{']' * (ROOM // 2)}\n",
}


@pytest.mark.parametrize("shape", SHAPES)
def test_a_file_made_to_be_large_is_refused_in_short_with_little_memory(
    tmp_path: Path, shape: str
) -> None:
    refused(tmp_path, SHAPES[shape])


@pytest.mark.slow
@pytest.mark.parametrize("shape", SLOW)
def test_a_file_of_many_parts_is_refused_in_short_with_little_memory(
    tmp_path: Path, shape: str
) -> None:
    refused(tmp_path, SLOW[shape])


def refused(folder: Path, text: str) -> None:
    """Read a file that cannot be used."""
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
