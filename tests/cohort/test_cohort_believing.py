"""Verdicts are replayed: a believed lesson is what it would be anew, and a forged one is not believed."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from classroom import DAY, HABIT, Recorder, journal, records_of
from every_problem import FILES, problem_of

from tutor.cohort.believing import replayed
from tutor.cohort.course import course_at
from tutor.lesson import Lesson
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
