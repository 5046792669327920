"""Does checking a homework go line by line, keep what was entered, and give nothing away?"""

from __future__ import annotations

import io
import re
import tempfile
from datetime import UTC, datetime
from pathlib import Path
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from lines import figures
from students_work import Homework, homework
from transcripts import Typist

from tutor.homework import right_lines
from tutor.judge import Fx, M
from tutor.model import Problem, ProblemSet, load_problem
from tutor.model.caution import CAUTION
from tutor.plain import run
from tutor.plain.homework import BY_WORD, GOES_ON, KEPT, NO_HINT, NOTHING, OPENING
from tutor.plain.voice import FAULT
from tutor.records import Keep
from tutor.shipped import shipped_problems
from tutor.statics import solve
from tutor.workbook import open_workbook

ARM = load_problem(shipped_problems() / "first-steps" / "lamp-arm.toml")
RIGHT = "A_x = 360 left, A_y = 150, B_x = 360"
CONTROL = re.compile("[\x00-\x09\x0b-\x1f\x7f-\x9f\u200b-\u200f\u202a-\u202e\u2066-\u2069]")
QUIET = [word for word in BY_WORD if word not in ("save", "problems", "lesson")]
TYPED = st.one_of(
    st.text(max_size=40),
    st.sampled_from(QUIET),
    st.sampled_from(("AB = 7 C", "AC 360 T", RIGHT, "ΣFx at C: 3 = 0", "strike 1", "joint C")),
    st.text(alphabet="ABCFxyT_ =+-*/().,:0123456789\x1b[m\u202e", max_size=40),
).map(lambda text: text.replace("\n", " ").replace("\r", " "))


WHEN = datetime(2031, 5, 6, 7, 8, tzinfo=UTC)


def check(lines: list[str], keep: Path, problem: Problem = ARM) -> list[str]:
    """All that is said and typed while a homework on `problem` is checked."""
    sink = io.StringIO()
    sets = (ProblemSet("Test", (problem,)),)
    status = run(sets, keep=keep, source=Typist(lines, sink), sink=sink, first="homework")
    assert status == 0
    return sink.getvalue().splitlines()


def test_a_right_homework_is_right_at_once(tmp_path: Path) -> None:
    said = check([RIGHT, "AB = 150 T", "AC, 360, T", "BC = 390 C", "check", "hint"], tmp_path)
    assert "Right: Everything that was checked is right." in said
    assert NO_HINT in said


def test_nothing_is_judged_before_it_is_asked_for(tmp_path: Path) -> None:
    said = check(["check", "hint", "AC = 99 C"], tmp_path)
    assert said.count(NOTHING) == 2
    assert said[said.index("> AC = 99 C") + 1] == "Noted: AC = 99 C."
    assert not any(line.startswith(("Wrong", "Right", "Checked")) for line in said)


def test_a_mistake_is_told_by_its_place_and_then_by_levels(tmp_path: Path) -> None:
    said = check([RIGHT, "AC = 360 C", "check", "hint", "hint", "hint", "hint"], tmp_path)
    assert "Wrong: AC." in [line.partition(" (")[0] + "." * (" (" in line) for line in said]
    levels = [line.partition(":")[0] for line in said if line.startswith("Hint, ")]
    assert levels[:3] == ["Hint, look", "Hint, reason", "Hint, place"]
    assert set(levels[3:]) == {"Hint, line"}


def test_after_the_first_mistake_is_mended_the_check_goes_on_to_the_next(tmp_path: Path) -> None:
    said = check(
        ["A_x = 360, A_y = 150, B_x = 360", "BC = 390 T", "check", "A_x = 360 left", "check"],
        tmp_path,
    )
    wrong = [line for line in said if line.startswith("Wrong:")]
    assert "A_x" in wrong[0]
    assert "A_x" not in wrong[1]
    assert "BC" in wrong[1]


