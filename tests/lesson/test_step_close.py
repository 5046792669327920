"""The fifth and sixth step: what is left over, and the table."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from strategies import trusses
from walks import ARM, LANDING, MAST, RAIL, walk_to

from tutor.judge import Fx, Fy, Judge, Value, right_line
from tutor.judge.about import as_text, from_text
from tutor.lesson import CAUTION
from tutor.lesson.fold import beginning
from tutor.lesson.shown import accounts_for, not_here, share_values
from tutor.lesson.state import Result
from tutor.lesson.steps.close import what_is_left
from tutor.model import Problem, load_problem
from tutor.notation import one_equation, read_line
from tutor.shipped import shipped_problems


def test_an_equation_that_was_not_needed_is_asked_for_and_one_closes() -> None:
    lesson, do = walk_to("close")
    assert lesson.ask.kind == "close"
    option = lesson.ask.options[0]
    do("choose", about=option.key)
    assert lesson.ask.about == option.about == from_text(option.key)
    assert not lesson.done
    assert not do("go", step="table").accepted
    hint = [do("hint").text for _ in range(4)][3]
    line = hint.partition("For instance: ")[2].partition(". Type")[0]
    assert do("type", text=line).accepted
    assert lesson.done
    assert lesson.state.closed


def test_only_equations_in_which_forces_must_balance_are_offered() -> None:
    lesson, _ = walk_to("close", MAST)
    assert lesson.ask.options
    for option in lesson.ask.options:
        assert not option.key.endswith("@ F"), "nothing acts at F"


def arm_with(bc: str, ac: str):
    """The lamp arm, its last two forces rounded as given, at the closing of joint B."""
    lesson, do = walk_to("joints")
    do("joint", joint="A")
    do("type", text="F_AC - 360 = 0")
    do("type", text=f"AC = {ac}")
    do("type", text="ΣFy: 150 - F_AB = 0")
    do("type", text="AB = 150 T")
    do("joint", joint="C")
    do("type", text="ΣFy: -5/13 F_BC - 150 = 0")
    assert do("type", text=f"BC = {bc}").accepted
    assert lesson.state.step == "close"
    return lesson, do


def test_nothing_left_over_is_said() -> None:
    _, do = arm_with("390 C", "360 T")
    do("choose", about="Fx @ C")
    reply = do("type", text="-360 + 390*12/13 = 0")
    assert "nothing is left over" in reply.text


def test_what_is_left_over_is_said_and_that_rounding_explains_it() -> None:
    _, do = arm_with("389.5 C", "360 T")
    do("choose", about="Fx @ C")
    reply = do("type", text="-360 + 389.5*12/13 = 0")
    assert "0.46 N is left over, of 719.5 N added up" in reply.text
    assert "rounding leaves" in reply.text


def test_more_than_rounding_explains_is_said_too() -> None:
    lesson, _ = arm_with("389.5 C", "360 T")
    kept = [r for r in lesson.state.results if r.unknown != "BC"]
    state = replace(lesson.state, results=(*kept, Result("BC", "383 C", -383.0, 0.5)))
    assert "more than the rounding" in what_is_left(state, Fx("C"))


def test_the_student_may_write_what_is_left_over_on_the_right() -> None:
    lesson, do = arm_with("389.5 C", "360 T")
    do("choose", about="Fx @ C")
    assert do("type", text="360 - 389.5*12/13 = 0.46").accepted
    assert lesson.state.lines[-1].text == "360 - 389.5*12/13 = 0.46"


@pytest.mark.parametrize("text", ["5 - 5 = 0", "1 = 1", "3 + 5 = 8", "0.1 - 0.1 = 0"])
def test_two_equal_numbers_that_are_not_the_values_do_not_close(text: str) -> None:
    lesson, do = arm_with("389.5 C", "360 T")
    do("choose", about="Fy @ B")
    reply = do("type", text=text)
    assert [say.tone for say in reply.said] == ["note"]
    assert "put each of them into ΣFy at joint B" in reply.text
    assert lesson.state.step == "close"


def test_a_product_of_a_force_that_is_not_at_the_joint_does_not_close_by_chance() -> None:
    gable = load_problem(next(shipped_problems().glob("*/weigh-house.toml")))
    desk = Judge(gable)
    found = tuple(Result(n, "", v, 0.0) for n, v in desk.values().items())
    state = replace(beginning(gable, desk), results=found)
    chance = one_equation(read_line("-300*4/5 + 260*12/13 = 0", desk.names))
    own = one_equation(read_line("-300*4/5 + 300*3/5 + 84.853*0.70711 = 0", desk.names))
    assert not accounts_for(state, chance, Fx("B"))
    assert (not_here(state, chance, Fx("B")) or "").startswith("260 is no force of ΣFx at joint B")
    assert accounts_for(state, own, Fx("B"))
    assert not_here(state, own, Fx("B")) is None


@pytest.mark.parametrize("text", ["360 - 360 = 0", "360 = 389.5*12/13"])
def test_a_line_of_another_equation_is_told_as_that_and_does_not_close(text: str) -> None:
    lesson, do = arm_with("389.5 C", "360 T")
    do("choose", about="Fy @ B")
    reply = do("type", text=text)
    assert {say.tone for say in reply.said} == {"note"}
    assert "it is ΣFx at joint B, not ΣFy at joint B" in reply.text
    assert lesson.state.step == "close"


def test_only_an_equation_that_was_not_needed_closes() -> None:
    lesson, do = arm_with("390 C", "360 T")
    for about, line in (("Fx", "ΣFx: -3 + 3 = 0"), ("Fx @ A", "ΣFx at A: 360 - 360 = 0")):
        for reply in (do("choose", about=about), do("type", text=line)):
            assert not reply.accepted
        assert lesson.state.about is None
    assert not do("type", text="fx: 150 - 150 = 0").accepted
    assert do("type", text="fx at C: 360 - 390*12/13 = 0").accepted


def test_a_heading_without_a_joint_is_one_of_the_equations_that_were_not_needed() -> None:
    lesson, do = arm_with("390 C", "360 T")
    assert do("type", text="ΣFy: 150 - 390(5/13) = 0").accepted
    assert as_text(lesson.state.lines[-1].about) == "Fy @ B"


@pytest.mark.parametrize(
    "text", ["-AC - 12/13 BC = 0", "-AC + 12/13*390 = 0", "-360 - 12/13 F_BC = 0"]
)
def test_a_right_line_with_a_letter_in_it_does_not_close_and_is_no_slip(text: str) -> None:
    lesson, do = arm_with("390 C", "360 T")
    do("choose", about="Fx @ C")
    reply = do("type", text=text)
    assert not reply.accepted
    assert lesson.state.step == "close"
    assert [t for t in lesson.state.tries if t.step == "close"] == []


@pytest.mark.parametrize("text", ["AC - AC = 0", "AC - AC + 1 = 0", "6 - AC = 0"])
def test_a_line_of_letters_that_cancel_does_not_close(text: str) -> None:
    lesson, do = arm_with("390 C", "360 T")
    do("choose", about="Fx @ C")
    assert not do("type", text=text).accepted
    assert lesson.state.step == "close"


@given(trusses(max_joints=6), st.data())
def test_numbers_that_do_not_stand_for_the_forces_of_an_equation_never_close_it(
    problem: Problem, data: st.DataObject
) -> None:
    desk = Judge(problem)
    found = tuple(Result(n, "", v, 0.0) for n, v in desk.values().items())
    state = replace(beginning(problem, desk), results=found)
    sums = [axis(joint.name) for joint in problem.joints for axis in (Fx, Fy)]
    about = data.draw(st.sampled_from(sums))
    parts = [part for part in share_values(state, about) if abs(part) > 1e-6]
    written = " ".join(f"{part:+.7g}" for part in parts) or "0"
    reading = one_equation(read_line(f"{written} = 0", desk.names))
    assert accounts_for(state, reading, about)
    scale = data.draw(st.sampled_from((0.3, 1.7, 12.9)))
    scaled = " ".join(f"{scale * part:+.7g}" for part in parts)
    if parts:
        assert not accounts_for(state, one_equation(read_line(f"{scaled} = 0", desk.names)), about)
    assert not accounts_for(
        state, one_equation(read_line(f"{written} + 77.7 - 77.7 = 0", desk.names)), about
    )


@pytest.mark.parametrize(
    "text", ["150 = 389.5*5/13", "150 = 149.8", "150*13 - 389.5*5 = 0", "2*150 - 2*389.5*5/13 = 0"]
)
def test_values_may_be_put_in_at_any_scale_or_worked_out_before(text: str) -> None:
    lesson, do = arm_with("389.5 C", "360 T")
    do("choose", about="Fy @ B")
    assert do("type", text=text).accepted
    assert lesson.done


def test_a_line_kept_as_what_it_is_true_of_closes_as_well() -> None:
    lesson, do = walk_to("close", RAIL)
    do("choose", about="Fx @ F")
    about = from_text("Fy @ F")
    reply = do("type", text=right_line(RAIL, about, lesson.state.own))
    assert (reply.accepted, lesson.state.step) == (False, "close")
    assert reply.text.endswith("You can keep it as ΣFy at joint F.")
    reply = do("keep")
    assert "nothing is left over" in reply.text
    assert lesson.done
    assert (lesson.state.lines[-1].about, lesson.state.lines[-1].closing) == (about, True)
    do("undo")
    assert (lesson.done, lesson.state.closed) == (False, False)


def test_keeping_where_nothing_was_offered_does_not_close() -> None:
    lesson, do = arm_with("390 C", "360 T")
    assert not do("keep").accepted
    assert lesson.state.step == "close"


@pytest.mark.parametrize("text", ["360 - 389.5*12/13 = 9", "360 - 300*12/13 = 83.08", "0 = 0"])
def test_a_line_that_is_not_this_equation_does_not_close(text) -> None:
    lesson, do = arm_with("389.5 C", "360 T")
    do("choose", about="Fx @ C")
    assert not do("type", text=text).accepted
    assert lesson.state.step == "close"


def test_a_value_typed_better_at_the_end_does_not_count_as_closing() -> None:
    lesson, do = arm_with("389 C", "360 T")
    do("choose", about="Fx @ B")
    assert do("type", text="BC = 390 C").accepted
    assert lesson.state.step == "close"
    assert lesson.state.result["BC"].value == -390


def test_a_moment_that_closes_is_left_over_in_its_own_unit() -> None:
    from tutor.judge import M
    from tutor.lesson.steps.close import what_is_left

    lesson, do = walk_to("joints")
    do("type", text="B_x = 359")
    assert "N·m is left over" in what_is_left(lesson.state, M("A"))


def test_closing_can_be_taken_back_and_done_again() -> None:
    lesson, do = arm_with("390 C", "360 T")
    do("choose", about="Fx @ C")
    do("type", text="-360 + 390*12/13 = 0")
    assert lesson.done
    do("undo")
    assert (lesson.done, lesson.state.closed, lesson.state.ended) == (False, False, None)
    do("type", text="-360 + 390*12/13 = 0")
    assert lesson.done


def test_the_table_gives_forces_letters_and_the_largest_of_each_kind() -> None:
    lesson, _ = walk_to("table", LANDING)
    table = lesson.table
    rows = {row.member: (round(row.force, 3), row.letter) for row in table.rows}
    assert rows == {
        "AC": (-15, "C"),
        "CD": (-15, "C"),
        "AB": (12, "T"),
        "BD": (12, "T"),
        "BC": (12, "T"),
    }
    assert (table.tension.force, table.compression.force) == pytest.approx((12, -15))
    assert table.unit == "kN"


def test_the_table_counts_slips_by_kind_hints_by_level_and_the_time() -> None:
    lesson, do = walk_to("reactions", ARM)
    began = lesson.state.started
    do("choose", about="M A")
    (mistake,) = do("type", text="B_x + 150*2.4 = 0").verdict.mistakes
    do("hint")
    do("type", text="B_x + 150*2.4 = 0")
    do("type", text="B_x - 150*2.4 = 0")
    do("type", text="B_x = 300")
    table = lesson.table
    assert table.mistakes == ((mistake.code, 2), ("arithmetic", 1))
    assert table.hints == (0, 1, 0, 0)
    assert table.seconds == lesson.state.last_time - began


def test_the_table_of_no_force_has_neither_letter_nor_extremes() -> None:
    lesson, do = walk_to("joints", MAST)
    do("zero", member="EF", rule="two")
    rows = {row.member: (row.force, row.letter) for row in lesson.table.rows}
    assert rows == {"DF": (0, "0"), "EF": (0, "0")}, "both of the bare corner are recorded"
    assert lesson.table.tension is lesson.table.compression is None


def test_the_last_word_is_the_caution() -> None:
    lesson, do = walk_to("table")
    assert CAUTION in lesson.ask.question
    assert do("hint").said[0].tone == "note"
    assert "The walk is done" in do("type", text="AB = 1").text


@pytest.mark.parametrize("text", ["150 - 389.5*5/13", "360 - 150"])
def test_a_sum_without_its_zero_is_not_taken_for_a_value(text: str) -> None:
    lesson, do = arm_with("389.5 C", "360 T")
    do("choose", about="Fy @ B")
    reply = do("type", text=text)
    assert reply.text.startswith("Put = 0 after it: ΣFy at joint B")
    assert [t for t in lesson.state.tries if t.step == "close"] == []


@pytest.mark.parametrize("back", [False, True], ids=["closing", "at the joint"])
@pytest.mark.parametrize(
    ("text", "codes"),
    [
        ("-360 + 390*12/13 = -A_x", ["stray-reaction"]),
        ("A_x = -360 + 390*5/13", ["stray-reaction", "component"]),
        ("A_x = 150 + 210", ["sign"]),
        ("A_x = 150 + 220", ["arithmetic"]),
    ],
)
def test_a_sum_with_a_force_too_many_is_that_sum_before_it_is_a_wrong_value_of_the_force(
    text: str, codes: list[str], back: bool
) -> None:
    lesson, do = arm_with("390 C", "360 T")
    if back:
        do("joint", joint="C")
    do("choose", about="Fx @ C")
    reply = do("type", text=text)
    assert reply.verdict is not None
    assert [mistake.code for mistake in reply.verdict.mistakes] == codes
    asked_again = lesson.state.tries[-1].at
    assert asked_again == (Fx("C") if codes[0] == "stray-reaction" else Value("A_x"))
