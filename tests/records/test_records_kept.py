"""Does everything that an earlier version kept still open, with all its values?

The folders of `kept/` hold what each version wrote, and `expected.json` what was found then. Nothing
in them is ever changed; `keeping.py` makes the folder of a new version.
"""

from __future__ import annotations

import json
import shutil
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from keeping import KEPT, standing

from tutor.drafting import Draft, lines_of
from tutor.model import load_problem
from tutor.records import Keep
from tutor.records.kept_lines import TRUSS, KeptLines
from tutor.session import open_session
from tutor.workbook import open_workbook

JUDGED_ANEW = ("tries", "hints", "lines", "step", "joint")
"""What journals without outcomes say only by being judged anew: a later judge may count otherwise."""
VERSIONS = sorted(path.name for path in KEPT.iterdir() if path.is_dir())


def parts_of(what: str) -> Iterator[tuple[str, str, Any]]:
    """Version, name and what is expected, of everything kept of one sort."""
    for version in VERSIONS:
        expected = json.loads((KEPT / version / "expected.json").read_text("utf-8"))
        for name, each in expected[what].items():
            yield version, name, each


@pytest.fixture
def folder(tmp_path: Path, version: str) -> Path:
    """A copy of what a version kept."""
    return Path(shutil.copytree(KEPT / version, tmp_path / version))


def is_judged(journal: Path) -> bool:
    """Whether a journal holds what came of its events, so that no judge is asked."""
    return b'"kind":"outcome' in journal.read_bytes()


@pytest.mark.parametrize(("version", "name", "expected"), parts_of("lessons"))
def test_a_lesson_of_an_earlier_version_opens_with_everything_it_had(
    folder, version, name, expected
):
    problem = load_problem(folder / "problems" / f"{expected['problem']}.toml")
    judged = () if is_judged(folder / name) else JUDGED_ANEW
    session = open_session(problem, Keep(folder), folder / name)
    session.close()
    assert session.skipped == 0
    found = json.loads(json.dumps(standing(session.lesson)))
    wanted = {key: value for key, value in expected.items() if key != "problem"}
    for unknown, (text, value, radius, how) in wanted["results"].items():
        assert found["results"].get(unknown) == [text, pytest.approx(value), radius, how], unknown
    kept = {key for key in wanted if key not in ("results", *judged)}
    assert {key: found[key] for key in kept} == {key: wanted[key] for key in kept}


@pytest.mark.parametrize(("version", "name", "expected"), parts_of("homeworks"))
def test_a_homework_of_an_earlier_version_opens_with_everything_it_had(
    folder, version, name, expected
):
    problem = load_problem(folder / "problems" / f"{name}.toml")
    book = open_workbook(problem, Keep(folder))
    assert list(book.kept.read()) == expected
    assert not book.paper.blank
    assert book.news() == ()


@pytest.mark.parametrize(("version", "name", "expected"), parts_of("drawings"))
def test_a_drawing_of_an_earlier_version_opens_as_it_was(folder, version, name, expected):
    draft = Draft()
    for line in KeptLines(folder / f"drawing-{name}", TRUSS).read():
        assert draft.type(line).taken, line
    assert list(lines_of(draft.problem)) == expected