def test_what_was_entered_is_kept_and_comes_up_again(tmp_path: Path) -> None:
    said = check([RIGHT, "ΣFx at C: 0 = 0", "AC = 360 T", "undo", "BC = 390 C"], tmp_path)
    assert KEPT in said
    said = check(["draw A_y up", "check"], tmp_path)
    assert GOES_ON in said
    assert "BC = 390 C" in said
    assert not any(line.startswith("AC = ") for line in said)
    assert Keep(tmp_path).lessons() == ()


def test_the_last_check_is_remembered_after_a_restart(tmp_path: Path) -> None:
    """Components exchanged at C and carried on; mended at C alone, on another day."""
    problem, keep = ARM, Keep(tmp_path)
    true = solve(problem).values
    book = open_workbook(problem, keep)
    for name, value in true.items():
        book.write(f"{name} = {value * (1.3 if name in problem.member else 1):.5g}")
    wrong = {f.name for f in book.review.findings if f.state != "right"}
    assert wrong <= set(problem.member)
    assert book.hint() is not None
    book.kept.close()
    again = open_workbook(problem, keep)
    assert set(again.before["forces"]) == wrong  # type: ignore[call-overload]
    assert again.hints_given == [1, 0, 0]
    assert again.paper == book.paper
    assert "Hints used" in again.report(WHEN)
    assert "the principle (1)" in again.report(WHEN)


def test_a_blank_paper_is_one_word_away_and_so_is_the_old_one(tmp_path: Path) -> None:
    check([RIGHT], tmp_path)
    assert NOTHING in check(["clear", "check"], tmp_path)
    assert GOES_ON not in check([RIGHT, "clear", "undo"], tmp_path)
    assert GOES_ON in check([], tmp_path)


def test_what_cannot_be_kept_is_said_once_and_the_check_goes_on(tmp_path: Path) -> None:
    (tmp_path / "own").write_text("no folder")
    said = check([RIGHT, "AC = 360 T", "check"], tmp_path)
    assert len([line for line in said if "not being saved" in line]) == 1
    assert KEPT not in said
    assert "Right: Everything that was checked is right." in said


def values_typed(done: Homework) -> list[str]:
    """The values of a homework, each as a line."""
    work = done.work()
    return [f"{n} = {v}" for part in ("reactions", "forces") for n, v in work[part].items()]


@settings(max_examples=8)
@given(st.integers(0, 10**9))
def test_any_paper_comes_up_again_as_it_was(seed: int) -> None:
    both = homework(seed)
    if both is None:
        return
    done = both[0]
    typed = values_typed(done)
    with tempfile.TemporaryDirectory() as folder:
        book = open_workbook(done.problem, Keep(Path(folder)))
        for text in (
            *typed,
            f"order {' '.join(done.order)}",
            f"push {done.problem.members[0].name}",
        ):
            assert book.write(text).refused == ()
        for about, text in done.written_lines(Random(seed)):
            book.write(f"joint {about.joint}" if about.joint else "whole")
            axis = "x" if about == Fx(about.joint) else "y"
            if not isinstance(about, M):
                book.write(f"ΣF{axis}: {text}")
        assert open_workbook(done.problem, Keep(Path(folder))).paper == book.paper


def test_the_report_is_saved_with_its_picture_and_over_no_other_unasked(tmp_path: Path) -> None:
    name = tmp_path / "check it.md"
    said = check([RIGHT, "AB = 9 T", "hint", f"save {name}", "save"], tmp_path / "keep")
    assert f"Saved in {name}. The picture of the truss is beside it." in said
    report = name.read_text("utf-8")
    assert report.startswith(f"# Check of a homework: {ARM.title}")
    assert CAUTION in report
    assert "![The truss](check%20it.svg)" in report
    assert "- the principle (1)" in report
    assert "<svg" in (tmp_path / "check it.svg").read_text("utf-8")
    other = [RIGHT, "AB = 150 T", f"save {name}"]
    said = check(other, tmp_path / "keep")
    assert any(line.startswith("Not saved yet: check it.md is there already") for line in said)
    assert name.read_text("utf-8") == report
    check([*other[:-1], f"save over {name}"], tmp_path / "keep")
    assert name.read_text("utf-8") != report


