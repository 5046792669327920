"""What does the review say of particular homeworks, tables and reports?"""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime

import pytest
from families import plain_problem
from strategies import pratt
from students_work import homework

from tutor import Fx, Fy, Value, review
from tutor.handed_in import reviewed
from tutor.homework import hint, markdown, read_table, right_lines
from tutor.homework.report import BesideCheck
from tutor.judge import in_words
from tutor.model import Joint, Load, Member, Problem, Support
from tutor.notation import Exact
from tutor.statics import solve


@pytest.fixture(name="mast")
def a_triangle() -> Problem:
    """A at the left pinned, B at the right on a roller, C above: 12 down and 6 to the right at C."""
    return plain_problem(
        (("A", 0, 0), ("B", 8, 0), ("C", 4, 3)),
        ("AB", "BC", "AC"),
        (Support("A", "pin"), Support("B", "roller")),
        (Load("C", (("down", Exact.of(12)), ("right", Exact.of(6)))),),
    )


def written(problem: Problem, digits: int = 4, **changed: float) -> dict[str, dict[str, object]]:
    values = {**solve(problem).values, **changed}
    texts = {n: f"{abs(v):.{digits}g} {'T' if v > 0 else 'C'}" for n, v in values.items() if v}
    return {
        "reactions": {r.name: f"{values[r.name]:.{digits}g}" for r in problem.reactions},
        "forces": {m.name: texts.get(m.name, "0") for m in problem.members},
    }


WHEN = datetime(2031, 5, 6, 7, 8, tzinfo=UTC)


def states(result: object) -> dict[object, str]:
    return {f.name: f.state for f in result.findings}  # type: ignore[attr-defined]


@pytest.fixture(name="bridge")
def a_bridge() -> Problem:
    return pratt(6, 3, 4, 12)


def test_a_lone_wrong_letter_is_named_and_its_neighbours_stay_right(bridge: Problem) -> None:
    true = solve(bridge).values["U2-L3"]
    work = written(bridge, **{"U2-L3": -true})
    result = review(bridge, work)
    wrong = {name for name, state in states(result).items() if state != "right"}
    assert wrong == {"U2-L3"}
    assert set(result.places) <= {"U2", "L3"}
    assert result.finding["U2-L3"].cause is not None
    assert result.finding["U2-L3"].cause.code in ("tension-compression", "sign")


@pytest.mark.parametrize("unit", ["N", "kip", "lb"])
def test_the_right_figures_in_another_unit_are_told_as_such_whatever_the_unit(
    mast: Problem, unit: str
) -> None:
    """AB is 11 kN in tension."""
    work = written(mast)
    assert review(mast, work).right
    work["forces"]["AB"] = f"11 {unit} T"
    cause = review(mast, work).finding["AB"].cause
    assert cause is not None
    assert cause.code == "unit"


def test_a_lone_wrong_number_is_wrong_and_nothing_else(bridge: Problem) -> None:
    work = written(bridge, **{"L2-L3": 31.37})
    result = review(bridge, work)
    assert {n for n, s in states(result).items() if s == "wrong"} == {"L2-L3"}
    assert "follows" not in states(result).values()
    assert set(result.places) <= {"L2", "L3"}


def test_all_signs_reversed_is_one_mistake(bridge: Problem) -> None:
    values = solve(bridge).values
    work = written(bridge, **{m.name: -values[m.name] for m in bridge.members})
    result = review(bridge, work)
    assert [a.mistake.code for a in result.accounts] == ["tension-compression"]
    assert "throughout" in result.accounts[0].mistake.text
    assert states(result)["L0_y"] == "right"


def test_everything_in_another_unit_is_one_mistake(bridge: Problem) -> None:
    work = written(bridge, **{name: 1000 * v for name, v in solve(bridge).values.items()})
    result = review(bridge, work)
    assert result.first == "whole"
    assert [a.mistake.code for a in result.accounts] == ["unit"]


