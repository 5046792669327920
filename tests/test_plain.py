"""Does the lesson go line by line, whatever is typed, and does it say what a screen would show?"""

from __future__ import annotations

import fcntl
import io
import os
import re
import select
import struct
import subprocess
import sys
import tempfile
import termios
from collections.abc import Iterable
from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import Any, get_args

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from student import Student, as_typed

from tutor.deeds.answers import ANSWERS
from tutor.deeds.deed import Do, Tell
from tutor.deeds.words import COMMANDS, command
from tutor.judge.called import CALLED, called
from tutor.judge.claims import CLAIMS
from tutor.judge.mistakes import KINDS
from tutor.lesson import CAUTION, Lesson, Reply, Say
from tutor.lesson.replay import events_of
from tutor.lesson.reply import AskKind
from tutor.lesson.steps.table import time_in_words
from tutor.model import Problem, ProblemSet, load_problem
from tutor.model.caution import SHORT_CAUTION
from tutor.plain import run
from tutor.plain.spelling import spelled, typed_as_heard
from tutor.plain.telling import FIRST_WORD, HOW, reply_lines, table_lines
from tutor.plain.voice import FAULT, Voice
from tutor.records import Keep
from tutor.session import NOT_CHECKED
from tutor.shipped import shipped_problems

FOLDER = shipped_problems() / "first-steps"
CONTROL = re.compile("[\x00-\x09\x0b-\x1f\x7f-\x9f\u200b-\u200f\u202a-\u202e\u2066-\u2069]")
DAVIT = load_problem(FOLDER / "lamp-arm.toml")


def converse(typed: str, *problems: Problem, keep: Path, sink: io.StringIO | None = None) -> str:
    """What is said when `typed` is typed, one lesson after another on these problems."""
    sink = sink or io.StringIO()
    sets = (ProblemSet("Test", problems or (DAVIT,)),)
    assert run(sets, keep=keep, source=io.StringIO(typed), sink=sink) == 0
    return sink.getvalue()


def script(problem: Problem) -> list[str]:
    """What a student who slips at every place types, from the first question to the table."""
    lesson = Lesson(problem)
    typed: list[str] = []

    def do(kind: str, **data: Any) -> Reply:
        typed.append(as_typed(lesson.ask, kind, data))
        return lesson.take(kind, **data)

    Student(lesson, do).walk()
    return typed


SCRIPT = script(DAVIT)
WORDS = [word for each in COMMANDS for word in each.words if word not in ("save", "problems")]
NAMES = [
    "A",
    "B",
    "C",
    "AB",
    "CA",
    "A_x",
    "F_AB",
    "load C",
    "two",
    "1",
    "at C",
    "30",
    "4, 0",
    "12 C",
]
ANYTHING = st.one_of(
    st.text(max_size=40),
    st.text(alphabet="ABCFxyT_ =+-*/().0123456789°ΣMk{}\x1b[m\u202e", max_size=40),
    st.lists(st.sampled_from([*WORDS, *NAMES, "=", "+", "-", "0"]), max_size=5).map(" ".join),
    st.tuples(st.sampled_from(WORDS), st.text(max_size=12)).map(" ".join),
    st.integers(-3, 99999999999).map(str),
).map(lambda text: text.replace("\n", " ").replace("\r", " "))


