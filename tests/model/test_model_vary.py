"""Is `[vary]` read as it is written, and is every slip in it told on its line with the cure?"""

from __future__ import annotations

import pytest
from broken_files import SOUND
from hypothesis import given
from hypothesis import strategies as st

from tutor.model import Problem, defects, write_problem
from tutor.model.read import read_text
from tutor.model.vary import filled

VARYING = (
    SOUND.replace("Lamp arm", "Lamp arm at the {left|right}").replace(
        "level = 2",
        "story = 'It carries {C down} kN over {span} m, {C x} from the {right | left} end.'",
    )
    + "[vary]\n"
)


def problem_of(text: str) -> Problem:
    read = read_text(text, "text")
    assert read.problem is not None, read.defects
    return read.problem


def test_a_file_that_varies_is_a_problem_as_it_stands_with_its_gaps_filled() -> None:
    problem = problem_of(VARYING + "mirror = true\n")
    assert problem.title == "Lamp arm at the left"
    assert problem.story == "It carries 12 kN over 4 m, 2 from the right end."


def test_braces_are_words_like_others_where_nothing_varies() -> None:
    problem = problem_of(SOUND.replace("Lamp arm", "Lamp {C down} {arm}"))
    assert problem.title == "Lamp {C down} {arm}"


def test_a_range_is_the_list_of_its_steps() -> None:
    listed = problem_of(VARYING + "joints = { C = { y = [2, 2.5, 3] } }\n")
    ranged = problem_of(VARYING + "joints = { C = { y = { from = 2, to = 3.2, step = 0.5 } } }\n")
    assert listed.vary == ranged.vary
    assert listed.vary is not None
    assert [value.text for value in listed.vary.choices[0].values] == ["2", "2.5", "3"]


def test_joints_named_together_change_alike() -> None:
    vary = problem_of(VARYING + 'joints = { "A, B" = { y = [0, 1] } }\n').vary
    assert vary is not None
    assert [choice.joints for choice in vary.choices] == [("A", "B")]


WHOLE = """\
loads = { C = { down = [10, "25/2"] } }
joints = { C = { x = [1, 2], y = ["sqrt(3)", 3] }, "A B" = { y = [0, 1] } }
scale = { x = [1, 1.5], y = [2] }
mirror = true
keep = ["nice", "largest < 100 kN", "smallest >= 0.5", "CA is in compression", "F_AB not zero", "B_y > 3"]
"""


def test_a_file_that_varies_is_written_as_a_file_that_varies_alike() -> None:
    problem = problem_of(VARYING + WHOLE)
    assert problem_of(write_problem(problem)) == problem


@pytest.mark.parametrize(
    ("line", "says", "cure"),
    [
        ("lods = 3\nmirror = true", 'vary has the unknown key "lods"', 'did you mean "loads"?'),
        ("", "vary names nothing that varies", "down = [10, 12, 15]"),
        ("loads = 3", "loads of vary is a number, not a table", "[vary]"),
        ("loads = { C = 3 }", '"C" is a number', "down = [10, 12]"),
        ("loads = { D = { down = [3] } }", "vary names joint D, which is not there", "A, B and C"),
        ("loads = { C = { up = [3] } }", "no load at C has up", "it has down"),
        ("loads = { B = { up = [3] } }", "no load at B has up", "write a [[loads]] at B with up"),
        ("loads = { C = { dwon = [3] } }", '"dwon" is nothing of a load', 'did you mean "down"?'),
        ("loads = { C = { down = [] } }", "the list for C down is empty", "[10, 12, 15]"),
        ("loads = { C = { down = 12 } }", "so it does not vary", "[10, 12, 15]"),
        ("loads = { C = { down = [12, -3] } }", "C down is -3, negative", "positive"),
        ("loads = { C = { down = [12, 0] } }", "C down is 0, so it is no load", "positive"),
        ("loads = { C = { down = ['x'] } }", "C down is", "write"),
        ("joints = { C = { z = [3] } }", '"z" is nothing of a joint', "x and y"),
        ("joints = { C = { x = { from = 1, to = 3 } } }", "the range has no step", "step = 5"),
        ("joints = { C = { x = { from = 3, to = 1, step = 1 } } }", "a range goes up", "step = 5"),
        ("joints = { C = { x = { from = 0, to = 1, step = 1e-9 } } }", "more than 100", "larger"),
        ("joints = { C = { x = { from = 0, to = 900, step = 1 } } }", "more than 100", "dozen"),
        ("joints = { C = { x = [1] }, 'C B' = { x = [2] } }", "gives x at C twice", "one place"),
        ("scale = { x = [0] }", "nothing is left of the truss", "positive"),
        ("scale = { w = [1] }", 'scale has the unknown key "w"', "or y"),
        ('mirror = "yes"', "mirror is a text", "mirror = true"),
        ('mirror = true\nkeep = "nice"', "keep is a text, not a list", '["nice"'),
        ('mirror = true\nkeep = ["nicee"]', 'condition "nicee" cannot be read', '"nice"'),
        ('mirror = true\nkeep = ["largest < 9 N"]', '"9 N" in the condition', "number of kN"),
        ('mirror = true\nkeep = ["AD in tension"]', 'names "AD"', "there are: AB, BC and CA"),
        ('mirror = true\nkeep = ["A_x in tension"]', 'names "A_x"', "AB, BC and CA"),
        ('mirror = true\nkeep = ["B_x > 3"]', 'names "B_x"', 'did you mean "B_y"?'),
        ("mirror = true\nkeep = [3]", "a condition is a number", '"nice"'),
    ],
)
def test_a_slip_in_vary_is_told_with_its_cure(line: str, says: str, cure: str) -> None:
    found = defects(SOUND + "[vary]\n" + line)
    assert len(found) == 1, found
    assert says in found[0].message
    assert cure in found[0].cure


@pytest.mark.parametrize("gap", ["{lft}", "{C dwon}", "{}", "{D x}", "{C up}"])
def test_a_gap_that_nothing_fills_is_told_with_what_could(gap: str) -> None:
    (found,) = defects(SOUND.replace("Lamp arm", f"Lamp {gap} arm") + "[vary]\nmirror = true")
    assert (found.line, f'title has the gap "{gap}"' in found.message) == (1, True)
    assert "{C down}" in found.cure


def test_nothing_is_said_of_names_in_vary_where_the_truss_itself_is_not_read() -> None:
    text = (
        SOUND.replace("B = [4, 0]", "B = [4, ]") + '[vary]\nkeep = ["BC in tension"]\nmirror = true'
    )
    assert [defect.message for defect in defects(text)] == ["joint B is a list of 1, not a place"]


@given(
    st.text(max_size=40), st.dictionaries(st.text(max_size=5), st.text(max_size=5)), st.booleans()
)
def test_filling_gaps_never_raises(text: str, numbers: dict[str, str], mirrored: bool) -> None:
    assert isinstance(filled(text, numbers, mirrored), str)


def test_no_member_of_a_condition_is_missed_where_the_members_cannot_be_read() -> None:
    text = VARYING.replace('"BC"]', '"BC"', 1) + 'keep = ["BC in compression"]\n'
    assert text != VARYING
    found = [defect.message for defect in defects(text)]
    assert found
    assert not [message for message in found if "condition" in message]