@pytest.mark.parametrize("factor", [4.4482216, 1 / 4.4482216, 1000.0, 0.001, 224.809, 101.972])
def test_so_it_is_whichever_unit_was_taken_for_which(mast: Problem, factor: float) -> None:
    """Loads in kips that were put in as kilonewtons, or the other way round; forces in pounds, in kilograms."""
    work = written(mast, **{name: factor * v for name, v in solve(mast).values.items()})
    assert [(a.place, a.mistake.code) for a in review(mast, work).accounts] == [("whole", "unit")]


@pytest.mark.parametrize("joint", ["U1", "L3", "U3"])
def test_signs_reversed_at_all_joints_but_the_one_that_was_mended_are_one_mistake(
    bridge: Problem, joint: str
) -> None:
    """Members begin there and end there."""
    values = solve(bridge).values
    away = [m.name for m in bridge.members if joint not in (m.start, m.end)]
    result = review(bridge, written(bridge, **{name: -values[name] for name in away}))
    assert [a.mistake.code for a in result.accounts] == ["tension-compression"]
    assert result.accounts[0].throughout


@pytest.mark.parametrize("right", [("U1-L1", "L3-U4"), ("L0-L1", "L3-L4"), ("L0-U1", "U2-L3")])
def test_where_right_members_share_no_joint_none_is_said_to_have_been_mended(
    bridge: Problem, right: tuple[str, ...]
) -> None:
    values = solve(bridge).values
    turned = {m.name: -values[m.name] for m in bridge.members if m.name not in right}
    assert not review(bridge, written(bridge, **turned)).rests


@pytest.mark.parametrize(
    ("order", "first"), [("ACB", "whole"), ("BCA", "whole"), ("CAB", "whole"), ("CBA", "A")]
)
def test_an_order_begins_with_the_whole_truss_where_one_of_its_joints_needs_the_reactions(
    mast: Problem, order: str, first: str
) -> None:
    """From C by B to A no more than two are open at a joint; at A there are two reactions besides."""
    work = {**written(mast, A_y=5.25), "order": list(order)}
    assert review(mast, work).first == first


def test_where_one_slip_at_a_free_joint_explains_all_no_blank_reaction_is_doubted() -> None:
    """At L1 the 12.0 of U1-L1 was taken whole: L1-U2 = (10 - 12.0)/0.832 = -2.40, and so on."""
    chords = plain_problem(
        [(f"L{i}", 4 * i, 0) for i in range(4)] + [(f"U{i}", 4 * i - 2, 3) for i in (1, 2, 3)],
        (
            "L0-L1",
            "L1-L2",
            "L2-L3",
            "U1-U2",
            "U2-U3",
            "L0-U1",
            "U1-L1",
            "L1-U2",
            "U2-L2",
            "L2-U3",
            "U3-L3",
        ),
        (Support("L0", "pin"), Support("L3", "roller")),
        [Load(joint, (("down", Exact.of(10)),)) for joint in ("L1", "L2")],
    )
    lower = {"L0-L1": "6.67 T", "L1-L2": "14.7 T", "L2-L3": "7.99 T"}
    upper = {"U1-U2": "13.3 C", "U2-U3": "16.0 C"}
    first = {"L0-U1": "12.0 C", "U1-L1": "12.0 T", "L1-U2": "2.40 C"}
    last = {"U2-L2": "2.40 T", "L2-U3": "14.4 T", "U3-L3": "14.4 C"}
    result = review(chords, {"forces": {**lower, **upper, **first, **last}})
    (account,) = result.accounts
    assert (account.mistake.code, account.mistake.force) == ("whole-force", "U1-L1")
    assert result.places == ("L1",)


@pytest.mark.parametrize(
    ("order", "values", "place"),
    [("CBA", {"AB": 17}, "B"), ("CBA", {"BC": -13.75, "AB": 17}, "B"), ("ABC", {"AC": 13.75}, "A")],
)
def test_the_load_of_another_joint_is_told_along_either_axis(
    mast: Problem, order: str, values: dict[str, float], place: str
) -> None:
    """The 6 to the right, or the 12 down, of C put into a sum of B or A."""
    result = review(mast, {**written(mast, **values), "order": list(order)})
    assert result.places == (place,)
    assert ("stray-load", "load C") in [(a.mistake.code, a.mistake.force) for a in result.accounts]


