"""The problem proposed is open, near in level and trains what is weakest; else the next in order."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st

from tutor.judge.called import counted
from tutor.lesson import Lesson
from tutor.model import load_problem
from tutor.progress.account import FirstAnswer, account_of
from tutor.progress.after import one_thing
from tutor.progress.choosing import (
    AGAIN,
    EASIER,
    LEFT_OUT,
    MOST_LEVELS,
    NEAR,
    NEXT_OF_SET,
    NO_HARDER,
    Candidate,
    Next,
    next_one,
)
from tutor.progress.needs import needs_of
from tutor.progress.weakness import Weakness, weaknesses
from tutor.shipped import shipped_problems

ARM = Weakness("arm", 0.1, 2, 3, "in sums of moments")
ROWS = st.lists(
    st.tuples(st.integers(1, 6), st.booleans(), st.booleans(), st.integers(0, 4)),
    min_size=1,
    max_size=9,
)


def candidates(rows: list[tuple[int, bool, bool, int]]) -> list[Candidate]:
    return [
        Candidate(str(i), f"problem {i}", "a set", level, done, waits)
        for i, (level, done, waits, _) in enumerate(rows)
    ]


@given(ROWS, st.integers(0, 8))
def test_what_is_proposed_is_open_and_trains_the_weakness_where_a_near_one_does(
    rows: list[tuple[int, bool, bool, int]], here: int
) -> None:
    found = candidates(rows)
    here %= len(found)
    needs = {str(i): {"arm": count, "sign": 5} for i, (_, _, _, count) in enumerate(rows)}
    ahead = next_one(found, needs.__getitem__, [ARM], str(here))
    open_ones = [c for c in found if not c.done and c.key != str(here)]
    if not open_ones:
        assert (ahead is None) == (len(found) == 1)
        assert ahead is None or (ahead.key != str(here) and "Everything here is done" in ahead.why)
        return
    assert ahead is not None
    chosen = found[int(ahead.key)]
    assert chosen in open_ones
    training = [
        c for c in open_ones if needs[c.key]["arm"] and c.level <= found[here].level + MOST_LEVELS
    ]
    assert (chosen in training) == bool(training)
    assert (ahead.skill == "arm") == bool(training)
    if any(not c.waits for c in training):
        assert not chosen.waits
    if training:
        count = needs[ahead.key]["arm"]
        assert (
            "Wrong twice, in sums of moments: a distance that is not the moment arm." in ahead.why
        )
        assert (
            f"It can happen there in {'one place' if count == 1 else f'{count} places'}."
            in ahead.why
        )


ONCE = Weakness("arm", 0.3, 1, 3, "in sums of moments")
SETS = st.lists(
    st.tuples(
        st.integers(1, 6), st.booleans(), st.booleans(), st.integers(0, 4), st.sampled_from("pqr")
    ),
    min_size=2,
    max_size=9,
)


@given(SETS, st.integers(0, 8), st.booleans(), st.sampled_from([None, ONCE, ARM]))
def test_what_is_proposed_is_of_the_right_level_or_next_in_order_and_its_reason_is_true(
    rows: list[tuple[int, bool, bool, int, str]], here: int, well: bool, lacking: Weakness | None
) -> None:
    rows = sorted(rows, key=lambda row: row[4])  # a set's problems stand together
    here %= len(rows)
    found = [
        Candidate(str(i), f"problem {i}", of, level, done or i == here, waits)
        for i, (level, done, waits, _, of) in enumerate(rows)
    ]
    needs = {str(i): {"arm": count} for i, (_, _, _, count, _) in enumerate(rows)}
    ahead = next_one(found, needs.__getitem__, [lacking] if lacking else [], str(here), well)
    open_ones = [each for each in found if not each.done]
    if ahead is None or not open_ones:
        return
    last, chosen = found[here], found[int(ahead.key)]
    free = [each for each in open_ones if not each.waits] or open_ones
    if ahead.skill:
        assert lacking is not None
        assert lacking.told in ahead.why
        assert chosen.level <= last.level + MOST_LEVELS
        easier = chosen.level < last.level - NEAR
        assert easier == (EASIER in ahead.why)
        assert not easier or lacking.wrong >= AGAIN
        trains = [each for each in free if needs[each.key]["arm"] and each.level <= last.level]
        if not well and not chosen.waits and any(e.level >= last.level - NEAR for e in trains):
            assert chosen.level <= last.level
        return
    assert chosen in free
    in_order = [e for e in found[here:] if e in free] + [e for e in found[:here] if e in free]
    if ahead.why == NO_HARDER:
        assert not well
        assert chosen == next(each for each in in_order if each.level <= last.level)
        return
    assert chosen == in_order[0]
    assert (ahead.why == LEFT_OUT) == (int(chosen.key) < here)
    assert (ahead.why == NEXT_OF_SET) == (int(chosen.key) > here and chosen.set == last.set)
    begun = any(each.done for each in found if each.set == chosen.set)
    if ahead.why.startswith("With it "):
        assert ahead.why == f"With it {'goes on' if begun else 'begins'}: {chosen.set}."


def test_one_wrong_rule_in_two_hard_trusses_brings_no_easy_one() -> None:
    rows = [
        Candidate("hall", "", "compound", 5, True),
        Candidate("weigh-house", "", "compound", 5, True),
        Candidate("clock-stand", "", "compound", 5),
        Candidate("load-in-line", "", "traps", 3),
    ]
    rule = Weakness("zero-rule", 0.4, 1, 3)
    needs = {"load-in-line": {"zero-rule": 3}}
    ahead = next_one(rows, lambda key: needs.get(key, {}), [rule], "weigh-house")
    assert ahead == Next("clock-stand", NEXT_OF_SET)
    again = replace(rule, wrong=AGAIN)
    ahead = next_one(rows, lambda key: needs.get(key, {}), [again], "weigh-house")
    assert (ahead.key, ahead.skill) == ("load-in-line", "zero-rule")
    assert ahead.why.endswith(EASIER)


def test_a_mistake_is_trained_in_the_same_set_where_that_does_it() -> None:
    rows = [
        Candidate("a", "", "here", 2, True),
        Candidate("b", "", "here", 3),
        Candidate("c", "", "elsewhere", 2),
    ]
    needs = {"b": {"arm": 2, "sign": 8}, "c": {"arm": 9}}
    ahead = next_one(rows, needs.__getitem__, [ARM], "a")
    assert ahead.key == "b"


def test_how_often_a_problem_asks_for_a_step_is_counted() -> None:
    problem = load_problem(shipped_problems() / "first-steps" / "lamp-arm.toml")
    needs = needs_of(problem)
    assert needs["step joints"] == needs["step values"] - needs["step reactions"] == 3
    assert needs["step free body"] == 2


def test_without_a_weakness_the_next_in_order_comes_and_an_easier_one_after_a_poor_one() -> None:
    rows = [Candidate(k, k, "s", level) for k, level in (("a", 1), ("b", 3), ("c", 1))]
    assert next_one(rows, lambda key: {}, [], "a").key == "b"
    assert next_one(rows, lambda key: {}, [], "a", well=False).key == "c"
    assert next_one(rows, lambda key: {}, [], "c").key == "a"
    assert next_one(rows, lambda key: {}, []).key == "a"


def test_a_skill_is_weak_once_it_went_wrong_and_no_longer_once_it_went_right_in_a_row() -> None:
    wrong = FirstAnswer("M A", "…", False, 1.0, ("step reactions", "arm"), ("arm",))
    right = [FirstAnswer("M B", "…", True, 2.0 + i, ("step reactions", "arm")) for i in range(8)]
    (weak,) = [w for w in weaknesses([wrong]) if w.skill == "arm"]
    assert weak.told == "Wrong once, in sums of moments: a distance that is not the moment arm"
    assert weaknesses([wrong])[0] == weak  # the mistake is named before the step it was made in
    assert [w.skill for w in weaknesses([wrong, *right])] == []
    assert weaknesses(right) == ()


def test_only_the_questions_that_went_wrong_are_named() -> None:
    def told(*places: str) -> str:
        right = [
            FirstAnswer(place, "", True, 0.0, ("step idealise",)) for place in ("reasons", "count")
        ]
        wrong = [FirstAnswer(place, "", False, 1.0, ("step idealise",)) for place in places]
        (weak,) = weaknesses([*right, *wrong, *wrong])
        return weak.told

    counting, why = "counting members, reactions and equations", "saying why members carry"
    assert counting.capitalize() in told("count")
    assert why.capitalize() not in told("count")
    assert why.capitalize() in told("reasons")
    assert counting not in told("reasons")
    assert f"{why.capitalize()} axial force only and {counting} went wrong" in told(
        "count", "reasons"
    )
    assert told("loose").startswith("Idealising a truss went wrong")


def test_a_wrong_count_or_reason_is_no_mistake_in_a_line_or_a_value() -> None:
    lesson = Lesson(load_problem(shipped_problems() / "first-steps" / "bell-frame.toml"))
    lesson.take("reasons", chosen=["pins"], now=1.0)
    lesson.take("reasons", chosen=["pins", "joints", "weight"], now=2.0)
    lesson.take("count", **{"m": 3, "r": 2, "2j": 6}, now=3.0)
    assert [weak.skill for weak in weaknesses(account_of(lesson.state).answers)] == [
        "step idealise"
    ]
    told = [counted(code, count) for code, count in lesson.table.mistakes]
    assert told == ["a wrong count", "a force or a reason left out"]


def test_what_went_wrong_last_is_lacking_first_and_what_did_earlier_is_told_as_earlier() -> None:
    arm = [
        FirstAnswer(f"M {at}", "…", False, 1.0, ("step reactions", "arm"), ("arm",)) for at in "AB"
    ]
    sign = FirstAnswer("Fx @ A", "…", False, 2.0, ("step joints", "sign"), ("sign",))
    assert weaknesses([*arm, sign])[0].skill == "arm"
    first, second = weaknesses([*arm, sign], [sign])[:2]
    assert (first.skill, second.skill) == ("sign", "arm")
    assert first.told == "Wrong once, at joints: a sign turned"
    assert second.told.startswith("Wrong twice in earlier problems, in sums of moments: ")


@given(ROWS, st.integers(0, 8))
def test_once_everything_is_done_what_was_watched_comes_then_what_trains_and_is_longest_ago(
    rows: list[tuple[int, bool, bool, int]], here: int
) -> None:
    """The second field says whether a problem was only watched, the first when it was done."""
    here %= len(rows)
    found = [
        Candidate(
            str(i), f"problem {i}", "a set", 1, True, False, watched, float(when), when % 2 == 0
        )
        for i, (when, watched, _, _) in enumerate(rows)
    ]
    needs = {str(i): {"arm": count} for i, (_, _, _, count) in enumerate(rows)}
    ahead = next_one(found, needs.__getitem__, [ARM], str(here))
    others = [each for each in found if each.key != str(here)]
    if not others:
        assert ahead is None
        return
    assert ahead is not None
    chosen = found[int(ahead.key)]
    training = [each for each in others if needs[each.key]["arm"]]
    if any(each.watched for each in others):
        assert chosen.watched
        return
    assert (ahead.skill == "arm") == bool(training)
    assert chosen.last == min(each.last for each in training or others)
    assert ("other numbers" in ahead.why) == chosen.varies


def test_the_one_thing_to_watch_is_what_the_next_problem_trains_where_it_was_made() -> None:
    lesson = Lesson(load_problem(shipped_problems() / "first-steps" / "lamp-arm.toml"))
    lesson.take("show", until="joints", now=1.0)
    lesson.take("joint", joint="C", now=2.0)
    for text in ("Fx: -AC - BC = 0", "Fy: 150 - 5/13 BC = 0"):
        assert not lesson.take("type", text=text, now=3.0).accepted
    made = [code for code, _ in lesson.table.mistakes]
    assert len(made) == 2
    said = {code: one_thing(lesson, code) for code in made}
    assert len(set(said.values())) == 2
    assert all(each.startswith("The one thing to watch: ") for each in said.values())
    assert one_thing(lesson, "arm") == one_thing(lesson) == said[made[0]]
    assert one_thing(lesson, "step joints") in said.values()
    assert one_thing(Lesson(lesson.problem), "sign") == ""


def test_what_is_to_be_watched_in_a_value_speaks_of_values_and_not_of_a_sum() -> None:
    lesson = Lesson(load_problem(shipped_problems() / "first-steps" / "lamp-arm.toml"))
    lesson.take("show", until="joints", now=1.0)
    lesson.take("joint", joint="C", now=2.0)
    assert lesson.take("type", text="Fy: -150 - 5/13 BC = 0", now=3.0).accepted
    assert not lesson.take("type", text="BC = 390", now=4.0).accepted
    assert [code for code, _ in lesson.table.mistakes] == ["sign"]
    said = one_thing(lesson)
    assert "free-body diagram" not in said
    assert "the one thing to watch" in said.lower()
    assert len(said) > len("The one thing to watch: ")
