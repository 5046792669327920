"""Do the comments and the layout of a file by hand survive when its truss is changed and saved?"""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tutor.drafting import Draft, saved
from tutor.model import Problem
from tutor.model.read import read_text

BY_HAND = """\
#:schema ./problem.schema.json
# by hand
title = "Arm"  # short
force = "kN"
length = "m"
members = [
  "AB", # post
  "BC", # tie
  "AC",
]

# where things are
[joints]
A = [0, 0] # wall
B = [0, 3] # up
C = [4, 0]

[supports]
A = "pin" # hinge
B = { roller = 0 }

# the lamp
[[loads]]
at = "C" # tip
down = 12 # heavy

# the wind
[[loads]]
at = "B"
size = 5
angle = 210 # gust
"""
COMMENTS = ("by hand", "short", "post", "tie", "where things are", "wall", "up", "hinge", "the lamp",
            "tip", "heavy", "the wind", "gust")  # fmt: skip
CHANGES = (
    *("C 13 down", "C 4 right", "drop load C", "drop load B", "B 3 up", "A 2 left", "drop BC"),
    *("D 2 2; AD BD; D 3 down", "C 5 0", "drop support A", "A roller; B pin", "rename C U1"),
    *("title Lamp", "lb ft", "drop C", "clear; warren 12 3 4 load 3", "undo"),
)


def changed(lines: list[str]) -> tuple[Problem, str]:
    """The truss after these lines, and what is saved of it over the file."""
    problem = read_text(BY_HAND, "text").problem
    assert problem is not None
    draft = Draft(start=problem)
    for line in lines:
        draft.type(line)
    return draft.problem, saved(draft.problem, BY_HAND)


@given(st.lists(st.sampled_from(CHANGES), max_size=5))
def test_no_comment_of_a_file_by_hand_is_lost_or_doubled(lines: list[str]) -> None:
    _, text = changed(lines)
    for comment in COMMENTS:
        assert text.count(f"# {comment}\n") == 1, (lines, comment, text)


@given(st.lists(st.sampled_from(CHANGES), max_size=5))
def test_the_schema_is_named_once_and_first(lines: list[str]) -> None:
    _, text = changed(lines)
    assert text.startswith("#:schema ")
    assert text.count("#:schema") == 1


@given(st.lists(st.sampled_from(CHANGES), max_size=5))
def test_what_is_saved_over_it_loads_as_what_was_drawn(lines: list[str]) -> None:
    problem, text = changed(lines)
    assert read_text(text, "text").problem == read_text(saved(problem), "text").problem


@pytest.mark.parametrize(
    ("line", "rows"),
    [
        ("C 13 down", 'at = "C" # tip\ndown = 13 # heavy\n'),
        ("C 4 right", 'at = "C" # tip\ndown = 12 # heavy\nright = 4\n\n# the wind\n'),
        ("B 3 up", 'angle = 210 # gust\n\n[[loads]]\nat = "B"\nup = 3\n'),
        ("drop load B", "down = 12 # heavy\n"),
        ("D 2 2; AD BD", "C = [4, 0]\nD = [2, 2]\n\n[supports]\n"),
    ],
)
def test_a_change_is_made_in_its_place_and_the_rest_stays_as_it_was(line: str, rows: str) -> None:
    _, text = changed([line])
    assert rows in text
    assert text.index("# the lamp") < text.index("# tip")


def test_what_was_said_of_something_dropped_stands_at_the_head() -> None:
    _, text = changed(["drop load C"])
    assert text.splitlines()[1:4] == ["# tip", "# heavy", "# the wind"]


def test_a_file_that_was_not_changed_is_saved_letter_by_letter() -> None:
    assert changed([])[1] == BY_HAND
