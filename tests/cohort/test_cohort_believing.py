"""Verdicts are replayed: a believed lesson is what it would be anew, and a forged one is not believed."""

from __future__ import annotations

import contextlib
import json
from collections import Counter
from itertools import pairwise
from pathlib import Path

import pytest
from classroom import DAY, HABIT, Recorder, Stopped, journal, records_of
from every_problem import FILES, problem_of

from tutor.cohort.believing import replayed, side_by_side
from tutor.cohort.claimed import ANSWERS
from tutor.cohort.course import course_at
from tutor.cohort.sampling import sample
from tutor.lesson import Lesson
from tutor.lesson.outcome import changed, changed_by_all
from tutor.lesson.watching.show import UNTIL
from tutor.records.contents import read_contents


@pytest.fixture(scope="module")
def problem(course_folder: Path):
    return course_at(course_folder).of("s1").problems["trestle"]


def lines_of(problem, records):
    contents = read_contents(journal(problem, records, DAY))
    assert not contents.faults
    return contents.lines


def outcomes(records):
    return [record for record in records if record["kind"] == "outcome"]


@pytest.mark.parametrize("habit", ["careful", "geometry-blind"])
def test_a_lesson_believed_is_the_lesson_judged_anew(problem, habit: str) -> None:
    lines = lines_of(problem, records_of(problem, HABIT[habit]))
    believed, anew = (replayed(problem, lines, True, "seed", share) for share in (0.04, 1.0))
    assert not believed.whole
    assert anew.whole
    assert believed.lesson.state == anew.lesson.state
    assert believed.answers == anew.answers == anew.again
    assert 1 <= believed.again < believed.answers
    assert anew.otherwise == 0


def test_what_is_judged_again_cannot_be_known_from_the_lesson_alone(problem) -> None:
    records = records_of(problem, HABIT["hasty"], most=24)
    last = [r for r in records if r["kind"] == "type"][-1]
    forged = [
        {**r, "accepted": not r["accepted"]}
        if r["kind"] == "outcome" and r is not records[-1]
        else r
        for r in records
    ]
    assert last in forged
    lines = lines_of(problem, forged)
    assert all(replayed(problem, lines, True, f"seed {n}").forged for n in range(5))


def test_one_forged_verdict_is_found_by_some_sample_and_always_in_full(problem) -> None:
    records = records_of(problem, HABIT["guesser"], most=24)
    at = next(
        i for i, r in enumerate(records) if r["kind"] == "outcome" and r["verdict"] == "wrong"
    )
    wiped = {**records[at], "verdict": "undecided", "changed": {}}
    lines = lines_of(problem, [*records[:at], wiped, *records[at + 1 :]])
    found = [replayed(problem, lines, True, f"seed {n}", 0.2).forged for n in range(12)]
    assert any(found)
    assert not all(found)
    true = Lesson(problem)
    for event in replayed(problem, lines, True, "", 1.0).events:
        true.apply(event)
    assert replayed(problem, lines, True, "", 1.0).lesson.state == true.state


CLAIMS = {
    "finished at once": {"step": "table"},
    "all reactions": {
        "results": {
            "from": 0,
            "add": [
                {"unknown": "A_y", "text": "77", "value": 77.0, "radius": 0.0, "how": "solved"}
            ],
        }
    },
    "a wide value": {
        "results": {
            "from": 0,
            "add": [
                {"unknown": "A_y", "text": "77", "value": 77.0, "radius": 99.0, "how": "solved"}
            ],
        }
    },
    "a line by a hint": {"lines": {"from": 0, "add": []}},
}


@pytest.mark.parametrize("claim", CLAIMS.values(), ids=CLAIMS)
@pytest.mark.parametrize("kind", ["type", "hint", "turning"])
def test_what_cannot_be_so_is_believed_by_no_sample(problem, claim, kind: str) -> None:
    records = records_of(problem, HABIT["careful"])
    places = [i for i, r in enumerate(records) if r["kind"] == kind]
    if not places:
        records = records_of(problem, HABIT["guesser"], most=12)
        places = [i for i, r in enumerate(records) if r["kind"] == kind]
    at = places[0] + 1
    claim = {"step": "table"} if "lines" in claim and kind == "type" else claim
    forged = {**records[at], "changed": {**records[at]["changed"], **claim}}
    lines = lines_of(problem, [*records[:at], forged, *records[at + 1 :]])
    found = replayed(problem, lines, True, "seed", 0.0)
    assert found.whole
    honest = Lesson(problem)
    for event in found.events:
        honest.apply(event)
    assert found.lesson.state == honest.state


