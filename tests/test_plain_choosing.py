"""Is a problem among many found by ear, and every lesson kept on it?"""

from __future__ import annotations

import io
from dataclasses import replace
from pathlib import Path

from tutor.lesson import CAUTION
from tutor.model import Problem, ProblemSet, load_problem
from tutor.plain import run
from tutor.records import Keep
from tutor.session import open_session
from tutor.shipped import shipped_problems

LAMP = load_problem(shipped_problems() / "first-steps" / "lamp-arm.toml")
SETS = tuple(
    ProblemSet(
        title,
        tuple(
            replace(LAMP, title=f"{title} {n}", source=Path(f"{title}{n}.toml"), level=n % 3 + 1)
            for n in range(12)
        ),
    )
    for title in ("Masts", "Cranes")
)


def heard(typed: str, keep: Path, sets: tuple[ProblemSet, ...] = SETS) -> list[str]:
    sink = io.StringIO()
    assert run(sets, keep=keep, source=io.StringIO(typed), sink=sink) == 0
    return sink.getvalue().splitlines()


def test_of_many_problems_the_sets_are_said_first_and_each_is_heard_by_its_number(
    tmp_path: Path,
) -> None:
    said = heard("", tmp_path)
    assert "Set 1: Masts. Problems 1 to 12, levels 1 to 3." in said
    assert "Set 2: Cranes. Problems 13 to 24, levels 1 to 3." in said
    assert not any(line.startswith("1. ") for line in said)
    said = heard("set 2\n", tmp_path)
    assert "13. Cranes 0, level 1" in said
    assert not any("Masts 3" in line for line in said)
    assert "24. Cranes 11, level 3" in heard("all\n", tmp_path)
    assert "Cannot read: the sets are 1 to 2." in heard("set 3\n", tmp_path)


def test_a_problem_is_opened_by_the_number_it_has_in_its_set(tmp_path: Path) -> None:
    assert "Problem: Cranes 2. Level 3 of 6." in heard("15\n", tmp_path)
    assert "Problem: Masts 4. Level 2 of 6." in heard("set 1\n5\n", tmp_path)


def test_the_problems_of_one_set_are_said_at_once(tmp_path: Path) -> None:
    assert "1. Masts 0, level 1" in heard("", tmp_path, SETS[:1])


def test_the_caution_is_heard_once_in_a_lesson_that_ends(tmp_path: Path) -> None:
    done = "show until close\nshow\n"
    said = heard(f"1\n{done}leave\n", tmp_path, (ProblemSet("Test", (LAMP,)),))
    assert sum(CAUTION in line for line in said) == 1
    assert sum(CAUTION in line for line in heard("leave\n", tmp_path)) == 1


def test_every_kept_lesson_can_be_gone_on_with_however_many_there_are(tmp_path: Path) -> None:
    kept: list[Path] = []
    for count in range(8):
        session = open_session(LAMP, Keep(tmp_path))
        for text in ("up", "down"):
            session.do("reasons", chosen=[text] * (count + 1))
        kept.append(session.journal.path)
        session.close()
    one: tuple[Problem, ...] = (LAMP,)
    said = heard("all\nleave\n", tmp_path, (ProblemSet("Test", one),))
    assert "Type all to hear 3 older too." in said
    assert any(line.startswith("8. go on where you left on ") for line in said)
    assert "9. begin a new lesson; the old one stays kept" in said
    assert any(
        "type a number from 1 to 8 to go on, 9 to" in line
        for line in heard("all\n10\n", tmp_path, (ProblemSet("Test", one),))
    )
    before = {path: path.stat().st_size for path in kept}
    heard("all\n8\nshow\nleave\n", tmp_path, (ProblemSet("Test", one),))
    assert sum(path.stat().st_size > before[path] for path in kept) == 1


def test_a_kept_file_that_is_no_lesson_is_told_of_once_also_where_a_problem_is_opened_at_once(
    tmp_path: Path,
) -> None:
    (tmp_path / "lamp-arm-2026-11-20-abcdef01.jsonl").write_text("garbage\n", "utf-8")
    one = (ProblemSet("Test", (LAMP,)),)
    for sets, typed in ((one, "leave\n"), (SETS, "1\nproblems\n1\nleave\n")):
        said = heard(typed, tmp_path, sets)
        assert sum("abcdef01" in line for line in said) == 1
        assert sum("There is no whole lesson" in line for line in said) == 1


def test_what_comes_next_is_announced_by_one_word(tmp_path: Path) -> None:
    said = heard("show until joints\nleave\n", tmp_path, (ProblemSet("Test", (LAMP,)),))
    assert "Next: the joints, one after the other." in said
    assert not any(line.startswith("Note: Next") for line in said)
