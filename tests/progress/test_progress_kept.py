"""What a lesson came to is found once, kept beside the lessons, and never believed of another file."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from student import Student

from tutor.lesson import Lesson
from tutor.model import Problem, load_problem
from tutor.progress import kept
from tutor.progress.account import account_of, as_record, from_record
from tutor.progress.attained import attained_of
from tutor.progress.guide import Listed, guide_for
from tutor.progress.kept import Summaries
from tutor.progress.where import DONE, WATCHED
from tutor.records import Keep
from tutor.records.belonging import key_of
from tutor.session import open_session
from tutor.shipped import shipped_problems

FOLDER = shipped_problems() / "first-steps"
BELL = load_problem(FOLDER / "bell-frame.toml")
LAMP = load_problem(FOLDER / "lamp-arm.toml")


def walked(keep: Keep, problem: Problem = BELL, until: str = "") -> Lesson:
    """A whole walk, all of it or its first steps shown."""
    session = open_session(problem, keep)
    if until == "watch":
        while session.do("show").accepted:
            pass
    elif until:
        session.do("show", until=until)
    if until != "watch":
        Student(session.lesson, lambda kind, **data: session.do(kind, **data)).walk()
    session.close()
    return session.lesson


@pytest.mark.parametrize("until", ["", "watch", "half", "joints", "reactions"])
def test_an_account_says_what_was_left_to_the_student(tmp_path: Path, until: str) -> None:
    keep = Keep(tmp_path)
    account = account_of(walked(keep, LAMP, until).state)
    assert account.stage == (until or "alone")
    assert account.done
    assert from_record(json.loads(json.dumps(as_record(account)))) == account
    if until == "watch":
        assert (account.answers, account.share) == ((), 1.0)
    else:
        assert 0.0 < account.share < 1.0
    (found,) = attained_of(Summaries(keep)).worked
    assert found.account == account
    assert found.kind == "first-steps"


def test_what_was_found_is_kept_and_found_anew_only_for_files_that_changed(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    keep = Keep(tmp_path)
    walked(keep, BELL, "watch")
    walked(keep, LAMP, "watch")
    first = attained_of(Summaries(keep))
    gone_through = []
    real = kept.account_in
    monkeypatch.setattr(kept, "account_in", lambda *a: gone_through.append(a) or real(*a))
    assert attained_of(Summaries(keep)) == first
    assert gone_through == []
    path = next(each.path for each in keep.lessons() if each.title == BELL.title)
    session = open_session(BELL, keep, path)
    session.do("undo")
    session.close()
    again = attained_of(Summaries(keep))
    assert len(gone_through) == 1
    assert again != first


@pytest.mark.parametrize(
    "damage",
    [
        lambda text: text[:-40],
        lambda text: "[]",
        lambda text: text.replace('"form": 1', '"form": 0'),
        lambda text: text.replace('"step": "table"', '"step": "no such step"'),
        lambda text: text.replace('"by": "', '"by": "x'),
        lambda text: text.replace('"answers": [', '"answers": [[1], '),
    ],
)
def test_a_damaged_file_of_accounts_is_made_anew(tmp_path: Path, damage) -> None:
    keep = Keep(tmp_path)
    walked(keep, BELL, "watch")
    first = attained_of(Summaries(keep))
    file = tmp_path / kept.FILE_NAME
    text = file.read_text("ascii")
    assert damage(text) != text
    file.write_text(damage(text), "ascii")
    assert attained_of(Summaries(keep)) == first
    assert file.read_text("ascii") == text


def test_a_damaged_lesson_is_told_though_it_was_known(tmp_path: Path) -> None:
    keep = Keep(tmp_path)
    walked(keep, BELL, "watch")
    attained_of(Summaries(keep))
    (each,) = keep.lessons()
    data = bytearray(each.path.read_bytes())
    data[len(data) // 2] ^= 1
    each.path.write_bytes(bytes(data))
    (summary,) = Summaries(keep).look()
    assert summary.kept.notice
    assert summary.account is None


def test_the_guide_says_where_each_problem_stands_and_which_was_last(tmp_path: Path) -> None:
    keep = Keep(tmp_path)
    walked(keep, BELL, "watch")
    walked(keep, LAMP)
    rows = [Listed(each, "a set") for each in (BELL, LAMP)]
    guide = guide_for(rows, Summaries(keep))
    assert guide.places == {key_of(BELL): WATCHED, key_of(LAMP): DONE}
    assert guide.last == key_of(LAMP)
    ahead = guide.next()
    assert ahead is not None
    assert (ahead.key, ahead.skill) == (key_of(BELL), "")
    assert "only watched" in ahead.why
    assert guide.attained.stage(BELL) in ("joints", "reactions", "alone")
    assert guide_for(rows, Summaries(Keep(tmp_path / "none"))).next().key == key_of(BELL)
