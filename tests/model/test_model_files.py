"""Are whole files read as they are written, with all their defects at once?"""

from __future__ import annotations

import os
from fractions import Fraction
from pathlib import Path

import pytest
from test_model_defects import SOUND

from tutor.model import Defect, ProblemError, Tolerance, defects, load_problem, write_problem

MANY = """\
title = "Lamp arm
forse = "kN"
length = metre
members = ["AB", "BC" "CA"]
level = 7

[joints]
A = [0, 0]
B = [4, 3/2]
A = [1, 1]
D = [.5, 1]
E = [1, 2
F = [0 0]

[supports]
A = "pim"
A = "pin"
Q = "roller"

[[loads]]
at = "Q"
down = 0
[loads]
at = "D"
down = true
colour: red
"""


def write(folder: Path, content: str | bytes, name: str = "arm.toml") -> Path:
    path = folder / name
    path.write_bytes(content.encode() if isinstance(content, str) else content)
    return path


def refused(path: Path | str) -> tuple[Defect, ...]:
    with pytest.raises(ProblemError) as caught:
        load_problem(path)
    return caught.value.problems


def test_all_defects_are_reported_at_once_in_line_order() -> None:
    lines = [defect.line for defect in defects(MANY)]
    assert lines == [1, 2, 3, 4, 5, 9, 10, 11, 12, 13, 16, 17, 18, 21, 22, 23, 25, 26]


def test_a_defect_in_toml_hides_no_defect_in_the_truss() -> None:
    text = SOUND.replace("level = 2", "level = two").replace('"CA"', '"CX"')
    assert [defect.line for defect in defects(text)] == [4, 5]


def test_a_line_that_is_lost_is_not_reported_missing_as_well() -> None:
    text = SOUND.replace("C = [2, 3]", "C [2, 3]")
    assert [defect.line for defect in defects(text)] == [10]


def test_keys_below_a_heading_are_reported_and_still_read() -> None:
    members = 'members = ["AB", "BC", "CX"]\n'
    text = SOUND.replace('members = ["AB", "BC", "CA"]\n', "") + "\n"
    text = text.replace("[supports]", members + "[supports]")
    found = defects(text)
    assert [defect.line for defect in found] == [11, 11]
    assert found[0].message == "members stands under [joints]"
    assert "goes to joint X" in found[1].message


def test_a_joint_may_be_named_as_a_key_is() -> None:
    text = SOUND.replace("C = [2, 3]", "level = [2, 3]").replace('at = "C"', 'at = "level"')
    text = text.replace('"BC", "CA"', '"B-level", "level-A"').replace("level = 2\n", "")
    assert defects(text) == ()


def test_a_list_over_several_lines_gives_each_place_its_line() -> None:
    text = SOUND.replace('["AB", "BC", "CA"]', '[ # three\n  "AB",\n  "BX",\n\n  "CY",\n  "CA"]')
    assert [defect.line for defect in defects(text)] == [7, 9]


def test_inline_tables_and_dotted_keys_have_their_lines_too() -> None:
    head = SOUND[: SOUND.index("[joints]")]
    text = (
        head
        + "joints.A = [0, 0]\njoints.B = [4, true]\njoints.C = [2, 3]\n"
        + 'supports = { A = "pin", B = "rolle" }\n'
        + 'loads = [\n  { at = "C", down = 12 },\n  { at = "C", down = 0 },\n]\n'
    )
    assert [defect.line for defect in defects(text)] == [8, 10, 13]


def test_words_in_a_story_are_not_taken_for_keys_or_headings() -> None:
    story = 'story = """\n[joints]\nA = [1, 1]\n# "quoted"\ntitle = 3\n"""\nlevel = 9'
    found = defects(SOUND.replace("level = 2", story))
    assert [defect.line for defect in found] == [10]


def test_a_text_that_is_never_closed_is_one_defect_not_a_missing_truss() -> None:
    found = defects(SOUND.replace("level = 2", 'story = """Once'))
    assert [(defect.line, defect.message[:8]) for defect in found] == [(4, "the text")]


