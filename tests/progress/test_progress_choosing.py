"""The problem proposed is open, near in level and trains what is weakest; else the next in order."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from tutor.lesson import Lesson
from tutor.model import load_problem
from tutor.progress.account import Answer
from tutor.progress.after import one_thing
from tutor.progress.choosing import MOST_LEVELS, Candidate, next_one
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


def test_without_a_weakness_the_next_in_order_comes_and_an_easier_one_after_a_poor_one() -> None:
    rows = [Candidate(k, k, "s", level) for k, level in (("a", 1), ("b", 3), ("c", 1))]
    assert next_one(rows, lambda key: {}, [], "a").key == "b"
    assert next_one(rows, lambda key: {}, [], "a", well=False).key == "c"
    assert next_one(rows, lambda key: {}, [], "c").key == "a"
    assert next_one(rows, lambda key: {}, []).key == "a"


def test_a_skill_is_weak_once_it_went_wrong_and_no_longer_once_it_went_right_in_a_row() -> None:
    wrong = Answer("M A", "…", False, 1.0, ("step reactions", "arm"), ("arm",))
    right = [Answer("M B", "…", True, 2.0 + i, ("step reactions", "arm")) for i in range(8)]
    (weak,) = [w for w in weaknesses([wrong]) if w.skill == "arm"]
    assert weak.told == "Wrong once, in sums of moments: a distance that is not the moment arm"
    assert weaknesses([wrong])[0] == weak  # the mistake is named before the step it was made in
    assert [w.skill for w in weaknesses([wrong, *right])] == []
    assert weaknesses(right) == ()


def test_what_went_wrong_last_is_lacking_first_and_what_did_earlier_is_told_as_earlier() -> None:
    arm = [Answer(f"M {at}", "…", False, 1.0, ("step reactions", "arm"), ("arm",)) for at in "AB"]
    sign = Answer("Fx @ A", "…", False, 2.0, ("step joints", "sign"), ("sign",))
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