def test_reactions_alone_are_checked(mast: Problem) -> None:
    right = review(mast, {"reactions": {"A_x": "6 left", "A_y": "3.75", "B_y": 8.25}})
    assert right.right
    wrong = review(mast, {"reactions": {"A_x": "6 left", "A_y": "8.25", "B_y": "3.75"}})
    assert wrong.first == "whole"
    assert states(wrong)["A_x"] == "right"
    assert wrong.accounts


def test_a_value_that_only_follows_is_not_called_wrong(mast: Problem) -> None:
    """A_y from a moment with one load turned round; the members are worked from it correctly."""
    a_y, b_y = 8.25, 3.75
    ac = -a_y / 0.6
    ab = 6 - 0.8 * ac
    bc = -b_y / 0.6
    work = {
        "reactions": {"A_x": "-6", "A_y": f"{a_y}", "B_y": f"{b_y}"},
        "forces": {"AC": f"{ac:.4g}", "AB": f"{ab:.4g}", "BC": f"{bc:.4g}"},
    }
    result = review(mast, work)
    assert result.first == "whole"
    found = states(result)
    assert {found["AC"], found["AB"], found["BC"]} == {"follows"}
    assert "wrong" in (found["A_y"], found["B_y"])


def test_lines_are_judged_with_the_students_own_values(mast: Problem) -> None:
    lines = [
        (Fy("A"), "A_y + 0.6 F_AC = 0"),
        (Fx("A"), "A_x + F_AB - 0.8 F_AC = 0"),
        (Fx("A"), "A_x + F_AB + "),
        (Value("B_y"), "8.25"),
    ]
    result = review(mast, {"lines": lines})
    assert [states(result)[k] for k in range(4)] == ["right", "wrong", "unchecked", "right"]
    assert result.first == "A"
    assert result.finding[1].cause is not None
    assert (result.finding[1].cause.code, result.finding[1].cause.force) == ("sign", "AC")


def test_a_wrong_line_is_not_called_true_by_what_was_found_with_it(mast: Problem) -> None:
    """3/5 for 4/5 beside one member, the other as it then comes out, or as it is in truth."""
    true = solve(mast).values
    line = (Fy("C"), "-12 - 3/5 F_AC - 4/5 F_BC = 0")
    for ac in (true["AC"], (-12 - 0.8 * true["BC"]) / 0.6):
        work = written(mast, AC=ac)
        for order in (["C", "A"], ["A", "C"]):
            result = review(mast, {**work, "lines": [line], "order": order})
            finding = result.finding[0]
            assert finding.state == "wrong", order
            assert finding.cause is not None
            assert finding.cause.code not in ("other-equation", "other-point", "dependent")


def test_a_wrong_line_is_not_made_true_by_the_values_that_come_of_it() -> None:
    """E hangs from A and D, 9 down: with F_DE = -9 put in, the wrong ΣFy would be ΣFx."""
    bracket = plain_problem(
        (("A", 0, 3), ("D", 0, 0), ("E", 4, 0)),
        ("AE", "DE", "AD"),
        (Support("A", "pin"), Support("D", "roller", Exact.of(0))),
        (Load("E", (("down", Exact.of(9)),)),),
    )
    lines = [(Fy("E"), "4/5 F_AE - 9 = 0"), (Fx("E"), "-F_DE - 4/5 F_AE = 0")]
    for forces in ({"AE": 11.25, "DE": -9}, {"AE": 15, "DE": -9}, {"DE": -9}):
        finding = review(bracket, {"forces": forces, "lines": lines}).finding[0]
        assert finding.state == "wrong"
        assert finding.cause is not None
        assert finding.cause.code not in ("other-equation", "other-point", "dependent")