def test_a_member_that_can_be_split_in_two_ways_asks_which() -> None:
    text = SOUND.replace("A = [0, 0]", "A = [0, 0]\nAB = [0, 5]\nBC = [-3, 5]")
    text = text.replace('"CA"]', '"CA", "ABC", "AB-C", "BC-A"]')
    found = defects(text)
    assert [defect.message for defect in found] == ['member "ABC" can be read in two ways']
    assert '"A-BC" or "AB-C"' in found[0].cure


def test_a_longer_member_name_reads_with_and_without_its_dash(tmp_path: Path) -> None:
    text = SOUND.replace("C = [2, 3]", "U1 = [2, 3]").replace('at = "C"', 'at = "U1"')
    for spelling in ('"B-U1", "U1-A"', '"BU1", "U1A"', '"B – U1", "U1−A"'):
        path = write(tmp_path, text.replace('"BC", "CA"', spelling))
        assert [m.name for m in load_problem(path).members] == ["AB", "B-U1", "U1-A"]


CROSSED = (
    SOUND.replace("C = [2, 3]", "C = [4, 4]\nD = [0, 4]")
    .replace('["AB", "BC", "CA"]', '[\n"AB", "BC", "CD", "DA",\n"AC",\n"DB"]')
)  # fmt: skip


def test_members_that_cross_without_a_joint_are_a_warning_and_no_obstacle(tmp_path: Path) -> None:
    found = defects(CROSSED)
    assert [(d.line, d.severity, d.message) for d in found] == [
        (8, "warning", "member DB crosses member AC without a joint")
    ]
    assert load_problem(write(tmp_path, CROSSED)).title == "Lamp arm"


def test_a_joint_lying_on_a_member_is_a_warning() -> None:
    text = SOUND.replace("C = [2, 3]", "C = [2, 3]\nD = [2, 0]")
    text = text.replace('"CA"]', '"CA", "CD"]')
    found = defects(text)
    assert [(d.line, d.severity) for d in found] == [(5, "warning")]
    assert found[0].message == "joint D lies on member AB without being joined to it"
    assert "two members that meet at D" in found[0].cure


def test_members_that_meet_at_a_joint_do_not_cross() -> None:
    text = SOUND.replace("C = [2, 3]", "C = [2, 3]\nD = [2, 1]")
    assert defects(text.replace('"CA"]', '"CA", "DA", "DB", "DC"]')) == ()


def test_two_joints_at_one_place_and_the_member_between_them_are_defects() -> None:
    text = SOUND.replace("C = [2, 3]", 'C = ["8/2", 0.0]')
    messages = [(d.line, d.message) for d in defects(text)]
    assert messages == [
        (5, "member BC has no length"),
        (10, "joints B and C are at one place"),
    ]


def test_more_than_500_joints_are_one_defect() -> None:
    joints = "".join(f"J{i} = [{i}, 1]\n" for i in range(498))
    few = defects(SOUND.replace("C = [2, 3]\n", "C = [2, 3]\n" + joints[: joints.rindex("J497")]))
    many = defects(SOUND.replace("C = [2, 3]\n", "C = [2, 3]\n" + joints))
    assert not any("more than 500" in defect.message for defect in few)
    assert [(d.line, d.message) for d in many] == [(7, "there are 501 joints, more than 500")]


def test_more_defects_than_anyone_reads_are_counted() -> None:
    found = defects("".join(f"key{i} = 1\n" for i in range(300)))
    assert len(found) == 201
    assert "more defects" in found[-1].message


def test_a_file_that_is_not_toml_at_all_is_given_up_after_fifty_lines() -> None:
    found = defects("some words\n" * 5000)
    assert [defect.line for defect in found] == list(range(1, 52))
    assert "the rest is not looked at" in found[-1].message


def test_a_number_of_thousands_of_digits_is_a_defect_like_any_other() -> None:
    found = defects(SOUND.replace("C = [2, 3]", f"C = [2, {'9' * 5000}]"))
    assert [defect.line for defect in found] == [10]
    assert len(str(found[0])) < 500


