"""Are lengths in words, symbols that a line brings in and sums worked out beside it told from its equations?

The gallery is our own: B and C stand 3 m above E and F.
"""

from __future__ import annotations

import pytest
from families import down, plain_problem

from tutor.model import Problem, Support
from tutor.notation import Line, Unreadable, read_line

GALLERY: Problem = plain_problem(
    [("D", 0, 0), ("E", 4, 0), ("F", 8, 0), ("G", 12, 0), ("B", 4, 3), ("S", 8, 3)],
    ("DE", "EF", "FG", "BD", "BE", "BS", "BF", "FS", "GS"),
    [Support("D", "pin"), Support("G", "roller")],
    [down("B", 12), down("F", 36)],
)


def read(text: str) -> Line:
    line = read_line(text, GALLERY.names)
    assert isinstance(line, Line), line
    return line


def said(line: Line) -> list[list[list[tuple[str | None, float]]]]:
    """What each statement sets equal."""
    return [
        [[(term.name, round(term.value, 6)) for term in side.terms] for side in step.sides]
        for step in line.steps
    ]


@pytest.mark.parametrize(
    "length",
    [
        "the arm of F_BS about F being 3 m",
        "the lever arm of F_BS being the height BE = 3 m",
        "where the arm of F_BS is 3 × 1.0 = 3 m",
        "with the perpendicular distance from F to BS being 3 m",
        "where the arm of the top chord is the height of the truss, 3 m",
        "the perpendicular from F on to BS being 6 sin 30° = 3 m",
    ],
)
def test_a_length_in_words_says_nothing_of_the_equation_beside_it_and_is_told(length: str) -> None:
    equation = "-3 F_BS - 18*8 + 12*4 = 0"
    behind = read(f"ΣM_F: {equation}, {length}")
    before = read(f"Moments about F, {length}: {equation}")
    assert said(behind) == said(before) == said(read(equation))
    for line in (behind, before):
        assert line.label is not None
        assert (line.label.kind, line.label.point) == ("moment", "F")
        assert [line.text[span.start : span.end] for span in line.unread] == [length]


@pytest.mark.parametrize(
    "text",
    [
        "the arm of F_BS being 3 F_BS - 12 = 0",
        "ΣM_F: 3 F_BS + 96 = 0, the arm of F_BS being 3 m F_BS",
    ],
)
def test_no_equation_is_taken_for_a_length(text: str) -> None:
    line = read_line(text, GALLERY.names)
    assert isinstance(line, Unreadable) or any(
        name == "BS" for step in said(line) for side in step for name, _ in side
    )


@pytest.mark.parametrize(
    ("text", "same"),
    [
        ("Let P be the thrust in BD. 3P/5 = 18, so P = 30 kN", "-3/5 F_BD = 18, so -F_BD = 30 kN"),
        ("Call the tension in EF t; 3 t = 96, t = 32 kN", "3 F_EF = 96, F_EF = 32 kN"),
        ("C_BD = 30 kN", "-F_BD = 30 kN"),
        ("18 = 3/5 C_BD, C_BD being the thrust in BD", "18 = -3/5 F_BD"),
        (
            "Let v be the vertical component of BD. v + 18 = 0, v = -18 kN",
            "BD_y + 18 = 0, BD_y = -18 kN",
        ),
        (
            "18 + v = 0, v = -18 kN being the vertical component of BD",
            "18 + BD_y = 0, BD_y = -18 kN",
        ),
        ("F_BD sin θ = -18, θ being 36.87°", "F_BD sin 36.87° = -18"),
    ],
)
def test_a_symbol_stands_for_what_the_line_says(text: str, same: str) -> None:
    assert said(read(text)) == said(read(same))


@pytest.mark.parametrize(
    "text", ["Let B be the thrust in BD. 3/5 B = 18", "Let q be the thrust in BQ. 3/5 q = 18"]
)
def test_no_joint_and_no_force_that_is_none_becomes_a_symbol(text: str) -> None:
    assert isinstance(read_line(text, GALLERY.names), Unreadable)


def test_a_sum_given_as_a_reason_that_holds_is_no_statement_of_the_line() -> None:
    text = "24 + F_BS + 8 = 0, where 24 = 4/5 × 30 and 8 = 4/5 × 10; F_BS = -32 kN"
    assert said(read(text)) == said(read("24 + F_BS + 8 = 0; F_BS = -32 kN"))


def test_a_sum_given_as_a_reason_that_does_not_hold_stays() -> None:
    assert len(read("24 + F_BS + 8 = 0, where 24 = 4/5 × 20").steps) == 2


def test_a_number_that_waits_for_an_angle_is_left_out_of_a_chain_and_told() -> None:
    line = read("F_BD = -18/sin θ = -30 kN")
    assert said(line) == said(read("F_BD = -30 kN"))
    assert len(line.unread) == 1


def test_a_way_of_a_component_that_holds_at_one_end_of_its_member_is_not_judged() -> None:
    text = "the vertical component of BD is 18 kN downwards, hence F_BD = -18 × 5/3 = -30 kN"
    line = read(text)
    assert said(line) == said(read("F_BD = -18 × 5/3 = -30 kN"))
    assert line.unread