def test_senses_turn_plain_numbers_round(mast: Problem) -> None:
    work = {"senses": {"A_x": "left", "AC": "C"}, "reactions": {"A_x": 6}, "forces": {"CA": 6.25}}
    assert review(mast, work).right
    assert not review(mast, {**work, "senses": {}}).right


def test_what_cannot_be_read_is_told_and_left_out(mast: Problem) -> None:
    work = {"forces": {"AB": "lots", "XY": "3", "AC": True}, "order": ["A", "Z"], "notes": 3}
    result = review(mast, work)
    assert {(r.name) for r in result.refused} >= {"AB", "XY", "AC", "order", "notes"}
    assert states(result) == {"AB": "unchecked", "AC": "unchecked"}
    assert result.first is None
    assert not result.right


def test_a_sense_that_a_force_cannot_have_is_told_with_its_name(mast: Problem) -> None:
    (refused,) = review(mast, {"senses": {"A_x": "up"}}).refused
    assert (refused.name, refused.text) == ("A_x", "up")
    assert refused.message == "A sense of A_x is right or left."


@pytest.mark.parametrize("seed", [31, 50])
def test_an_order_that_needs_the_reactions_tells_that_they_were_found_before_it(seed: int) -> None:
    """A slip in the sums of the whole truss, with the joints in the order in which they were worked."""
    both = homework(seed)
    assert both is not None
    done = both[0]
    assert done.slips[0].place == "whole"
    joints = [place for place in done.order if place != "whole"]
    assert review(done.problem, {**done.work(), "order": joints}).places == ("whole",)


def test_a_line_of_a_joint_that_is_none_is_told_with_its_number(mast: Problem) -> None:
    work = {"lines": [(Fx("A"), "A_x + F_AB - 0.8 F_AC = 0"), (Fx("Z"), "F_ZA = 0")]}
    assert [refused.name for refused in review(mast, work).refused] == ["line 2"]


@pytest.mark.parametrize("value", [[11], {"AB": 11}, (11, 12), 11j, b"11", True])
def test_what_is_no_number_is_refused_as_a_value(mast: Problem, value: object) -> None:
    (refused,) = review(mast, {"forces": {"AB": value}}).refused
    assert refused.message == "This is no value; write a number like 7.5 or 7.5 C."


def test_a_wrong_value_all_alone_is_not_blamed_on_one_place(bridge: Problem) -> None:
    result = review(bridge, {"forces": {"U2-L3": "99.9 T"}})
    assert states(result) == {"U2-L3": "wrong"}
    assert not result.clear
    assert set(result.places) == {"U2", "L3"}
    assert "do not tell" in result.said


def test_a_truss_that_statics_cannot_solve_is_left_unchecked() -> None:
    problem = Problem(
        title="A loose square",
        force="kN",
        length="m",
        joints=tuple(
            Joint(n, Exact.of(x), Exact.of(y))
            for n, x, y in (("A", 0, 0), ("B", 1, 0), ("C", 1, 1), ("D", 0, 1))
        ),
        members=tuple(Member(n, n[0], n[1]) for n in ("AB", "BC", "CD", "DA")),
        supports=(Support("A", "pin"), Support("B", "roller")),
        loads=(Load("C", (("right", Exact.of(1)),)),),
    )
    result = review(problem, {"forces": {"AB": 1.0}})
    assert states(result) == {"AB": "unchecked"}
    assert result.first is None
    from_file, _, _ = reviewed(problem, "AB = 1", "work.txt")
    for said in (result.said, from_file.said):
        assert said.startswith("Statics alone cannot give the forces of this truss")


def test_joints_close_or_not_with_the_students_values(mast: Problem) -> None:
    work = written(mast, AB=9.0)
    closes = {c.name: c.closes for c in review(mast, work).closures}
    assert closes == {"whole": True, "A": False, "B": False, "C": True}
    closes = {c.name: c.closes for c in review(mast, {"forces": work["forces"]}).closures}
    assert closes["C"] is True
    assert closes["A"] is None


