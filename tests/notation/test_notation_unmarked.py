"""What stands in a line without a mark to set it apart: a heading without a colon, words without a comma.

The truss is our own; EF is a member of it.
"""

from __future__ import annotations

import pytest
from families import down, plain_problem

from tutor.model import Problem, Support
from tutor.notation import Line, Unreadable, read_line

PORCH: Problem = plain_problem(
    [("A", 0, 0), ("B", 3, 0), ("E", 0, 4), ("F", 3, 4)],
    ("AB", "AE", "BE", "EF", "AF"),
    [Support("A", "pin"), Support("B", "roller")],
    [down("F", 7)],
)


def read(text: str) -> Line:
    line = read_line(text, PORCH.names)
    assert isinstance(line, Line), line
    return line


def typed(line: Line) -> list[list[tuple[str | None, float]]]:
    return [[(t.name, t.value) for side in step.sides for t in side.terms] for step in line.steps]


@pytest.mark.parametrize("rest", ["ab - 3 = 0", "-ab + .6be = 0", "-24 + .8x5 - ae = 0", "af = 5"])
@pytest.mark.parametrize(
    ("heading", "kind"),
    [("x", "x"), ("Y", "y"), ("y", "y"), ("sfy", "y"), ("SFx", "x")],
)
def test_a_short_heading_without_a_colon_says_the_same_as_with_one(
    heading: str, kind: str, rest: str
) -> None:
    bare, marked = read(f"{heading} {rest}"), read(f"{heading}: {rest}")
    assert bare.label is not None
    assert marked.label is not None
    assert bare.label.kind == marked.label.kind == kind
    assert typed(bare) == typed(marked) == typed(read(rest))


@pytest.mark.parametrize("text", ["x = 3", "x - 3 = 0", "y 4 = 3", "ab + x = 3", "x"])
def test_a_letter_that_heads_nothing_is_no_heading(text: str) -> None:
    assert isinstance(read_line(text, PORCH.names), Unreadable)


@pytest.mark.parametrize("text", ["EF_x - 3 = 0", "EFx - 3 = 0", "efx = 4"])
def test_the_component_of_a_member_is_not_taken_for_a_heading(text: str) -> None:
    line = read(text)
    assert line.label is None
    assert line.steps[0].sides[0].terms[0].name == "EF"


@pytest.mark.parametrize("heading", ["EFx:", "EFx=0:", "EFx = 0:", "EF_x:"])
def test_before_a_colon_it_is_a_heading_all_the_same(heading: str) -> None:
    label = read(f"{heading} ab - 3 = 0").label
    assert label is not None
    assert label.kind == "x"


@pytest.mark.parametrize(
    ("text", "passed"),
    [
        ("ax=0 no horizontal loads", "no horizontal loads"),
        ("A_x = 0 kN nothing pushes sideways", "nothing pushes sideways"),
        ("ab=0 no load at the corner", "no load at the corner"),
        ("ax=0 none act across", "none act across"),
    ],
)
def test_words_behind_an_equation_are_passed_over_without_a_comma(text: str, passed: str) -> None:
    line = read(text)
    assert [text[span.start : span.end] for span in line.passed] == [passed]
    assert typed(line) == typed(read(text.removesuffix(passed)))


@pytest.mark.parametrize(
    "text",
    [
        "ax=0 no ab",
        "ax=5 plus some",
        "ax=5 not - 3",
        "ax = 5 no bq",
        "ax=6 over there",
        "ax=5 cd de",
    ],
)
def test_words_that_may_be_statics_are_never_passed_over(text: str) -> None:
    assert isinstance(read_line(text, PORCH.names), Unreadable)


@pytest.mark.parametrize("text", ["ax=-5 no compression", "ab=5 kN no tension", "by=7 not down"])
def test_a_word_that_is_denied_says_nothing_of_the_value(text: str) -> None:
    side = read(text).result.sides[-1]
    assert (side.letter, side.sense) == (None, None)


