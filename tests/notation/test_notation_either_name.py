"""Which of two forces does a name mean that spells both?"""

from __future__ import annotations

import pytest

from tutor.notation import Names, Unreadable, read_line

SPELLED_TWICE = Names.of(
    [("RC", "R", "C"), ("CM", "C", "M"), ("RM", "R", "M")],
    ["R_C", "M_x", "M_y"],
    ["R", "C", "M"],
    "kN",
    "m",
)


def unknowns(text: str) -> list[set[str]]:
    """The unknowns of each of the readings of a line."""
    line = read_line(text, SPELLED_TWICE)
    assert not isinstance(line, Unreadable), line.message
    return [
        {term.name for step in one.steps for side in step.sides for term in side.terms if term.name}
        for one in (line, *line.alternatives)
    ]


def test_beside_the_member_by_its_other_name_it_is_the_reaction() -> None:
    assert unknowns("RC + 0.6 CR - 0.8 CM = 0") == [{"R_C", "RC", "CM"}]


def test_in_an_equation_it_is_read_as_each_of_them() -> None:
    assert unknowns("4 RC - 12 = 0.8 CM") == [{"R_C", "CM"}, {"RC", "CM"}]


@pytest.mark.parametrize("text", ["RC = 12", "RC = 12 (T)", "rc = 24/2 = 12 kN"])
def test_a_value_alone_is_asked_about(text: str) -> None:
    found = read_line(text, SPELLED_TWICE)
    assert isinstance(found, Unreadable)
    assert "write F_RC or R_C" in found.message or "write R_C or F_RC" in found.message