@pytest.mark.parametrize(
    ("text", "side", "cut"),
    [
        ("Section a-a (BS–BF–EF), left piece: 18 - 12 - 3/5 F_BF = 0", "left", ("BS", "BF", "EF")),
        ("Cut on a–a through BS, BF and EF, outer part: F_BF = 10", "outer", ("BS", "BF", "EF")),
        (
            "Cutting BS, BF and EF and looking at the part outside the cut: F_BF = 10",
            "outer",
            ("BS", "BF", "EF"),
        ),
    ],
)
def test_a_part_and_its_cut_may_be_named_with_dashes_and_from_the_outside(
    text: str, side: str, cut: tuple[str, ...]
) -> None:
    label = read(text).label
    assert label is not None
    assert label.part is not None
    assert (label.part.side, label.part.cut) == (side, cut)


@pytest.mark.parametrize(
    ("text", "kind", "point"),
    [
        ("at D horizontally F_DE - 8 - 24 = 0", "x", "D"),
        ("ok so at D horizontally F_DE - 8 - 24 = 0", "x", "D"),
        ("Taking up as +ve, vertically at D we have 18 + 3/5 F_BD = 0", "y", "D"),
    ],
)
def test_a_direction_behind_a_joint_heads_the_line(text: str, kind: str, point: str) -> None:
    label = read(text).label
    assert label is not None
    assert (label.kind, label.point) == (kind, point)


def test_a_reaction_that_turns_about_a_point_is_no_heading_of_its_axis() -> None:
    assert read("must be balanced by the moment of D_x: 3 D_x = 24").label is None


@pytest.mark.parametrize("text", ["tie EF = 32 kN", "the strut BD = 30 kN"])
def test_the_kind_of_a_member_before_it_goes_with_its_value(text: str) -> None:
    side = read(text).steps[0].sides[0]
    assert (side.name, side.letter) in {("EF", "T"), ("BD", "C")}


def test_words_that_end_in_a_force_do_not_swallow_it() -> None:
    line = read("D_x + 8 = 0, so that the wall pulls back with D_x = -8 kN")
    assert said(line) == said(read("D_x + 8 = 0, D_x = -8 kN"))


@pytest.mark.parametrize(
    ("text", "kind", "point"),
    [
        ("ΣV_D: 18 + 3/5 F_BD = 0", "y", "D"),
        ("Σ H_D = 0 : -8 + F_DE + 4/5 F_BD = 0", "x", "D"),
        ("Dividing ΣH by cos 30°: F_DE - F_BD = 0", "x", None),
        ("Since the only horizontal load is 8 kN →, D_x = 8 kN ←", "x", None),
    ],
)
def test_a_sum_is_named_at_its_joint_by_a_scaling_or_by_its_only_load(
    text: str, kind: str, point: str | None
) -> None:
    label = read(text).label
    assert label is not None
    assert (label.kind, label.point) == (kind, point)


def test_two_sums_with_their_joint_beside_each_other_keep_their_headings() -> None:
    line = read("ΣV_D: 18 + 3/5 F_BD = 0 and ΣH_D: F_DE = 8 - 4/5 F_BD")
    assert line.label is not None
    assert line.label.kind == "y"
    assert [step.label and step.label.kind for step in line.steps] == [None, "x"]


def test_a_number_that_is_added_to_is_no_direction_of_a_chord() -> None:
    line = read("Hence along the top chord 24 + F_BS + 8 = 0")
    assert said(line) == said(read("24 + F_BS + 8 = 0"))


def test_a_chord_may_be_called_by_all_its_joints() -> None:
    label = read("Perpendicular to DEF at joint E: F_BE = 0").label
    assert label is not None
    assert label.between is not None
    assert (label.between.start, label.between.end) == ("D", "F")


@pytest.mark.parametrize(
    ("text", "letter"),
    [
        ("F_BD = 30 T, no 30 C", "C"),
        ("F_BD = 30 kN T, sorry, C", "C"),
        ("F_BD = 29 C, I mean 30 C", "C"),
    ],
)
def test_what_is_said_last_of_a_value_holds(text: str, letter: str) -> None:
    side = read(text).steps[0].sides[-1]
    assert (round(side.terms[0].value), side.letter) == (30, letter)


def test_a_no_that_may_deny_is_asked_about() -> None:
    line = read_line("F_BD = 30 T no C", GALLERY.names)
    assert isinstance(line, Unreadable)
    assert line.found == "C"


@pytest.mark.parametrize(
    ("text", "same"),
    [
        ("4 F_BS = load = 12 kN", "4 F_BS = 12 kN"),
        ("so EF is in tension 32", "F_EF = 32 T"),
        ("Force triangle at D: F_BD : 18 = 5 : 3", "F_BD = 18 (5/3)"),
        ("96 + 3H = 0, where H = 1.0 F_BS", "96 + 3(1.0 F_BS) = 0"),
    ],
)
def test_other_ways_to_write_what_a_formula_says(text: str, same: str) -> None:
    assert said(read(text)) == said(read(same))


def test_a_reason_alone_says_no_member_to_be_zero() -> None:
    line = read_line("DE and EF in line, no load", GALLERY.names)
    assert isinstance(line, Unreadable) or all(len(step.sides) == 1 for step in line.steps)


@pytest.mark.parametrize(
    "text",
    [
        "the height of the truss is h = 3 m; h F_BS + 96 = 0",
        "height h = 3 m, h F_BS + 96 = 0",
        "h F_BS + 96 = 0, the height of the truss being h = 3 m",
        "h F_BS + 96 = 0 where the height h = 3 m",
    ],
)
def test_a_letter_may_be_called_what_it_is_the_length_of(text: str) -> None:
    line = read_line(text, GALLERY.names)
    assert not isinstance(line, Unreadable), line.message
    assert said(line) == said(read_line("3 F_BS + 96 = 0", GALLERY.names))