@pytest.mark.parametrize(
    ("text", "letter", "sense"),
    [
        ("ay=-4 so down 4", None, "down"),
        ("ay=-4 kN ie acts down 4kN", None, "down"),
        ("ay = up 4 kN", None, "up"),
        ("ab=-3 hence compression 3 kN", "C", None),
        ("ab = tension 3", "T", None),
    ],
)
def test_a_way_before_a_number_alone_is_that_of_the_number(
    text: str, letter: str | None, sense: str | None
) -> None:
    side = read(text).result.sides[-1]
    assert (side.letter, side.sense) == (letter, sense)


@pytest.mark.parametrize("text", ["ay = down 4 up", "ab = tension 3 C", "ay = up 4 + by"])
def test_a_way_before_a_number_is_not_read_beside_another_or_in_a_sum(text: str) -> None:
    assert isinstance(read_line(text, PORCH.names), Unreadable)


@pytest.mark.parametrize("text", ["ay=7, by-3=0", "ay=7; 2by - 3 = 0", "ay=7 since 3by-21=0"])
def test_a_reaction_that_is_spelled_like_a_word_is_never_passed_over_as_one(text: str) -> None:
    line = read(text)
    assert not line.passed
    assert [step.links[0].names for step in line.steps] == [("A_y",), ("B_y",)]


@pytest.mark.parametrize("text", ["ay=7, by moments about B", "ay=7 since nothing else is there"])
def test_a_reason_in_words_is_passed_over(text: str) -> None:
    line = read(text)
    assert len(line.passed) == len(line.steps) == 1


@pytest.mark.parametrize(
    "text", ["joint A y: A_y + AE = 0", "at A y: A_y + AE = 0", "Joint A x: A_x = 0"]
)
def test_a_direction_behind_a_place_is_no_component_of_its_reaction(text: str) -> None:
    line = read(text)
    assert line.label is not None
    assert (line.label.kind, line.label.point) == (text.split(":")[0][-1], "A")


@pytest.mark.parametrize(
    "text", ["AE # 12.5", "A_y + AE = 0 # 1.5", "A_x = 0 // 2.5", "AB = 3 # 7"]
)
def test_a_number_behind_a_remark_is_a_result_only_where_a_line_comes_to_it(text: str) -> None:
    found = read_line(text, PORCH.names)
    assert isinstance(found, Unreadable) or len(found.steps) + len(found.steps[0].sides) <= 3


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("EFx = A_x + 0.6 AF = 0", "x"),
        ("EFx = 0 = A_x + 0.6 AF", "x"),
        ("EFy 10 + ae = 0", "y"),
        ("EFx: AB - 3 = 0", "x"),
        ("efy = A_y + ae = 0", "y"),
        ("EMa = 3 B_y - 7*3 = 0", "moment"),
        ("EM A = 0  3 B_y - 7*3 = 0", "moment"),
        ("EMA = 0 = 3 B_y - 7*3", "moment"),
    ],
)
def test_an_e_typed_for_sigma_heads_a_sum_also_beside_a_member_of_that_name(
    text: str, kind: str
) -> None:
    line = read(text)
    assert line.label is not None
    assert line.label.kind == kind
    assert all(
        term.name != "EF" for step in line.steps for side in step.sides for term in side.terms
    )


@pytest.mark.parametrize("text", ["EF_x = 4", "efx = 4", "EFx = 3/5*10", "EFx = 0", "EF = 3"])
def test_a_value_of_the_member_or_of_its_component_stays_one(text: str) -> None:
    line = read(text)
    assert line.label is None
    assert line.steps[0].sides[0].terms[0].name == "EF"


def test_the_name_of_a_member_that_is_a_word_as_well_is_no_talk() -> None:
    """ca. is about, and CA a member: a second statement of it is not passed over."""
    yard = plain_problem(
        [("A", 0, 0), ("B", 4, 0), ("C", 4, 3)],
        ("AB", "BC", "CA"),
        [Support("A", "pin"), Support("B", "roller")],
        [down("C", 5)],
    )
    line = read_line("5 - 4/5 CA = 0 => 7 CA = 1234", yard.names)
    assert isinstance(line, Line)
    assert len(line.steps) == 2