def test_the_caution_stands_beside_every_result(tmp_path: Path) -> None:
    for word in ("check", "bodies"):
        said = check([RIGHT, "AB = 9 T", word, "paper"], tmp_path)
        assert CAUTION in said[said.index(f"> {word}") : said.index("> paper")]


def test_one_goes_from_lesson_to_homework_and_back(tmp_path: Path) -> None:
    said = check(["lesson", "homework", "leave"], tmp_path)
    assert said.count(OPENING) == 2
    assert any("two-force member" in line for line in said)


def test_the_last_hint_is_the_line_with_the_students_own_values(tmp_path: Path) -> None:
    book = open_workbook(ARM, Keep(tmp_path))
    book.write("A_x = 360 left, A_y = 150, B_x = 360")
    book.write("AC = 360 C, BC = 390 C")
    hints = [book.hint() for _ in range(3)]
    assert [hint.level for hint in hints if hint is not None] == [1, 2, 3]
    lines = right_lines(ARM, book.paper.work(ARM), book.review)
    assert hints[2] is not None
    assert hints[2].lines == tuple(f"{heading}: {line}" for heading, line in lines)


@settings(max_examples=50)
@given(st.lists(TYPED, max_size=10))
def test_whatever_is_typed_it_goes_on_in_plain_text(lines: list[str]) -> None:
    sink = io.StringIO()
    with tempfile.TemporaryDirectory() as keep:
        source = io.StringIO("\n".join([*lines, "check"]))
        sets = (ProblemSet("Test", (ARM,)),)
        assert run(sets, keep=Path(keep), source=source, sink=sink, first="homework") == 0
    assert FAULT not in sink.getvalue()
    assert CONTROL.search(sink.getvalue()) is None
    assert CAUTION in sink.getvalue()


@settings(max_examples=8)
@given(st.integers(0, 10**9))
def test_no_true_value_is_told_before_the_last_hint(seed: int) -> None:
    both = homework(seed)
    if both is None:
        return
    done = both[0]
    typed = values_typed(done)
    with tempfile.TemporaryDirectory() as keep:
        said = check([*typed, "check", "hint", "hint", "bodies"], Path(keep), done.problem)
    spoken = "\n".join(line for line in said if not line.startswith(("> ", "Noted: ")))
    told = set(re.findall(r"(?<![A-Za-z\d.])\d+(?:\.\d+)?(?![\d.])", spoken))
    told -= set(re.findall(r"\d+(?:\.\d+)?", repr(done.problem)))
    told -= set(re.findall(r"\d+(?:\.\d+)?", "\n".join(said[: said.index(OPENING) + 1])))
    own = {f"{abs(v):g}" for v in done.values.values()}
    for value in solve(done.problem).values.values():
        for count in (3, 4, 5):
            text = figures(abs(value), count)
            assert not ({text, text.rstrip("0").rstrip(".")} - own) & told


@pytest.mark.parametrize("word", BY_WORD)
def test_every_word_of_a_check_is_told_of(word: str, tmp_path: Path) -> None:
    assert BY_WORD[word].typed
    said = check(["help"], tmp_path)
    assert f"{BY_WORD[word].typed}: {BY_WORD[word].does}" in said


def test_the_first_wrong_place_is_walked_with_what_is_right_given(tmp_path: Path) -> None:
    typed = [RIGHT, "AB = 150 T, BC = 390 C, AC = 360 C", "order C A B", "walk"]
    said = check([*typed, "ΣFx: -F_AC - 12/13 F_BC = 0", "homework", "check"], tmp_path)
    assert any("of your values stand" in line for line in said)
    walked = said[said.index("> walk") :]
    assert any(line.startswith("Right:") for line in walked)
    assert GOES_ON in walked


def test_there_is_nothing_to_walk_where_nothing_is_wrong(tmp_path: Path) -> None:
    said = check(["walk", RIGHT, "walk"], tmp_path)
    assert NOTHING in said
    assert NO_HINT in said