def test_only_the_last_hint_shows_the_line(mast: Problem) -> None:
    lines = [(Fx("A"), "A_x + F_AB - 0.8 F_AC = 0")]
    result = review(mast, {"lines": lines})
    assert hint(result, "look").startswith("At joint A")
    assert "AC" in hint(result, "place")
    ((name, line),) = right_lines(mast, {"lines": lines}, result)
    assert name == "ΣFx at joint A"
    assert line.replace(" ", "") in ("F_AB+4/5F_AC+A_x=0", "A_x+F_AB+4/5F_AC=0")


TABLES = [
    "AB\t11\nAC\t-6.25\nBC\t-13.75",
    "member,force\nAB,11\nAC,-6.25\nBC,-13.75",
    'AB,11\nAC,"-6,25"\nBC,"-13,75"',
    "member;force\nAB;11\nAC;-6,25\nBC;-13,75",
    "member\tforce\tT/C\nAB\t11\tT\nBA\t\t\nAC\t6,25\tC\nBC\t13,75\tC\n",
    "AB = 11 kN T\nAC: 6.25 C\nBC 13.75 kN (C)",
    "| AB | 11 |\n| AC | -6.25 |\n| BC | -13.75 |",
    "﻿F_AB\t11\r\nF_CA\t−6,25\r\nF_{BC}\t-13.75\r\n",
]


@pytest.mark.parametrize("text", TABLES)
def test_a_pasted_table_is_read(mast: Problem, text: str) -> None:
    pasted = read_table(mast, text)
    result = review(mast, pasted.work)
    assert states(result) == {"AB": "right", "AC": "right", "BC": "right"}, (pasted, result)
    assert pasted.refused == ()


@pytest.mark.parametrize(
    ("text", "read"),
    [
        ("AB;1,500\nAC;-6,25", {"AB": "1.500", "AC": "-6.25"}),
        ("AB;1.500\nAC;-6,25", {"AB": "1500", "AC": "-6.25"}),
        ("AB\t1,500\nAC\t-6.25", {"AB": "1500", "AC": "-6.25"}),
        ('AB,"1,500"\nAC,-6.25', {"AB": "1500", "AC": "-6.25"}),
        ("AB;1,500.5\nAC;1.500,5", {"AB": "1500.5", "AC": "1500.5"}),
        ("AB\t1,500,000", {"AB": "1500000"}),
        ("AB\t0,500", {"AB": "0.500"}),
        ("AB\t1.500", {"AB": "1.500"}),
    ],
)
def test_a_comma_parts_thousands_only_where_the_table_shows_it(
    mast: Problem, text: str, read: dict[str, str]
) -> None:
    pasted = read_table(mast, text)
    assert pasted.work["forces"] == read
    assert pasted.refused == ()


def test_a_comma_that_may_mean_two_things_is_asked_about(mast: Problem) -> None:
    pasted = read_table(mast, "AB\t1,500\nA_x\t6")
    assert pasted.work == {"reactions": {"A_x": "6"}, "forces": {}}
    assert [r.name for r in pasted.refused] == ["AB"]
    assert "1500 or 1.500" in pasted.refused[0].message


@pytest.mark.parametrize("blank", ["", "-", "–", " "])
def test_a_blank_in_a_table_is_not_done(mast: Problem, blank: str) -> None:
    pasted = read_table(mast, f"AB\t{blank}\nA_x\t-6")
    assert pasted.work == {"reactions": {"A_x": "-6"}, "forces": {}}
    assert pasted.refused == ()


def test_a_row_that_cannot_be_read_is_told_with_its_number(mast: Problem) -> None:
    pasted = read_table(mast, "AB\t11\nQR\t3\nAC\tlots\nAB\t12")
    assert [r.message.partition(" does")[0].partition(":")[0] for r in pasted.refused] == [
        "Row 2",
        "Row 3",
        "Row 4",
    ]
    assert pasted.work["forces"] == {"AB": "11"}


