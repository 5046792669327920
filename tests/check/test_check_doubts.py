"""Is the instructor warned of what may surprise, at its line, and of nothing else?"""

from __future__ import annotations

import io
import json
import math
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given
from strategies import trusses

from tutor import cli
from tutor.check import check
from tutor.check.doubts import DOUBTS
from tutor.check.told import Bar
from tutor.check.twins import truss_of
from tutor.model import Defect, Problem
from tutor.statics import solve
from tutor.variants import pulling_rollers

HOIST = """\
title = "Hoist"
force = "kN"
length = "m"
members = ["AB", "BC", "AC"]

[joints]
A = [0, 0]
B = [0, 3]
C = [4, 0]

[supports]
A = { roller = 0 }
B = "pin"

[[loads]]
at = "C"
down = 12
"""
BRIDGE = """\
title = "Bridge"
force = "kN"
length = "m"
members = [{members}]

[joints]
{joints}

[supports]
P0 = "pin"
P{last} = "roller"

[[loads]]
at = "P1"
down = 10
"""
STUCK = """\
title = "Ring"
force = "kN"
length = "m"
members = ["AB", "CD", "EF", "AC", "BD", "CE", "DF", "AE", "BF"]

[joints]
A = [0, 0]
B = [9, 1]
C = [2, 7]
D = [12, 8]
E = [4, 3]
F = [7, 5]

[supports]
A = "pin"
B = "roller"

[[loads]]
at = "C"
down = 10
"""


def warned(folder: Path, text: str, name: str = "a") -> list[Defect]:
    folder.mkdir(exist_ok=True)
    (folder / f"{name}.toml").write_text(text, "utf-8")
    found = check(folder)
    assert found.sound, found.defects
    return list(found.defects)


def test_of_a_tidy_problem_nothing_is_said(tmp_path: Path) -> None:
    assert warned(tmp_path, HOIST) == []


def long_bridge(panels: int) -> str:
    """A row of triangles, named after their places: the bottom chord P, the top chord T."""
    bottom, top = range(panels + 1), range(panels)
    members = [f"P{i}-P{i + 1}" for i in top] + [f"T{i}-T{i + 1}" for i in range(panels - 1)]
    members += [f"P{i}-T{i}" for i in top] + [f"T{i}-P{i + 1}" for i in top]
    joints = [f"P{i} = [{4 * i}, 0]" for i in bottom] + [f"T{i} = [{4 * i + 2}, 2]" for i in top]
    quoted = ", ".join(f'"{member}"' for member in members)
    return BRIDGE.format(members=quoted, joints="\n".join(joints), last=panels)


@pytest.mark.parametrize(
    ("code", "text", "line", "says"),
    [
        ("roller-pulls", HOIST.replace("roller = 0", "roller = 180"), 12, "pull with 16 kN"),
        ("awkward-numbers", HOIST.replace("C = [4, 0]", "C = [2, 0]"), 4, "the slope of BC"),
        ("awkward-numbers", HOIST.replace("12", "12.34"), 15, "A_x, 16.4533 kN, and 4 more"),
        ("nearly-zero", HOIST.replace("down = 12", "down = 0.01\nright = 15"), 15, "nearly zero"),
        ("cramped", long_bridge(14), 22, "columns apart in a window of 80x24"),
        ("no-joint-to-begin", STUCK, 4, "at no joint there are as few as two"),
    ],
    ids=["roller", "slope", "figures", "zero", "cramped", "start"],
)
def test_a_surprise_is_a_warning_with_its_code_at_its_line(
    tmp_path: Path, code: str, text: str, line: int, says: str
) -> None:
    found = [each for each in warned(tmp_path, text) if each.code == code]
    assert len(found) >= 1
    assert found[0].severity == "warning"
    assert says in found[0].message
    assert found[0].cure
    assert found[0].line == line


def test_every_code_is_seen_by_a_test() -> None:
    text = Path(__file__).read_text("utf-8")
    assert all(text.count(f'"{code}"') for code in DOUBTS)


def test_two_problems_that_are_one_are_told_at_the_later(tmp_path: Path) -> None:
    warned(tmp_path, HOIST)
    renamed = HOIST.replace("Hoist", "Crane").replace('"AB", "BC", "AC"', '"XB", "BC", "XC"')
    renamed = renamed.replace("A = [0, 0]", "X = [0, 0]").replace("A = {", "X = {")
    for joint in ("[0, 0]", "[0, 3]", "[4, 0]"):
        x, y = (int(part) for part in joint.strip("[]").split(","))
        renamed = renamed.replace(joint, f"[{x + 7}, {y - 2}]")
    (found,) = warned(tmp_path, renamed, "b")
    assert (found.code, Path(found.file).name) == ("twins", "b.toml")
    assert "the truss of a" in found.message
    other = renamed.replace("down = 12", "down = 15")
    assert warned(tmp_path, other, "b") == []
    (same,) = warned(tmp_path, other.replace("Crane", "hoist"), "b")
    assert "the same title" in same.message


@given(trusses())
def test_a_truss_is_its_own_twin_wherever_it_stands(problem: Problem) -> None:
    turned = replace(
        problem,
        title="Another",
        joints=tuple(reversed(problem.joints)),
        loads=tuple(reversed(problem.loads)),
    )
    assert truss_of(turned) == truss_of(problem)