def test_a_lesson_of_another_judge_is_judged_anew_and_is_no_forgery(problem) -> None:
    records = [
        {**r, "judge": "0123456789 0.005 0.02"} if r["kind"] == "outcome" else r
        for r in records_of(problem, HABIT["careful"])
    ]
    found = replayed(problem, lines_of(problem, records), True, "seed")
    assert found.whole
    assert not found.forged
    assert found.lesson.done


def test_a_lesson_of_endless_entries_is_looked_at_up_to_a_bound(problem, monkeypatch) -> None:
    monkeypatch.setattr("tutor.cohort.believing.MOST_ANSWERS", 30)
    hints = [{"kind": "hint", "time": 1e9 + n} for n in range(80)]
    found = replayed(problem, lines_of(problem, hints), True, "seed")
    assert found.passed_over == 50
    assert len(found.events) == 30


@pytest.mark.parametrize(
    "event",
    [
        {"kind": "type", "time": 1e9, "text": ["a", {"b": 1}]},
        {"kind": "support", "time": 1e9, "joint": 7, "acts": {"x": 1}},
        {"kind": "count", "time": 1e9, "m": "x" * 1000, "r": None},
        {"kind": "bring", "time": 1e9, "values": {"AB": "\u202e\x1b[31m" * 99}},
        {"kind": "no such thing", "time": 1e9},
        {"kind": "type", "time": -5},
        {"nothing": True},
    ],
    ids=str,
)
def test_no_event_breaks_the_replay(problem, event) -> None:
    json.dumps(event)
    replayed(problem, lines_of(problem, [event]), True, "seed")


EVERY_KIND = {
    "moon-slide": {"soundness", "loose"},
    "fulling-lean-to": {"halves", "shares"},
    "clock-stand": {"section"},
    "lamp-arm": {"type", "sense", "support"},
}


@pytest.mark.parametrize("name", EVERY_KIND)
@pytest.mark.parametrize("until", [None, "half"])
def test_a_true_lesson_is_believed_whatever_was_done_in_it(name: str, until: str | None) -> None:
    """Nobody who did what the program offers is said to have edited a file."""
    problem = problem_of(next(path for path in FILES if path.stem == name))
    recorder = Recorder(problem, HABIT["careful"], 1)
    if until is not None:
        recorder.do("show", until=until)
    recorder.walk()
    found = replayed(problem, lines_of(problem, recorder.records), True, "seed")
    assert found.lesson.state == recorder.lesson.state
    assert (found.whole, found.forged) == (False, False)
    assert until or EVERY_KIND[name] <= {event.kind for event in found.events}


@pytest.mark.parametrize("marked", [True, False])
def test_what_is_claimed_to_be_shown_stands_as_shown_or_not_at_all(problem, marked: bool) -> None:
    recorder = Recorder(problem, HABIT["careful"], 1)
    recorder.do("show", until="joints")
    kept = recorder.records[-1]
    tries = [{**made, "verdict": "right"} for made in kept["changed"]["tries"]["add"]]
    unmarked = {**kept["changed"], "tries": {**kept["changed"]["tries"], "add": tries}}
    records = [recorder.records[0], kept if marked else {**kept, "changed": unmarked}]
    assert replayed(problem, lines_of(problem, records), True, "seed").forged != marked


def test_that_a_truss_was_found_to_move_is_not_believed_of_a_count() -> None:
    problem = problem_of(next(path for path in FILES if path.stem == "moon-slide"))
    records = records_of(problem, HABIT["careful"])
    at = next(i for i, each in enumerate(records) if each["kind"] == "count") + 1
    claimed = {"sound_done": True, "moving_done": True, "step": "table"}
    forged = {**records[at], "changed": {**records[at]["changed"], **claimed}}
    assert replayed(problem, lines_of(problem, [*records[:at], forged]), True, "seed").forged


