"""What must hold of every truss that is drawn up, whatever is typed?"""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from strategies import make_truss

from tutor.drafting import (
    EMPTY,
    SHAPES,
    Draft,
    Whole,
    drawable,
    fold,
    lines_of,
    rows,
    saved,
    shaped,
    soundness_of,
)
from tutor.model import load_problem
from tutor.model.parts import Load, Support
from tutor.notation import Exact
from tutor.statics import determinacy, stability

WORDS = (
    *(
        "A",
        "B",
        "C",
        "D",
        "a",
        "b",
        '"a"',
        '"up"',
        "Top",
        "U1",
        "L2",
        "AB",
        "BC",
        "ABCD",
        "A-B-C",
        "U1-L2",
        "U1L2",
    ),
    *("0", "4", "-3", "1.5", "1,5", "3/2", "5*sqrt(3)/2", "0,0", "(2,", "3)", "12kN", "4m", "1e3"),
    *("pin", "roller", "link", "150", "at", "@", "210", "up", "down", "left", "right", "d", "r"),
    *("kN", "m", "lb", "ft", "N", "in", ";", "\n", ",", "=", "and", "title", "rename", "drop"),
    *("joint", "member", "support", "load", "clear", "undo", "redo", "units", "warren", "pratt"),
    *("move", "copy", "mirror", "flip", "from", "of", "above", "by", "all", "to", "F(3,4)", "mid"),
    *(
        "the",
        "a",
        "is",
        "weight",
        "Fx",
        "fixed",
        "moment",
        "cable",
        "kN/m",
        "50kN/m",
        "R_A",
        "wall",
    ),
    *("howe", "fink", "king", "post", "queen", "cantilever", "span", "height", "panels", "6"),
    *(
        "[b]",
        "\x1b[31m",
        "9" * 40,
        "1e99",
        "sqrt(",
        "1/0",
        "tan(90)",
        "--",
        "√2",
        "−1",
        "é",
        "\ud800",
    ),
)
LINES = st.lists(st.sampled_from(WORDS), max_size=14).map(" ".join) | st.text(max_size=40)


def typed(lines: list[str]) -> Draft:
    draft = Draft()
    for line in lines:
        draft.type(line)
    return draft


@given(st.lists(LINES, max_size=8))
def test_any_line_gets_a_plain_sentence_and_nothing_raises(lines: list[str]) -> None:
    draft = Draft()
    for line in lines:
        before = draft.problem
        answer = draft.type(line)
        assert answer.said
        assert answer.taken or draft.problem is before
        if answer.span is not None:
            assert 0 <= answer.span[0] < answer.span[1] <= len(line)
        assert not answer.taken or "\x1b" not in answer.said
    stands = soundness_of(draft.problem)
    assert all(fault.message and fault.cure for fault in stands.faults)
    assert len(rows(draft.problem)) >= len(draft.problem.joints)


@given(st.lists(LINES, max_size=8))
def test_undo_and_redo_are_each_others_inverse(lines: list[str]) -> None:
    draft = typed([line for line in lines if line.strip().lower() not in ("undo", "redo", "back")])
    trusses, count = list(draft.trusses), len(draft.steps)
    for place in range(count - 1, -1, -1):
        draft.undo()
        assert draft.problem == trusses[place]
    for place in range(1, count + 1):
        draft.redo()
        assert draft.problem == trusses[place]
    assert not draft.ahead


@given(st.lists(LINES, max_size=8))
def test_what_is_kept_of_any_drawing_draws_it_again(lines: list[str]) -> None:
    problem = typed(lines).problem
    again = typed(list(lines_of(problem))).problem
    assert again == problem


@given(st.lists(LINES, max_size=8))
def test_the_same_entries_draw_the_same_truss(lines: list[str]) -> None:
    draft = typed(lines)
    assert Draft(draft.steps).problem == draft.problem
    assert fold(entry for step in draft.steps for entry in step) == draft.problem


@pytest.mark.parametrize("seed", range(40))
def test_a_typed_truss_that_is_saved_loads_as_the_same_problem(seed: int, tmp_path: Path) -> None:
    problem = make_truss(seed, 3 + seed % 8, wall=seed % 3 == 0)
    draft = Draft()
    for line in lines_of(problem):
        answer = draft.type(line)
        assert answer.taken, (line, answer.said)
    path = tmp_path / "own.toml"
    path.write_text(saved(draft.problem), encoding="utf-8")
    assert load_problem(path) == draft.problem
    assert soundness_of(draft.problem).sound
    for mine, theirs in zip(draft.problem.joints, problem.joints, strict=True):
        assert mine.name == theirs.name
        assert mine.at == pytest.approx(theirs.at)
    assert [m.name for m in draft.problem.members] == [m.name for m in problem.members]