@given(trusses())
def test_a_roller_is_said_to_pull_just_where_its_force_is_against_its_push(
    problem: Problem,
) -> None:
    answer = solve(problem)
    pulling = pulling_rollers(answer)
    for support in problem.supports:
        if support.kind != "roller":
            assert support.joint not in pulling
            continue
        degrees = 90.0 if support.angle is None else support.angle.value
        (reaction,) = (r for r in problem.reactions if r.joint == support.joint)
        force = answer.value(reaction.name)
        x, y = force * reaction.direction.x, force * reaction.direction.y
        push = x * math.cos(math.radians(degrees)) + y * math.sin(math.radians(degrees))
        assert (push < 0) == (support.joint in pulling)


VARIED = HOIST + "\n[vary]\nloads = { C = { down = [9, 12, 15, 18, 21, 24] } }\n"


class TestNumbersThatVary:
    def test_need_a_set_with_an_id(self, tmp_path: Path) -> None:
        (found,) = warned(tmp_path, VARIED)
        assert found.code == "set-without-id"
        (tmp_path / "set.toml").write_text('title = "Week 3"\nid = "week-3"', "utf-8")
        assert warned(tmp_path, VARIED) == []

    def test_of_a_set_without_an_id_are_told_once(self, tmp_path: Path) -> None:
        for name in ("a", "b", "c"):
            (tmp_path / f"{name}.toml").write_text(
                VARIED.replace('title = "', f'title = "{name} '), "utf-8"
            )
        found = [d for d in check(tmp_path).defects if d.code == "set-without-id"]
        assert [Path(each.file).name for each in found] == ["a.toml"]

    def test_that_meet_no_condition_are_an_error_which_names_it(self, tmp_path: Path) -> None:
        (tmp_path / "a.toml").write_text(VARIED + 'keep = ["AC in tension"]\n', "utf-8")
        found = check(tmp_path)
        assert not found.sound
        (error,) = (each for each in found.defects if each.severity == "error")
        assert error.line == 19
        assert "AC in tension" in error.message

    def test_of_a_truss_without_forces_are_told_at_their_own_line(self, tmp_path: Path) -> None:
        loose = VARIED.replace('"pin"', "{ roller = 0 }").replace(
            "force =", 'truss = "unstable"\nforce ='
        )
        (tmp_path / "a.toml").write_text(loose, "utf-8")
        (error,) = (each for each in check(tmp_path).defects if each.severity == "error")
        assert loose.splitlines()[error.line - 1] == "[vary]"

    @pytest.mark.parametrize(
        ("old", "new", "code", "says"),
        [
            ("9, 12, 15, 18, 21, 24", "9, 12", "few-variants", "only 2 different"),
            ('"Hoist"', '"Hoist for 12 kN"', "words-that-stay", "title says 12, which varies"),
            ('"Hoist"', '"Hoist on the left"', "words-that-stay", 'title says "left"'),
        ],
    )
    def test_are_looked_through_for_what_a_student_would_see(
        self, tmp_path: Path, old: str, new: str, code: str, says: str
    ) -> None:
        (tmp_path / "set.toml").write_text('title = "Week 3"\nid = "week-3"', "utf-8")
        text = VARIED + ("mirror = true\n" if "left" in new else "")
        (found,) = warned(tmp_path, text.replace(old, new, 1))
        assert found.code == code
        assert says in found.message

    def test_leave_words_alone_that_only_look_like_a_side(self, tmp_path: Path) -> None:
        (tmp_path / "set.toml").write_text('title = "Week 3"\nid = "week-3"', "utf-8")
        told = (
            "All right: the upright stands at a right angle, right away, at the {left|right} end."
        )
        assert warned(tmp_path, VARIED.replace('"Hoist"', f'"{told}"') + "mirror = true\n") == []


def test_the_same_is_told_as_json(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    warned(tmp_path, HOIST.replace("roller = 0", "roller = 180"))
    (tmp_path / "b.toml").write_text(HOIST.replace('"kN"', '"kn"'), "utf-8")
    assert cli.main(["check", "--json", str(tmp_path)]) == 1
    told = json.loads(capsys.readouterr().out)
    assert (told["problems"], told["sound"]) == (2, False)
    assert [(each["line"], each["severity"], each.get("code")) for each in told["defects"]] == [
        (2, "error", None),
        (12, "warning", "roller-pulls"),
    ]
    assert all(each["message"] and each["cure"] and each["file"] for each in told["defects"])


class Terminal(io.StringIO):
    def isatty(self) -> bool:
        return True


def test_a_long_check_shows_on_a_terminal_how_far_it_is_and_leaves_nothing_behind() -> None:
    stream = Terminal()
    bar = Bar(stream)
    for done in range(1, 101):
        bar(done, 100)
    assert "50 of 100" in stream.getvalue()
    bar.clear()
    last = stream.getvalue().rsplit("\r", 2)
    assert last[-1] == ""
    assert last[-2].strip() == ""
    assert len(last[-2]) >= len("[" + "#" * 30 + "] 100 of 100")


def test_no_bar_is_drawn_where_there_is_no_terminal() -> None:
    stream = io.StringIO()
    bar = Bar(stream)
    for done in range(1, 101):
        bar(done, 100)
    bar.clear()
    assert stream.getvalue() == ""