@given(st.integers(0, len(SCRIPT)), st.lists(ANYTHING, max_size=8))
@settings(max_examples=settings().max_examples // 2)
def test_whatever_is_typed_wherever_one_is_it_goes_on_in_plain_text(
    start: int, lines: list[str]
) -> None:
    with tempfile.TemporaryDirectory() as keep:
        said = converse("\n".join([*SCRIPT[:start], *lines, "again"]) + "\n", keep=Path(keep))
    assert FAULT not in said
    assert NOT_CHECKED not in said
    assert CONTROL.search(said) is None
    assert said.isascii()
    assert said.count(CAUTION) == 1


@given(st.lists(ANYTHING, max_size=4))
def test_whatever_is_typed_at_the_list_of_problems_it_goes_on(lines: list[str]) -> None:
    other = load_problem(FOLDER / "bell-frame.toml")
    with tempfile.TemporaryDirectory() as keep:
        said = converse("\n".join(lines), DAVIT, other, keep=Path(keep))
    assert CONTROL.search(said) is None
    assert said.isascii()
    assert said.rstrip().endswith(CAUTION)


@given(st.integers(0, len(SCRIPT)), st.integers(0, len(SCRIPT)))
@settings(max_examples=settings().max_examples // 3)
def test_a_lesson_left_anywhere_goes_on_as_if_it_had_not_been_left(one: int, other: int) -> None:
    first, second = sorted((one, other))
    with tempfile.TemporaryDirectory() as keep:
        converse("\n".join([*SCRIPT[:first], ""]), keep=Path(keep))
        converse("\n".join(["go on", *SCRIPT[first:second], ""]), keep=Path(keep))
        (kept,) = Keep(Path(keep)).lessons()
        events = Keep(Path(keep)).resume(kept.path).events
    lesson, _ = in_one_go(SCRIPT[:second])
    found = [plainly(event.as_record()) for event in events_of(events)]
    assert found == [plainly(event.as_record()) for event in lesson.events]


def in_one_go(lines: Iterable[str]) -> tuple[Lesson, str]:
    from tutor.plain.voice import Voice
    from tutor.plain.walk import Walk
    from tutor.session import open_session

    with tempfile.TemporaryDirectory() as keep:
        sink = io.StringIO()
        session = open_session(DAVIT, Keep(Path(keep)))
        Walk(Voice(io.StringIO("\n".join([*lines, ""])), sink), session, lambda step: None).listen()
        session.close()
    return session.lesson, sink.getvalue()


@cache
def finished() -> Lesson:
    """A whole lesson, for what only asks it."""
    return in_one_go(SCRIPT)[0]


def plainly(record: Any) -> dict[str, Any]:
    """A kept event without its time; the columns of a typed text stay as they are."""
    return {key: value for key, value in record.items() if key != "time"}


def test_a_student_finishes_a_problem_through_the_program_itself(tmp_path: Path) -> None:
    path = FOLDER / "baggage-landing.toml"
    problem = load_problem(path)
    ended = subprocess.run(
        [sys.executable, "-m", "tutor", "--plain", "--keep", str(tmp_path), str(path)],
        input="\n".join([*script(problem), "table", "leave", ""]),
        capture_output=True,
        text=True,
        encoding="utf-8",
        env={**os.environ, "PYTHONIOENCODING": "utf-8"},
        check=False,
    )
    assert (ended.returncode, ended.stderr) == (0, "")
    assert "Done: the table is complete." in ended.stdout
    for member in problem.members:
        assert f"Member {member.name}: " in ended.stdout
    assert CONTROL.search(ended.stdout) is None
    (kept,) = Keep(tmp_path).lessons()
    assert kept.events == 2 * len(script(problem)), "each event, and what came of it"


@pytest.mark.parametrize("kind", get_args(AskKind))
def test_every_question_says_how_it_is_answered(kind: str) -> None:
    assert kind in HOW
    assert kind in ANSWERS or kind == "table"


def test_every_word_of_the_lesson_comes_with_what_kind_it_is() -> None:
    from tutor.lesson.reply import Tone

    assert set(FIRST_WORD) == set(get_args(Tone))


@pytest.mark.parametrize("each", COMMANDS, ids=lambda each: each.words[0])
def test_a_command_can_be_typed_as_the_help_shows_it(each: Any) -> None:
    lesson = finished()
    for example in re.split(r", or ", each.typed):
        assert command(lesson, example) is not None, example
    assert command(lesson, f"help {each.words[0]}") is not None


def test_a_wrong_line_gets_a_verdict_a_hint_and_the_right_one_its_place(tmp_path: Path) -> None:
    lines = ["2 5 6", "3 3 6", "x y", "x", "left", "up", "right", "cw"]
    asked = ["moment A", "B_x*1 + 150*2.4 = 0", "hint", "B_x*1 - 150*2,4 = ", "B_x - 150*2.4 = 0"]
    said = converse("\n".join([*lines, *asked, ""]), keep=tmp_path).splitlines()
    told = [line for line in said if line.startswith(("Wrong", "Hint", "Cannot read", "Right"))]
    words = [line.partition(":")[0] for line in told]
    assert words[-4:] == ["Wrong", "Hint", "Cannot read", "Right"]
    assert told[-2].startswith("Cannot read: At column ")


def test_the_figure_of_a_joint_is_told_when_one_comes_to_it() -> None:
    start = next(n for n, line in enumerate(SCRIPT) if line.startswith("joint "))
    _, said = in_one_go([*SCRIPT[:start], "C"])
    assert "Free body of joint C." in said
    assert "Member CB, down and left, 5 down for 12 across: F_BC unknown" in said
    assert "Free body of the whole truss, as you drew it:" in said


def test_a_line_typed_where_reasons_are_asked_for_is_not_told_the_numbers_of_the_options() -> None:
    for text in ("B_x * 12 - 40", "ΣFx 8 F_AB + 12", "-150 * 2.4 + 77"):
        lesson, said = in_one_go([text])
        assert "the options are" not in said
        assert "Type the numbers of all that hold" in said.partition("this is no answer here")[2]
        assert not lesson.state.tries
    _, said = in_one_go(["B_x*12 = 40"])
    assert "Lines are written from the reactions on." in said
    _, said = in_one_go(["2 4 9"])
    assert "the options are 1 to 6" in said


def test_another_joint_is_chosen_by_its_name_alone_where_a_line_is_asked_for() -> None:
    start = next(n for n, line in enumerate(SCRIPT) if line.startswith("joint "))
    lesson, _ = in_one_go([*SCRIPT[:start], "joint A", "C"])
    assert lesson.state.joint == "C"
    lesson, _ = in_one_go([*SCRIPT[:start], "A", "b"])
    assert lesson.state.joint == "B"


def test_an_axis_alone_at_the_closing_is_one_of_the_equations_on_offer() -> None:
    closing = [line for line in SCRIPT if line.startswith("joint ")]
    last = max(n for n, line in enumerate(SCRIPT) if line == closing[-1])
    for end in range(last, len(SCRIPT)):
        lesson, _ = in_one_go(SCRIPT[:end])
        if lesson.ask.kind == "close" and lesson.ask.about is None:
            break
    assert lesson.ask.kind == "close"
    keys = [option.key for option in lesson.ask.options]
    for axis in "xy":
        deed = command(lesson, axis)
        fitting = [key for key in keys if key.startswith(f"F{axis} @ ")]
        if len(fitting) == 1:
            assert deed == Do("choose", {"about": fitting[0]})
        elif fitting:
            assert isinstance(deed, Tell)
            example = deed.lines[0].rpartition(", or ")[2].rstrip(".")
            assert command(lesson, example) == Do("choose", {"about": fitting[0]})
        else:
            assert isinstance(deed, Tell)
    assert command(lesson, "x at joint C") == Do("choose", {"about": "Fx @ C"})


def test_the_value_of_an_unknown_can_be_asked_for_first() -> None:
    end = max(n for n, line in enumerate(SCRIPT) if line.startswith("B_x = "))
    lesson, said = in_one_go([*SCRIPT[:end], "value B_x", "360"])
    assert "Type the value of B_x" in said
    assert "B_x" in lesson.state.result


def test_an_output_of_ascii_gets_its_signs_spelled_out(tmp_path: Path) -> None:
    raw = io.BytesIO()
    sink = io.TextIOWrapper(raw, encoding="ascii", errors="strict")
    sets = (ProblemSet("Test", (DAVIT,)),)
    typed = io.StringIO("\n".join([*SCRIPT, "help", ""]))
    assert run(sets, keep=tmp_path, source=typed, sink=sink) == 0
    sink.flush()
    said = raw.getvalue().decode("ascii")
    assert "sum of Fx" in said
    assert "?" not in said.replace("? ", "").replace("?\n", "")


def test_a_lesson_that_cannot_be_kept_says_so_once_and_goes_on(tmp_path: Path) -> None:
    blocked = tmp_path / "a file"
    blocked.write_text("in the way")
    said = converse("\n".join([*SCRIPT[:6], ""]), keep=blocked)
    assert said.count("is not being saved") == 1
    assert "All you did here is kept" not in said
    assert "Right: " in said


def test_saving_writes_a_new_file_and_never_over_one(tmp_path: Path) -> None:
    there = tmp_path / "there.md"
    there.write_text("mine")
    fresh = tmp_path / "fresh.md"
    said = converse(f"save {there}\nsave {fresh}\n", keep=tmp_path / "kept")
    assert there.read_text() == "mine"
    assert CAUTION in fresh.read_text(encoding="utf-8")
    assert "Not saved: there is a file" in said


def test_a_line_longer_than_any_line_is_passed_over_and_the_next_one_counts(tmp_path: Path) -> None:
    said = converse("9" * 50_000 + "\n2 5 6\n", keep=tmp_path)
    assert "Cannot read: a line has" in said
    assert said.count("Right: ") == 1


def test_a_problem_that_cannot_stand_is_refused_with_its_reason(tmp_path: Path) -> None:
    from dataclasses import replace

    loose = replace(DAVIT, members=DAVIT.members[:2])
    sink = io.StringIO()
    assert run((ProblemSet("T", (loose,)),), keep=tmp_path, source=io.StringIO(""), sink=sink) == 0
    assert "This problem cannot be worked:" in sink.getvalue()
    assert "fewer than the 6 equations" in sink.getvalue()


class Interrupted(io.StringIO):
    def readline(self, size: int | None = -1, /) -> str:
        raise KeyboardInterrupt


def test_an_interruption_leaves_politely(tmp_path: Path) -> None:
    sink = io.StringIO()
    sets = (ProblemSet("Test", (DAVIT,)),)
    assert run(sets, keep=tmp_path, source=Interrupted(), sink=sink) == 130
    assert "You have left pinjoint." in sink.getvalue()


def test_steps_done_right_twice_are_passed_over_in_eight_presses(tmp_path: Path) -> None:
    begun = "2 5 6\n3 3 6\n1 2\n1\nright\nup\nright\nccw\n"
    first = converse(f"{begun}leave\n", keep=tmp_path)
    assert "skip to pass" not in first
    assert "once you have done it right twice" in converse("new\nskip\n", keep=tmp_path)
    converse(f"new\n{begun}leave\n", keep=tmp_path)
    twice = (DAVIT, load_problem(FOLDER / "storm-mast.toml"))
    presses = "2\nskip\n"
    assert len(presses) <= 8
    third = converse(presses, *twice, keep=tmp_path)
    assert "right twice; type skip to pass" in third
    assert "Choose an equation of the whole truss" in third


def test_an_arrow_is_drawn_the_other_way_in_a_word(tmp_path: Path) -> None:
    lines = [
        "2 5 6",
        "3 3 6",
        "1 2",
        "1",
        "right",
        "up",
        "right",
        "ccw",
        "draw B_x left",
        "draw B_x",
    ]
    said = converse("\n".join([*lines, ""]), keep=tmp_path)
    assert "Note: B_x is drawn to the left." in said
    assert "B_x can be drawn to the right or to the left." in said


def test_signs_are_said_in_words_unless_they_are_asked_for(tmp_path: Path) -> None:
    sets = (ProblemSet("Test", (DAVIT,)),)
    told = []
    for signs in (False, True):
        sink = io.StringIO()
        typed = io.StringIO("\n".join([*SCRIPT, "figure", "help", ""]))
        run(sets, keep=tmp_path / str(signs), source=typed, sink=sink, signs=signs)
        told.append(sink.getvalue())
    in_words, in_signs = told
    assert in_words.isascii()
    assert "sum of Fx at joint C" in in_words
    assert "sum of moments about A" in in_words
    assert "ΣFx at joint C" in in_signs
    assert in_signs.count("ΣF") == in_words.count("sum of F") + in_words.count("sum of forces")


@given(st.text())
def test_any_text_is_said_in_plain_letters(text: str) -> None:
    assert spelled(text).isascii()
    if text.isascii() and not {"-", "/"} & {*text}:
        assert spelled(text) == text


@pytest.mark.parametrize(
    ("written", "said"),
    [
        ("Right: A_x = -360 N along your arrow.", "Right: A_x = minus 360 N along your arrow."),
        ("ΣFy: -5/13 F_BC - 150 = 0", "sum of Fy: minus 5/13 F_BC minus 150 = 0"),
        ("F_AB + 5/13(-390) = 0", "F_AB + 5/13(minus 390) = 0"),
        ("AC = 207.8 T, in the place of -207.8.", "AC = 207.8 T, in the place of minus 207.8."),
        ("F_{U1-L2} = -3 kN", "F_{U1-L2} = minus 3 kN"),
        ("35 lb/ft down by the span", "35 lb per foot down by the span"),
        ("1.5 kN/m down on AB", "1.5 kN per metre down on AB"),
        ("by the two-force rule - at B", "by the two-force rule - at B"),
    ],
)
def test_a_minus_is_said_as_a_word_since_many_voices_pass_it_over(written: str, said: str) -> None:
    assert spelled(written) == said


@pytest.mark.parametrize(
    "line", ["ΣFy: -5/13 F_BC - 150 = 0", "F_BC = -390", "ΣFx: F_AC + 12/13(-390) = 0"]
)
def test_a_line_may_be_typed_as_it_was_heard(line: str) -> None:
    heard = typed_as_heard(spelled(line))
    assert heard.replace(" ", "") == line.replace("Σ", "sum of ").replace(" ", "")


def test_a_slope_is_said_as_so_much_up_for_so_much_across() -> None:
    _, said = in_one_go([])
    assert "slope" not in said


def test_the_last_verdict_and_hint_can_be_heard_again(tmp_path: Path) -> None:
    lines = ["again", "1 2", "hint", "again", "ask", "where"]
    said = converse("\n".join([*lines, ""]), keep=tmp_path).splitlines()
    assert "Nothing was answered yet." in said
    (wrong,) = {line for line in said if line.startswith("Wrong: ")}
    (hint,) = {line for line in said if line.startswith("Hint: ")}
    assert [said.count(wrong), said.count(hint)] == [2, 2]
    assert sum(line.startswith("Each member is taken") for line in said) == 2
    assert f"You are at idealise, in {DAVIT.title}." in said


def test_where_one_is_names_joint_and_equation_and_no_value(tmp_path: Path) -> None:
    start = next(n for n, line in enumerate(SCRIPT) if line.startswith("joint "))
    _, said = in_one_go([*SCRIPT[:start], "C", "1", "where"])
    told = said.splitlines()[said.splitlines().index("You are at joint C.") - 2 :]
    assert told[0].startswith("You are at joints, in ")
    assert told[1] == "3 of 6 forces are found."
    assert told[3] == "You are writing sum of Fx at joint C."


def test_the_table_has_the_reactions_ties_and_mistakes_in_words() -> None:
    path = FOLDER / "baggage-landing.toml"
    problem = load_problem(path)
    lesson = Lesson(problem)
    Student(lesson, lambda kind, **data: lesson.take(kind, **data)).walk()
    told = list(table_lines(lesson))
    for reaction in problem.reactions:
        assert any(line.startswith(f"Reaction {reaction.name} = ") for line in told)
    assert "Largest tension: AB, BD and BC, 12 kN each." in told
    assert "Largest compression: AC and CD, 15 kN each." in told
    (wrong,) = [line for line in told if line.startswith("What went wrong on the way: ")]
    assert not any(
        re.search(rf"\b{code}\b", wrong) for code, _ in lesson.table.mistakes if "-" in code
    )
    assert told[-1] == CAUTION


@pytest.mark.parametrize(
    ("seconds", "told"),
    [
        (0, "under a minute"),
        (29, "under a minute"),
        (60, "1 minute"),
        (89, "1 minute"),
        (600, "10 minutes"),
    ],
)
def test_minutes_are_counted_in_words(seconds: float, told: str) -> None:
    assert time_in_words(seconds) == told


def test_every_mistake_has_a_name_for_people() -> None:
    assert set(CALLED) == {*KINDS, *CLAIMS, "soundness", "count"}
    assert all(CALLED[code] != code and called(code) == CALLED[code] for code in CALLED)


def test_no_answer_stands_in_what_is_said_of_a_count(tmp_path: Path) -> None:
    said = converse("2 5 6\n1 2\nx\n1 2 3 4\n", keep=tmp_path)
    asked = said.partition("Count the members m")[2].partition("You have left")[0]
    assert "Cannot read: this is" in asked
    numbers = re.findall(r"\d+", asked.replace("2j", "").partition("All you did")[0])
    assert set(numbers) == {"2", "4"}, "only how many numbers were read"


@pytest.mark.parametrize("word", ["table", "results", "figure"])
def test_results_come_with_the_caution_in_full_once_and_then_in_short(word: str) -> None:
    _, said = in_one_go([*SCRIPT, "ask", word])
    assert said.count(CAUTION) == 1
    assert said.rstrip().endswith(SHORT_CAUTION)
    assert said.rpartition("Type save and")[2].count(SHORT_CAUTION) == 1


def test_what_is_said_of_a_joint_is_said_once() -> None:
    start = next(n for n, line in enumerate(SCRIPT) if line.startswith("joint "))
    _, before = in_one_go(SCRIPT[:start])
    _, said = in_one_go([*SCRIPT[:start], "C"])
    told = said[len(before) :].splitlines()
    assert len(told) == len(set(told))
    assert sum("unknown" in line and "are unknown" in line for line in told) == 1
    assert sum("sum of Fx" in line for line in told) == 1


def test_the_list_says_which_problems_are_finished_and_where_the_others_stand(
    tmp_path: Path,
) -> None:
    other = load_problem(FOLDER / "bell-frame.toml")
    converse("\n".join(["1", *SCRIPT, ""]), DAVIT, other, keep=tmp_path)
    converse("2\n", DAVIT, other, keep=tmp_path)
    said = converse("help\n1\nagain\n", DAVIT, other, keep=tmp_path)
    assert re.search(r"^1\. .*, finished$", said, re.M)
    assert re.search(r"^2\. .*, begun, at the idealisation$", said, re.M)
    assert said.count(f"1. {DAVIT.title}") == 1, "help does not say the titles again"
    assert "list: says the sets or the problems again" in said
    assert said.count("1. go on where you left, done") == 2


def test_a_section_is_told_as_the_free_body_of_the_part_kept(tmp_path: Path) -> None:
    compound = load_problem(Path(__file__).parent / "paper" / "compound.toml")
    typed = "show until joints\nsection AD BE CF keep A\nleave section\nfigure\n"
    said = converse(typed, compound, keep=tmp_path)
    before, told = said.split("Note: The part with A, B and C: AD, BE and CF are unknown on it.")
    part, after = told.split("Note: The section is left")
    assert "Member CF, down: F_CF unknown, drawn pulling on the part." in part
    assert "Beyond the cut: D 4 m right of A and 3 m above it." in part
    assert "At B: B_y drawn up, 17.5 kN." in part
    assert "Beyond the cut" not in before + after


def test_a_truss_without_forces_to_find_ends_with_what_it_is(tmp_path: Path) -> None:
    square = load_problem(Path(__file__).parent / "paper" / "compound.toml")
    loose = replace(square, truss="unstable", members=square.members[:-1])
    said = converse("show\nshow\nshow\nshow\ntable\n", loose, keep=tmp_path)
    assert "This truss: something can move although no member changes its length." in said
    assert "Member" not in said.rpartition("This truss: something")[2]


def test_a_line_on_a_terminal_is_broken_between_words() -> None:
    outer, inner = os.openpty()
    fcntl.ioctl(inner, termios.TIOCSWINSZ, struct.pack("HHHH", 24, 30, 0, 0))
    words = "Each member is taken as a two-force member along its axis."
    with open(inner, "w", encoding="utf-8") as sink:
        Voice(io.StringIO(), sink).say([words])
        shown = os.read(outer, 1000).decode()
    os.close(outer)
    assert shown.split() == words.split()
    assert max(map(len, shown.splitlines())) <= 30


def test_the_sense_of_a_member_is_said_in_words_and_a_reaction_as_it_is() -> None:
    kept = Say.opened("right", "Right: ", "BC = 390 N C.", "BC = 390 N, compression.")
    assert kept.text == "Right: BC = 390 N C."
    assert [*reply_lines(Reply((kept,), True))] == ["Right: BC = 390 N, compression."]
    _, said = in_one_go(SCRIPT)
    assert re.search(r"^Right: .* = [\d.]+ [a-zN]+, (tension|compression)\.$", said, re.MULTILINE)
    assert not re.search(r"^Right: .* = [\d.]+ [a-zN]+ [TC]\b", said, re.MULTILINE)


@pytest.mark.skipif(os.name == "nt", reason="the system has no pseudo-terminals")
def test_on_a_terminal_a_line_is_edited_and_an_earlier_one_fetched_back(tmp_path: Path) -> None:
    import pty

    process, terminal = pty.fork()
    if process == 0:
        os.environ["TERM"] = "xterm"
        program = "import sys; from tutor import cli; sys.exit(cli.main(sys.argv[1:]))"
        given = ["--plain", "--keep", str(tmp_path), str(FOLDER / "lamp-arm.toml")]
        os.execv(sys.executable, [sys.executable, "-c", program, *given])
    said = b""
    for awaited, typed in ((b"> ", b"x here\x01\x1b[3~\x1b[3~w\r"), (b"You are at", b"\x1b[A\r")):
        said = heard_until(terminal, awaited)
        os.write(terminal, typed)
    again = heard_until(terminal, b"You are at")
    os.write(terminal, b"leave\r")
    heard_until(terminal, b"You have left")
    assert b"Cannot read" not in said + again
    assert os.waitstatus_to_exitcode(os.waitpid(process, 0)[1]) == 0
    os.close(terminal)


def heard_until(terminal: int, words: bytes) -> bytes:
    """What is said up to these words and what came with them."""
    said = b""
    while words not in said:
        assert select.select([terminal], [], [], 60)[0], said
        said += os.read(terminal, 1 << 16)
    return said


@pytest.mark.parametrize(
    "text", ["F_AB &minus; 3 = 0", "F_AB &plus; 3 = 0", r"F_AB \minus 3 = 0", "F_AB - 3 = 0"]
)
def test_the_name_of_a_sign_on_a_copied_page_is_no_word_of_what_was_heard(text: str) -> None:
    assert typed_as_heard(text) == text
    assert typed_as_heard("F_AB minus 3 = 0") == "F_AB -3 = 0"