def test_a_version_that_shows_less_at_the_same_word_loses_nothing_typed_after(monkeypatch) -> None:
    problem = problem_of(next(path for path in FILES if path.stem == "lamp-arm"))
    recorder = Recorder(problem, HABIT["careful"], 1)
    recorder.do("show", until="half")
    recorder.walk()
    lines = lines_of(problem, recorder.records)
    monkeypatch.setitem(UNTIL, "half", UNTIL["reactions"])
    found = replayed(problem, lines, True, "seed", 1.0)
    assert found.whole
    assert found.otherwise == 0
    assert found.lesson.done
    assert found.lesson.state.results == recorder.lesson.state.results


def test_what_speaks_for_the_student_is_judged_again_in_every_lesson_and_oftener(problem) -> None:
    """A verdict of wrong, by which nobody gains, is drawn a quarter as often."""
    lines = lines_of(problem, records_of(problem, HABIT["geometry-blind"]))
    kept = side_by_side([line.event for line in lines])
    assert kept is not None
    answers = [n for n, each in enumerate(kept) if each.event.kind in ANSWERS]
    wrong = {n for n in answers if not kept[n].outcome.accepted}
    drawn: Counter[int] = Counter()
    for seed in range(400):
        of_one = sample(kept, f"seed {seed}", 0.1)
        assert of_one - wrong
        assert of_one <= set(answers)
        drawn.update(of_one)
    often, seldom = (
        sum(drawn[n] for n in places) / len(places) for places in (set(answers) - wrong, wrong)
    )
    assert wrong
    assert 2.5 < often / seldom < 10.0
    assert set(drawn) == set(answers)


def test_a_wrong_try_that_wipes_out_those_before_it_is_drawn_like_any_claim(problem) -> None:
    records = records_of(problem, HABIT["geometry-blind"])
    last = max(i for i, r in enumerate(records) if r.get("verdict") == "wrong")
    tries = {**records[last]["changed"]["tries"], "from": 0}
    wiped = {**records[last], "changed": {**records[last]["changed"], "tries": tries}}
    lines = lines_of(problem, [*records[:last], wiped])
    kept = side_by_side([line.event for line in lines])
    assert kept is not None
    assert any(len(kept) - 1 in sample(kept, f"seed {n}", 0.2) for n in range(20))


def test_a_lesson_made_up_as_a_whole_is_found_by_every_sample(problem) -> None:
    """Each line is claimed to be right, and none of them is."""
    records = [
        {**r, "text": "12 = 12"} if r["kind"] == "type" else r
        for r in records_of(problem, HABIT["careful"])
    ]
    chosen = {"reasons", "count", "support", "zero"}
    made_up = [
        each
        for event, outcome in pairwise(records)
        if event["kind"] not in {"outcome", *chosen}
        for each in (event, outcome)
    ]
    lines = lines_of(problem, made_up)
    assert all(replayed(problem, lines, True, f"seed {n}", 0.0).whole for n in range(12))


@pytest.mark.parametrize("habit", ["hasty", "guesser"])
def test_states_are_the_same_whether_each_is_made_or_only_the_last(problem, habit: str) -> None:
    """However the changes of a lesson are taken together."""
    kept = side_by_side(records_of(problem, HABIT[habit], most=40))
    assert kept is not None
    taken = [(each.event, each.outcome.changed) for each in kept]
    one_by_one = [Lesson(problem).state]
    for event, found in taken:
        one_by_one.append(changed(one_by_one[-1], event, found))
    for start in range(0, len(taken), 3):
        for end in range(start + 1, len(taken) + 1):
            together = changed_by_all(one_by_one[start], taken[start:end])
            assert together == one_by_one[end]


def test_a_lesson_with_something_taken_back_is_believed_as_it_was(problem) -> None:
    recorder = Recorder(problem, HABIT["hasty"], 1, most=30)
    with contextlib.suppress(Stopped):
        recorder.walk()
    recorder.most = 10**6
    recorder.do("undo")
    recorder.do("undo")
    with contextlib.suppress(AssertionError):
        recorder.walk()
    found = replayed(problem, lines_of(problem, recorder.records), True, "seed")
    assert (found.whole, found.forged) == (False, False)
    assert found.lesson.state == recorder.lesson.state