@pytest.mark.parametrize(
    ("text", "exact", "shown"),
    [
        ("3", Fraction(3), "3"),
        ("1.50", Fraction(3, 2), "1.50"),
        ("1_000.5", Fraction(2001, 2), "1000.5"),
        ("1e3", Fraction(1000), "1e3"),
        ("+4", Fraction(4), "4"),
        ("0x10", Fraction(16), "16"),
        ('"3/2"', Fraction(3, 2), "3/2"),
        ("0.1", Fraction(1, 10), "0.1"),
    ],
)
def test_numbers_are_the_exact_decimals_they_are_written_as(
    tmp_path: Path, text: str, exact: Fraction, shown: str
) -> None:
    problem = load_problem(write(tmp_path, SOUND.replace("[2, 3]", f"[2, {text}]")))
    y = problem.joint["C"].y
    assert (y.fraction, y.value, y.text) == (exact, float(exact), shown)


@pytest.mark.parametrize(
    ("text", "value"), [("5*sqrt(3)/2", 4.330127018922193), ("2*tan(30)", 1.1547005383792515)]
)
def test_a_text_is_an_exact_expression(tmp_path: Path, text: str, value: float) -> None:
    problem = load_problem(write(tmp_path, SOUND.replace("[2, 3]", f'[2, "{text}"]')))
    y = problem.joint["C"].y
    assert y.fraction is None
    assert y.value == pytest.approx(value, rel=1e-14)
    assert float(y.sympy()) == pytest.approx(value, rel=1e-14)
    assert load_problem(write(tmp_path, write_problem(problem))) == problem


def test_every_part_of_the_contract_is_read(tmp_path: Path) -> None:
    text = """\
title = "Lamp arm over the ferry steps"
story = \"\"\"
A wall-mounted arm
carries a lamp.\"\"\"
topics = ["cantilever"]
level = 1
id = "arm-1"
given = ["reactions"]
force = "kN"
length = "m"
members = ["AB", "BC", "CA"]
[joints]
A = [0, 0]
B = [4, 0]
C = [2, "3/2"]
[supports]
A = { roller = 0 }
B = "roller"
C = { link = [-1, 4] }
[[loads]]
at = "C"
down = 12
right = 3
[[loads]]
at = "C"
size = 5
angle = 210
[tolerance]
silent = 1
remark = 2.5
"""
    problem = load_problem(write(tmp_path, text))
    assert problem.story == "A wall-mounted arm\ncarries a lamp."
    assert (problem.topics, problem.level, problem.id) == (("cantilever",), 1, "arm-1")
    assert problem.given == ("reactions",)
    assert problem.tolerance == Tolerance(silent=0.01, remark=0.025)
    assert [r.name for r in problem.reactions] == ["A_x", "B_y", "R_C"]
    assert problem.loads[0].vector == (3.0, -12.0)
    assert problem.loads[1].vector == pytest.approx((-5 * 3**0.5 / 2, -2.5))
    assert problem.source == tmp_path / "arm.toml"
    assert load_problem(write(tmp_path, write_problem(problem))) == problem


def test_control_characters_and_turned_text_never_get_in(tmp_path: Path) -> None:
    words = '"\\u001b[31mLamp\\u0007\\u202e arm\\t\\u0085\\u2066!\\u009b"'
    text = SOUND.replace('"Lamp arm"', words).replace("level = 2", f"story = {words}\nid = {words}")
    problem = load_problem(write(tmp_path, text))
    assert problem.title == "[31mLamp arm !"
    assert problem.id == problem.title
    assert problem.story == "[31mLamp arm \n!"


def test_messages_hold_no_control_characters(tmp_path: Path) -> None:
    text = SOUND.replace('"kN"', '"\\u001b]0;x\\u0007"').replace('"CA"', '"\\u001b[2J"')
    found = refused(write(tmp_path, text, "a\x1b[31m\nb.toml"))
    assert len(found) == 2
    assert all(str(defect).isprintable() for defect in found)
    listed = defects(SOUND.replace("C = ", '"C\\u001b[2J" = '))
    assert any("C[2J" in defect.cure for defect in listed)
    assert all(str(defect).isprintable() for defect in listed)


