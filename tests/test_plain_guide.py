"""Is the student led line by line: what stands first, what is next and why, and what they can do?"""

from __future__ import annotations

import io
from pathlib import Path

from tutor.cli import main
from tutor.model import load_set
from tutor.plain import run
from tutor.records.settings import GIVEN, ThisTime
from tutor.shipped import shipped_problems

FIRST = shipped_problems() / "first-steps"
WATCH = ("1", "show until close", "show")


def said(folder: Path, *lines: str, given: ThisTime = GIVEN) -> str:
    sink = io.StringIO()
    typed = io.StringIO("\n".join([*lines, ""]))
    run((load_set(FIRST),), keep=folder, source=typed, sink=sink, given=given)
    return sink.getvalue()


def test_after_a_watched_problem_the_next_one_leaves_half_to_the_student(tmp_path: Path) -> None:
    told = said(tmp_path, *WATCH, "next", "begin")
    watched, _, half = told.partition("You have left")[0].partition("Problem: Lamp arm")
    assert "You can watch before you try" in watched
    assert "Next: Lamp arm over the ferry steps." in watched
    assert "You have watched one of these. Type begin" in half
    assert half.count("On the board: ") > 10
    assert "Which joint do you take next?" in half
    again = said(tmp_path, "next")
    assert "You were at 2. Lamp arm over the ferry steps, at the joints. Type next" in again
    assert "1. Bell frame on the quay, level 1, watched" in again


def test_alone_declines_and_a_place_can_be_named(tmp_path: Path) -> None:
    told = said(tmp_path, *WATCH, "next", "alone", "begin joints")
    assert "All of this one is yours." in told
    assert "Next: the joints, one after the other." in told
    assert "Type begin and one of watch" in said(tmp_path, "1", "2", "begin anywhere")


def test_nothing_of_it_is_said_where_it_is_switched_off(tmp_path: Path) -> None:
    told = said(tmp_path, "guide off", *WATCH, "problems", "2")
    assert "The guide is off." in told
    after = told.partition("The guide is off.")[2]
    assert "Next: Lamp" not in after
    assert "You have watched" not in after
    given = ThisTime(no_guide=True)
    assert (
        "You were at" not in said(tmp_path, "guide on", "leave", given=given).partition("guide")[0]
    )


def test_a_lesson_begins_as_the_command_line_says(tmp_path: Path) -> None:
    told = said(tmp_path, "2", given=ThisTime(begin="joints"))
    assert "Which joint do you take next?" in told
    assert "Type begin" not in told


def test_a_wrong_count_is_called_so(tmp_path: Path, capsys) -> None:
    said(tmp_path, "2", "2 5 6", "2 3 6", "3 3 6")
    assert main(["skills", "--keep", str(tmp_path)]) == 0
    assert "the counts [a wrong count]" in capsys.readouterr().out


def test_the_page_says_from_which_lines_it_is_judged_and_carries_the_caution(
    tmp_path: Path, capsys
) -> None:
    said(tmp_path, "2", "1 2", "2 5 6", "3 3 6", "1", "1 2")
    assert main(["skills", "--keep", str(tmp_path)]) == 0
    page = capsys.readouterr().out
    assert "wrong: Lamp arm over the ferry steps, the reasons" in page
    assert "right: Lamp arm over the ferry steps, the counts" in page
    assert "the latest answers decide" in page
    assert "To practise: replacing supports by their reactions. 0 of 1 first answers right." in page
    assert "not for the design of real structures" in page
    file = tmp_path / "page.md"
    assert main(["skills", "--keep", str(tmp_path), "--to", str(file)]) == 0
    assert "not for the design of real structures" in file.read_text("utf-8")
    file.write_text("mine", "utf-8")
    assert main(["skills", "--keep", str(tmp_path), "--to", str(file)]) == 2
    assert file.read_text("utf-8") == "mine"
    assert main(["skills", "--keep", str(tmp_path), "--to", str(file), "--replace"]) == 0
    assert page.rstrip().splitlines()[-1] in said(tmp_path, "skills")


def test_a_guess_is_answered_and_the_line_is_left_to_who_guessed(tmp_path: Path) -> None:
    told = said(tmp_path, "1", "show until reactions", "guess fy", "guess 1", "A_x = 0")
    told = told.partition("Find A_x, A_y and B_y.")[2]
    assert "Not sum of Fy yet. A_y and B_y are unknown in it; another has fewer unknowns." in told
    assert "Yes, sum of Fx. A_y and B_y are perpendicular to this direction and left out." in told
    assert "On the board" not in told
    assert "Right: sum of Fx of the whole truss holds." in told or "Right: A_x = 0" in told


def test_a_finished_problem_can_be_begun_with_other_numbers(tmp_path: Path) -> None:
    def told(*lines: str) -> str:
        sink, typed = io.StringIO(), io.StringIO("\n".join([*lines, ""]))
        stand = shipped_problems() / "components"
        run((load_set(stand),), keep=tmp_path, source=typed, sink=sink)
        return sink.getvalue()

    told("2", "show until close", "show")
    again = told("2", "3")
    assert "3. begin a new lesson with other numbers" in again
    began = again.partition("Problem: Stand of the comet seeker")[2]
    assert "down" in began
    assert "load 200 lb down" not in began
    told("2", "other numbers", "show")
    assert "with other numbers, at" in told("2")
