"""How likely a sample finds what was forged is as the instructors' guide says; a long wait is told."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from classroom import handed_in

from tutor.cohort.folder import files_in
from tutor.cohort.outlook import outlook
from tutor.cohort.sampling import sample
from tutor.lesson import Event
from tutor.lesson.outcome import Outcome
from tutor.lesson.replay import KeptEvent

LESSON = [
    KeptEvent(Event("type", {"text": str(n)}, float(n)), Outcome("judge", True, "right"), False)
    for n in range(20)
]
SEEDS = 1500


@pytest.mark.parametrize(("forged", "missed"), [(1, 0.95), (10, 0.5), (20, 0.0)])
def test_forged_answers_are_missed_as_often_as_the_guide_says(forged: int, missed: float) -> None:
    """Of a lesson with twenty answers taken as right."""
    wrong = set(range(forged))
    times = sum(not sample(LESSON, f"seed {n}") & wrong for n in range(SEEDS))
    assert times / SEEDS == pytest.approx(missed, abs=0.06)
    assert forged < len(LESSON) or times == 0


@pytest.fixture(scope="module")
def of_another(course_folder: Path, tmp_path_factory: pytest.TempPathFactory):
    """Files of a class: of this version, and of another."""
    found = {}
    data = handed_in(course_folder, "s1041", most={"eel-trap": 24, "trestle": 16})
    folder = tmp_path_factory.mktemp("handed-in")
    for kind, judge in (("this", None), ("other", b'"judge":"0123456789 ')):
        (folder / kind).mkdir()
        content = data if judge is None else re.sub(rb'"judge":"[0-9a-f]+ ', judge, data)
        (folder / kind / "s1041.txt").write_bytes(content)
        found[kind] = files_in(folder / kind)
    return found


def test_that_a_class_is_judged_anew_is_told_where_that_is_long(of_another, monkeypatch) -> None:
    this, other = of_another["this"], of_another["other"]
    assert outlook(other, False, 1) == ""
    assert outlook(this * 600, False, 1) == ""
    told = outlook(other * 600, False, 1)
    answers, minutes = (int(n.replace(",", "")) for n in re.findall(r"[\d,]*\d", told))
    assert "another version" in told
    assert answers > 6000
    assert minutes == pytest.approx(answers / 250 / 60, abs=0.6) or "seconds" in told
    assert outlook(this * 600, True, 1).startswith(told.partition(" were")[0])
    assert "another version" not in outlook(this * 600, True, 1)
    assert outlook(other * 600, False, 10**6) == ""