def test_what_follows_a_heading_that_cannot_be_read_is_not_put_elsewhere() -> None:
    found = defects(SOUND.replace("[[loads]]", "x [[loads]]"))
    assert [(d.line, d.message) for d in found] == [(16, '"x [[loads]]" has no =')]


def test_a_byte_order_mark_and_windows_line_ends_are_no_defect(tmp_path: Path) -> None:
    content = b"\xef\xbb\xbf" + SOUND.replace("\n", "\r\n").encode()
    assert load_problem(write(tmp_path, content)).title == "Lamp arm"


def test_line_numbers_hold_with_windows_line_ends(tmp_path: Path) -> None:
    bad = SOUND.replace('"CA"', '"CX"').replace("level = 2", "level = two")
    found = refused(write(tmp_path, bad.replace("\n", "\r\n")))
    assert [defect.line for defect in found] == [4, 5]


def test_a_file_that_is_not_utf8_says_where_and_is_read_on(tmp_path: Path) -> None:
    text = SOUND.replace("Lamp arm", "Brücke").replace('"CA"', '"CX"')
    found = refused(write(tmp_path, text.encode("latin-1")))
    assert found[0].cure == "save the file as UTF-8"
    assert "0xFC" in found[0].message
    assert [defect.line for defect in found] == [1, 5]


def test_a_file_in_utf16_is_told_so(tmp_path: Path) -> None:
    found = refused(write(tmp_path, SOUND.encode("utf-16")))
    assert [(d.line, d.message) for d in found] == [(1, "the file is in UTF-16")]


def test_a_file_over_a_megabyte_is_not_read(tmp_path: Path) -> None:
    found = refused(write(tmp_path, SOUND + "#" * 1_000_000))
    assert [d.message for d in found] == ["the file is over 256 kB"]


def test_an_empty_file_says_all_that_is_missing(tmp_path: Path) -> None:
    assert len(refused(write(tmp_path, ""))) == 7


def test_a_file_that_is_not_there_a_folder_a_pipe_and_an_impossible_name(tmp_path: Path) -> None:
    pipe = tmp_path / "pipe.toml"
    os.mkfifo(pipe)
    for path, says in (
        (tmp_path / "none.toml", "there is no such file"),
        (tmp_path, "this is a folder"),
        (pipe, "no ordinary file"),
        ("/dev/zero", "no ordinary file"),
        ("a\0b", "cannot be read"),
        ("x" * 5000, "cannot be read"),
        ("\udcff.toml", "there is no such file"),
    ):
        found = refused(path)
        assert len(found) == 1
        assert says in found[0].message
        assert found[0].file
        assert str(found[0]).isprintable()


@pytest.mark.skipif(os.geteuid() == 0, reason="root may read everything")
def test_a_file_without_permission_says_so(tmp_path: Path) -> None:
    path = write(tmp_path, SOUND)
    path.chmod(0)
    assert "may not be read" in refused(path)[0].message


def test_the_error_reads_as_its_defects_one_a_line(tmp_path: Path) -> None:
    path = write(tmp_path, SOUND.replace("level = 2", "level = 9").replace("12", "0"))
    with pytest.raises(ProblemError) as caught:
        load_problem(path)
    first, second = str(caught.value).split("\n")
    assert first == f"{path}:4: level is 9; write a whole number from 1 to 6"
    assert second.startswith(f"{path}:18: ")


def test_warnings_come_with_the_errors_of_a_file(tmp_path: Path) -> None:
    found = refused(write(tmp_path, CROSSED.replace("down = 12", "down = 0")))
    assert [d.severity for d in found] == ["warning", "error"]
    assert str(found[0]).startswith(f"{tmp_path / 'arm.toml'}:8: warning: ")