@pytest.mark.parametrize(("first", "told"), [("member\tforce", []), ("QQ\t5", ["row 1"])])
def test_a_first_row_is_a_heading_only_where_it_has_no_number(
    mast: Problem, first: str, told: list[str]
) -> None:
    pasted = read_table(mast, f"{first}\nAB\t11")
    assert pasted.work["forces"] == {"AB": "11"}
    assert [refused.name for refused in pasted.refused] == told


def test_the_report_says_what_was_right_and_where_it_goes_wrong(mast: Problem) -> None:
    result = review(mast, {**written(mast, AB=9.0)})
    report = markdown(mast, result, datetime(2031, 5, 6, 7, 8, tzinfo=UTC))
    assert "2031-05-06 07:08 UTC" in report
    for name in ("A\\_x", "A\\_y", "B\\_y", "BC", "AC"):
        (row,) = [line for line in report.splitlines() if line.startswith(f"- {name},")]
        assert row.endswith(" is right.")
    (row,) = [line for line in report.splitlines() if line.startswith("- AB,")]
    assert " is wrong" in row
    assert "- Joint A" in report
    assert "9" not in report.replace("2031-05-06", "")


def test_the_report_says_what_is_blank_and_of_a_reaction_how_it_acts(wall: Problem) -> None:
    """The roller at B pushes to the right off its wall."""
    report = markdown(wall, review(wall, without(written(wall), "BC", "A_y")), WHEN)
    assert "- Not done: A\\_y, BC." in report.splitlines()
    assert "- A\\_x, the reaction at A to the right or left, is right." in report.splitlines()


def test_the_report_names_the_equation_of_a_mistake_and_of_each_line(mast: Problem) -> None:
    work = {**written(mast), "lines": [(Fy("C"), "0 = 0"), (Fx("A"), "A_x + AB = 0")]}
    result = review(mast, work)
    lines = [about for about, _ in work["lines"]]
    report = markdown(mast, result, WHEN, BesideCheck(lines=lines, numbers=(7, 9)))
    assert "- Line 7, ΣFy at joint C, is " in report
    assert "- Line 9, ΣFx at joint A, is " in report
    account = result.accounts[0]
    assert account.about is not None
    assert f"- In {in_words(account.about)}: " in report


def test_a_report_of_what_is_of_no_known_kind_says_so(bridge: Problem) -> None:
    lone = review(bridge, {"forces": {"U2-L3": "99.9 T"}})
    assert not lone.accounts
    assert "- Of no kind that is known here." in markdown(bridge, lone, WHEN)
    named = review(bridge, written(bridge, **{"U2-L3": -solve(bridge).values["U2-L3"]}))
    assert "Of no kind" not in markdown(bridge, named, WHEN)


def test_a_report_can_be_filled_in_and_says_the_truss_its_picture_and_the_hints(
    mast: Problem,
) -> None:
    result = review(mast, written(mast, AB=9.0))
    beside = BesideCheck(("Joint A at x = 0.",), "mast.svg", hints=(2, 1, 0))
    report = markdown(mast, result, WHEN, beside)
    assert "| Name | Course | Date |" in report
    assert "![The truss](mast.svg)" in report
    assert "- Joint A at x = 0." in report
    assert "## Hints used\n\n- the principle (2), the place (1)" in report
    none = markdown(mast, result, WHEN, BesideCheck(hints=(0, 0, 0)))
    assert "## Hints used\n\n- none" in none
    assert "## Hints used" not in markdown(mast, result, WHEN)


def test_what_could_not_be_read_stands_in_the_headline_even_where_the_rest_is_right(
    mast: Problem,
) -> None:
    work = written(mast)
    work["forces"] |= {"QQ": "3", "AB": "lots"}
    result = review(mast, work)
    assert result.right
    report = markdown(mast, result, WHEN)
    (bold,) = [line for line in report.splitlines() if line.startswith("**")]
    assert bold.startswith("**2 entries could not be read and were not checked: AB and QQ.")
    assert "All that could be read is right" in bold
    assert "Everything that was checked" not in report


