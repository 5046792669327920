"""The same words choose the same equation wherever one is chosen: in a lesson, before a line, on a homework."""

from __future__ import annotations

import pytest
from families import plain_problem

from tutor.deeds import deed_of
from tutor.deeds.deed import Do, Tell
from tutor.homework import Paper, read_paper, write_line
from tutor.judge import Along, Equation, Fx, Fy, M
from tutor.judge.about import as_text, from_text
from tutor.judge.headings import headed
from tutor.lesson import Lesson
from tutor.lesson.steps.headings import equation_called
from tutor.model import Load, Support
from tutor.notation import Exact, read_line

MAST = plain_problem(
    (("A", 0, 0), ("B", 8, 0), ("C", 4, 3)),
    ("AB", "BC", "AC"),
    (Support("A", "pin"), Support("B", "roller")),
    (Load("C", (("down", Exact.of(12)), ("right", Exact.of(6)))),),
)
SLOPE = 36.86989764584402
"""Of AC, which rises 3 for 4 across."""
TO_THE_POINT: list[tuple[str, Equation]] = [
    *((text, Fx()) for text in ("x", "fx", "F_x", "F_{x}", "ΣFx", "ΣF_x", "∑Fx", "ΣH", "ΣX")),
    *((text, Fx()) for text in ("sum fx", "sum of Fx", "sum of forces in x", "x-dir", "→", "R(→)")),
    *((text, Fx()) for text in ("horizontally", "Resolving horizontally", "+→ ΣFx", "ΣF→", "->")),
    *((text, Fy()) for text in ("y", "Fy", "f_y", "ΣFy", "ΣV", "ΣY", "↑", "R(↑)", "+↑ ΣFy")),
    *((text, Fy()) for text in ("vertical", "resolve vertically", "y-direction", "summe Fy")),
    *((text, Fx("C")) for text in ("x at C", "ΣFx at C", "Joint C: ΣFx", "C: x", "ΣFx(C)")),
    *((text, Fx()) for text in ("efx", "EFx", "sFx", "EF_x", "EF_{x}", "SFx = 0")),
    *((text, Fy()) for text in ("efy", "SFy", "sfy", "EFv", "EFy=0")),
    *((text, M("A")) for text in ("EMA", "eM_A", "smA", "EM_{A}")),
    *((text, Fy("C")) for text in ("fy at joint C", "ΣFy, joint C", "Knoten C ↑", "@C ΣFy")),
    *((text, M("A")) for text in ("moment A", "moment about A", "moments about A", "moments at A")),
    *((text, M("A")) for text in ("Taking moments about A", "ΣM_A", "ΣM about A", "ΣM@A", "M_A")),
    *((text, M("A")) for text in ("MA", "m a", "M(A)", "↺ A", "+↺ ΣM_A", "about A", "ΣM um A")),
    *(
        (text, M((4.0, 0.0)))
        for text in ("moment about (4, 0)", "ΣM about (4, 0)", "M about (4;0)")
    ),
    *((text, Along(30.0, "C")) for text in ("along 30 at C", "ΣF along 30° at C")),
    *((text, Along(SLOPE, "C")) for text in ("along AC at C", "ΣF along CA at C", "∥ AC at C")),
    *((text, Along(SLOPE, "C")) for text in ("along member AC at C", "resolve along AC at C")),
    *((text, Along(SLOPE + 90.0, "C")) for text in ("across AC at C", "perpendicular to AC at C")),
    *((text, Along(SLOPE, "A")) for text in ("along the rafter at A", "along the diagonal at A")),
    *((text, Along(SLOPE + 90.0, "A")) for text in ("at right angles to the rafter at A",)),
    *(
        (text, Along(SLOPE + 90.0, "A"))
        for text in ("the rafter's normal at A", "normal to rafter AC at A")
    ),
    ("along AB at A", Fx("A")),
    ("across AB at A", Fy("A")),
]
OPEN = (
    *("moments", "ΣM", "along", "ΣM about", "perpendicular to"),
    *(
        "along the rafter at C",
        "square to the chord at A",
        "along the post at A",
        "along the hip at A",
    ),
)
"""These leave open about what, or along what."""
NONE = ("hello", "12", "AB", "F_AB", "joint", "ΣQ", "x y", "moment of inertia", "C_x")
LINE = "3/5 F_AC + F_AB - 12 = 0"