@given(st.integers(0, 10**6), st.lists(LINES, max_size=4))
def test_what_is_saved_over_a_file_loads_as_what_was_drawn(seed: int, lines: list[str]) -> None:
    start = make_truss(seed, 4)
    before = "# kept above\n" + saved(start).replace("[joints]", "[joints] # kept behind")
    draft = Draft(start=start)
    for line in lines:
        draft.type(line)
    if not soundness_of(draft.problem).sound:
        return
    text = saved(draft.problem, before)
    assert "# kept above" in text
    assert "# kept behind" in text
    from tutor.model.read import read_text

    assert read_text(text, "text").problem == read_text(saved(draft.problem), "text").problem


@given(st.lists(LINES, max_size=6), st.lists(LINES, max_size=6))
def test_a_drawing_goes_by_new_names_of_old_joints_until_it_is_another(
    before: list[str], after: list[str]
) -> None:
    draft = typed(before)
    mark = draft.mark
    assert draft.renamed_since(mark) == {}
    for line in after:
        draft.type(line)
    names = draft.renamed_since(mark)
    if names is not None:
        assert len(set(names.values())) == len(names)
    draft.type("clear")
    assert draft.renamed_since(mark) is None
    draft.type("undo")
    assert draft.renamed_since(mark) == names


def test_a_joint_put_after_another_of_its_name_was_renamed_is_not_that_one() -> None:
    draft = typed(["A 0 0 B 4 0", "AB"])
    mark = draft.mark
    for line in ("rename A Q", "A 9 9", "rename A Z", "rename Q R"):
        assert draft.type(line).taken
    assert draft.renamed_since(mark) == {"A": "R"}
    for _ in range(4):
        draft.undo()
    assert draft.renamed_since(mark) == {}
    draft.type("rename B S")
    late = draft.mark
    draft.undo()
    assert draft.renamed_since(late) == {"S": "B"}


SIZES = (("12", "3"), ("7", "5*sqrt(3)/2"), ("10/3", "2"))


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("name", SHAPES)
def test_every_common_shape_is_determinate_and_stable(name: str, size: tuple[str, str]) -> None:
    shape = SHAPES[name]
    for panels in shape.panels[:9]:
        counted = "" if shape.fixed else f" panels {panels}"
        draft = Draft()
        answer = draft.type(f"{name} span {size[0]} height {size[1]}{counted} load 5")
        assert answer.taken, answer.said
        stands = soundness_of(draft.problem)
        assert stands.sound, (name, panels, stands)
        assert len(draft.problem.members) + 3 == 2 * len(draft.problem.joints)


def test_a_shape_may_have_more_joints_than_there_are_letters() -> None:
    made = shaped(SHAPES["warren"], Exact.of(40), Exact.of(3), 20, Exact.of(5))
    assert len(made.joints) == 41
    assert soundness_of(made).sound


def test_what_has_no_length_is_left_out_of_the_picture_alone() -> None:
    draft = typed(["A 0 0 B 4 0 C 0 3", "AB BC CA", "A pin", "B link 5 5", "B 0 0"])
    assert len(draft.problem.members) == 3
    assert [m.name for m in drawable(draft.problem).members] == ["BC", "CA"]
    assert any("one place" in fault.message for fault in soundness_of(draft.problem).faults)
    draft.type("B 5 5")
    assert drawable(draft.problem).supports == (Support("A", "pin"),)


def test_a_drawing_that_moves_says_how_by_its_joints() -> None:
    draft = typed(["A 0 0 B 3 0 C 3 3 D 0 3", "ABCDA", "A pin", "B roller", "C 3 right"])
    stands = soundness_of(draft.problem)
    assert stands.stable is False
    assert "can move" in stands.how
    assert stands.mechanism["A"] == (0.0, 0.0)
    assert stands.count == determinacy(draft.problem).said
    assert stands.mechanism == stability(draft.problem).mechanism


def test_an_empty_sheet_says_what_it_lacks() -> None:
    said = [fault.message for fault in soundness_of(EMPTY).faults]
    assert said == [
        "There is no joint yet.",
        "There is no member yet.",
        "Nothing holds it yet.",
        "There is no load yet.",
    ]
    assert fold([Whole(EMPTY)]) == EMPTY
    assert Load("A") not in EMPTY.loads