def test_a_title_of_markdown_stays_plain_text_in_the_report(mast: Problem) -> None:
    title = "![x](http://evil.example/y.png) <b> [a](b) `c` # d www.e.example"
    report = markdown(replace(mast, title=title), review(mast, written(mast)), WHEN)
    heading = report.splitlines()[0]
    assert "![" not in heading.replace("\\!\\[", "")
    assert "://" not in heading
    assert "www." not in heading
    assert "<b>" not in heading


@pytest.fixture(name="wall")
def a_wall_arm() -> Problem:
    """A pinned on the wall, B on a roller against it below A, C out in front with 12 down."""
    return plain_problem(
        (("A", 0, 3), ("B", 0, 0), ("C", 4, 3)),
        ("AB", "BC", "CA"),
        (Support("A", "pin"), Support("B", "roller", Exact.of(0))),
        (Load("C", (("down", Exact.of(12)),)),),
    )


@pytest.mark.parametrize("name", ["A_x", "A_y", "B_x"])
@pytest.mark.parametrize("members", [True, False])
def test_a_lone_reaction_turned_round_is_looked_for_at_the_whole_truss_first(
    wall: Problem, name: str, members: bool
) -> None:
    work = written(wall, **{name: -solve(wall).values[name]})
    if not members:
        del work["forces"]
    result = review(wall, work)
    assert result.first == "whole"
    assert states(result)[name] == "wrong" or not members


def without(work: dict[str, dict[str, object]], *names: str) -> dict[str, dict[str, object]]:
    return {part: {n: v for n, v in rows.items() if n not in names} for part, rows in work.items()}


def test_a_joint_with_one_blank_is_judged_by_what_is_left(bridge: Problem) -> None:
    """U2-L3 with the wrong letter; another member of each of its joints is blank."""
    work = written(bridge, **{"U2-L3": -solve(bridge).values["U2-L3"]})
    for blank in ("U2-L2", "U1-U2", "L3-L4", "U3-L3"):
        result = review(bridge, without(work, blank))
        assert result.clear, blank
        assert result.first in ("U2", "L3"), (blank, result.places)
        assert {"U2", "L3"} <= set(result.places), (blank, result.places)
        assert {n for n, s in states(result).items() if s != "right"} == {"U2-L3"}


def test_a_reaction_left_blank_and_worked_with_wrongly_is_looked_for_at_the_whole_truss(
    mast: Problem,
) -> None:
    """A_y and B_y exchanged; the members worked from them closed at C, the reactions not written."""
    ac, bc = -8.25 / 0.6, -3.75 / 0.6
    ab = 6 - 0.8 * ac
    work = {"forces": {"AC": f"{ac:.4g}", "AB": f"{ab:.4g}", "BC": f"{bc:.4g}"}}
    result = review(mast, work)
    assert "whole" in result.places
    assert "right" not in states(result).values()


@pytest.mark.parametrize("part", ["reactions", "forces"])
def test_a_blank_that_was_right_blames_no_other_place(bridge: Problem, part: str) -> None:
    work = written(bridge)
    del work[part]
    result = review(bridge, work)
    assert result.right
    assert result.places == ()


def test_a_lone_sign_is_named_before_all_members_at_the_joint_reversed(mast: Problem) -> None:
    """The 12 down at C taken up gives AC and BC as reversing both would: with no load to the right."""
    problem = replace(mast, loads=(Load("C", (("down", Exact.of(12)),)),))
    true = solve(problem).values
    work = written(problem, AC=-true["AC"], BC=-true["BC"])
    result = review(problem, {**work, "order": ["C", "A"]})
    assert result.first == "C"
    assert [a.mistake.code for a in result.accounts][:1] == ["sign"]
    assert "pull-push" in [a.mistake.code for a in result.accounts]


def test_all_members_reversed_at_a_joint_are_named_so_where_no_lone_sign_does_it(
    mast: Problem,
) -> None:
    true = solve(mast).values
    work = written(mast, AC=-true["AC"], BC=-true["BC"])
    result = review(mast, {**work, "order": ["C", "A"]})
    assert result.first == "C"
    assert result.accounts[0].mistake.code == "pull-push"