def same(one: Equation | None, other: Equation) -> bool:
    if isinstance(one, Along) and isinstance(other, Along):
        return one.joint == other.joint and one.degrees == pytest.approx(other.degrees)
    return one == other


WAY: tuple[tuple[str, dict[str, object]], ...] = (
    ("go", {"step": "free body"}),
    ("support", {"joint": "A", "acts": ["x", "y"]}),
    ("support", {"joint": "B", "acts": ["y"]}),
    ("sense", {"unknown": "A_x", "sense": "right"}),
    ("sense", {"unknown": "A_y", "sense": "up"}),
    ("sense", {"unknown": "B_y", "sense": "up"}),
    ("turning", {"positive": "counter-clockwise"}),
)


def lesson(step: str) -> Lesson:
    found = Lesson(MAST)
    for kind, data in (*WAY, ("go", {"step": step})):
        found.take(kind, **data)
    assert found.state.step == step
    return found


def chosen(lesson: Lesson, text: str) -> Equation | None:
    """The equation that a typed text chooses in a lesson, on the screen as in the plain one."""
    deed = deed_of(lesson, text)
    if not isinstance(deed, Do) or deed.kind != "choose":
        return None
    return equation_called(MAST, deed.data["about"])


@pytest.mark.parametrize(("text", "meant"), TO_THE_POINT)
def test_the_same_words_choose_the_same_equation_everywhere(text: str, meant: Equation) -> None:
    for form in (text, f"{text}:", f" {text} = 0" if "Σ" in text else text):
        assert same(chosen(lesson("reactions"), form), meant), form
    line = f"{text}: {LINE}"
    assert same(headed(MAST, read_line(line, MAST.names), None), meant)
    written = write_line(MAST, Paper(), line)
    assert len(written.paper.lines) == 1, written.refused
    assert same(written.paper.lines[0][0], meant)
    assert read_paper(MAST, f"A_x = 4\n{line}\n").paper.lines == written.paper.lines


@pytest.mark.parametrize(("text", "meant"), TO_THE_POINT)
def test_a_sum_is_that_of_the_joint_one_is_at_unless_it_names_another(
    text: str, meant: Equation
) -> None:
    here = lesson("joints")
    assert here.take("joint", joint="C").accepted
    there = meant if isinstance(meant, M) or meant.joint else type(meant)("C")
    assert same(chosen(here, text), there)
    paper = write_line(MAST, Paper(), "at joint C").paper
    assert same(write_line(MAST, paper, f"{text}: {LINE}").paper.lines[0][0], there)


@pytest.mark.parametrize("text", OPEN)
def test_words_that_leave_open_which_are_asked_about_everywhere(text: str) -> None:
    deed = deed_of(lesson("reactions"), text)
    assert isinstance(deed, Tell), deed
    written = write_line(MAST, Paper(), f"{text}: {LINE}")
    assert not written.paper.lines
    assert "needs its point" in written.refused[0].message or (
        "needs it" in written.refused[0].message
    )


@pytest.mark.parametrize("text", NONE)
def test_other_words_choose_nothing_anywhere(text: str) -> None:
    assert chosen(lesson("reactions"), text) is None
    line = read_line(f"{text}: {LINE}", MAST.names)
    assert headed(MAST, line, None) is None
    assert not write_line(MAST, Paper(), f"{text}: {LINE}").paper.lines


@pytest.mark.parametrize("text", ["moment Z", "ΣM_Z", "moments about Q", "x at joint Z"])
def test_a_joint_that_is_none_is_said_to_be_none_everywhere(text: str) -> None:
    deed = deed_of(lesson("reactions"), text)
    assert isinstance(deed, Tell)
    assert "A, B, C" in deed.lines[0]
    assert "A, B" in write_line(MAST, Paper(), f"{text}: {LINE}").refused[0].message


@pytest.mark.parametrize("meant", dict.fromkeys(meant for _, meant in TO_THE_POINT))
def test_an_equation_is_kept_by_a_text_that_only_it_has(meant: Equation) -> None:
    assert from_text(as_text(meant)) == meant
