"""Statements keep every rule of the standard that can be told from the statement alone.

IEEE 9274.1.1-2023 (xAPI 2.0), data requirements of statements, from memory; RFC 3339 for times, RFC 3987
for IRIs, BCP 47 for languages, ISO 8601 for durations, RFC 9562 for UUIDs. `SCHEMA` is written from what
those say and not from what is exported; each rule is seen to refuse a statement that breaks it.
"""

from __future__ import annotations

import copy
import json
import re
from collections.abc import Callable
from datetime import datetime, timedelta
from pathlib import Path
from typing import Any

import pytest
from classroom import DAY, HABIT, Recorder, handed_in, journal, records_of
from jsonschema import Draft7Validator

from tutor.cohort import class_report
from tutor.cohort.as_statements import as_statements
from tutor.cohort.handed import written
from tutor.lesson.event import LATEST
from tutor.model import load_set
from tutor.variants import variant_of

Statement = dict[str, Any]
IRI = {"type": "string", "pattern": r"^[A-Za-z][A-Za-z0-9+.-]*:[^\s<>\"{}|\\^`\x00-\x20]+$"}
WORDS = {
    "type": "object",
    "minProperties": 1,
    "propertyNames": {"pattern": r"^[A-Za-z]{2,8}(-[A-Za-z0-9]{1,8})*$"},
    "additionalProperties": {"type": "string", "minLength": 1},
}
EXTENSIONS = {"type": "object", "propertyNames": IRI}
UUID = {
    "type": "string",
    "pattern": r"^[0-9a-f]{8}-[0-9a-f]{4}-[1-8][0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$",
}
MOMENT = {
    "type": "string",
    "pattern": r"^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])T([01]\d|2[0-3]):[0-5]\d:[0-5]\d"
    r"(\.\d{1,9})?(Z|[+-](?!00:00)\d\d:\d\d)$",
}
DURATION = {
    "type": "string",
    "pattern": r"^P(?=\d|T\d)(\d+Y)?(\d+M)?(\d+D)?(T(?=\d)(\d+H)?(\d+M)?(\d+(\.\d+)?S)?)?$",
}
INTERACTIONS = ["true-false", "choice", "fill-in", "long-fill-in", "matching", "performance"]
INTERACTIONS += ["sequencing", "likert", "numeric", "other"]


def closed(required: list[str], **properties: Any) -> dict[str, Any]:
    """An object with these properties and no others."""
    return {
        "type": "object",
        "required": required,
        "properties": properties,
        "additionalProperties": False,
    }


ACTOR = {
    **closed(
        [],
        objectType={"enum": ["Agent", "Group"]},
        name={"type": "string", "minLength": 1},
        mbox={"type": "string", "pattern": "^mailto:.+@.+$"},
        mbox_sha1sum={"type": "string", "pattern": "^[0-9a-f]{40}$"},
        openid=IRI,
        account=closed(["homePage", "name"], homePage=IRI, name={"type": "string", "minLength": 1}),
    ),
    "oneOf": [{"required": [each]} for each in ("mbox", "mbox_sha1sum", "openid", "account")],
}
ACTIVITY = closed(
    ["id"],
    objectType={"const": "Activity"},
    id=IRI,
    definition=closed(
        [],
        name=WORDS,
        description=WORDS,
        type=IRI,
        moreInfo=IRI,
        interactionType={"enum": INTERACTIONS},
        extensions=EXTENSIONS,
    ),
)
ACTIVITIES = {"type": "array", "items": ACTIVITY, "minItems": 1}
SCORE = closed(
    [],
    scaled={"type": "number", "minimum": -1, "maximum": 1},
    raw={"type": "number"},
    min={"type": "number"},
    max={"type": "number"},
)
SCHEMA = closed(
    ["actor", "verb", "object"],
    id=UUID,
    actor=ACTOR,
    verb=closed(["id"], id=IRI, display=WORDS),
    object=ACTIVITY,
    result=closed(
        [],
        score=SCORE,
        success={"type": "boolean"},
        completion={"type": "boolean"},
        response={"type": "string"},
        duration=DURATION,
        extensions=EXTENSIONS,
    ),
    context=closed(
        [],
        registration=UUID,
        instructor=ACTOR,
        contextActivities=closed(
            [], parent=ACTIVITIES, grouping=ACTIVITIES, category=ACTIVITIES, other=ACTIVITIES
        ),
        revision={"type": "string"},
        platform={"type": "string", "minLength": 1},
        language=WORDS["propertyNames"],
        extensions=EXTENSIONS,
    ),
    timestamp=MOMENT,
    version={"type": "string", "pattern": r"^(1\.0\.\d+|2\.0\.\d+)$"},
)
"""What a client may send: `stored` and `authority` are the store's, and there are no attachments."""
STATEMENTS = Draft7Validator({"type": "array", "items": SCHEMA})


def shown_to(student: str, folder: Path) -> bytes:
    """What somebody hands in who watched the first problem to its end."""
    among = load_set(folder)
    own = variant_of(among.problems[0], student=student, set=among.name)
    recorder = Recorder(own, HABIT["careful"], 1)
    while recorder.do("show").accepted:
        pass
    return written(student, among.name, among.title, DAY, [journal(own, recorder.records)])


@pytest.fixture(scope="module")
def statements(course_folder: Path, tmp_path_factory: pytest.TempPathFactory) -> list[Statement]:
    """A careful one under a name, a guesser whose id and lines are no plain words, one who watched."""
    folder = tmp_path_factory.mktemp("handed-in")
    odd = "s2 \N{SNOWMAN} <b>/?#"
    files = {
        "s1": handed_in(course_folder, "s1", most={"trestle": 0}),
        "s2": handed_in(course_folder, odd, "guesser", most={"eel-trap": 40, "trestle": 0}),
        "s3": shown_to("s3", course_folder),
    }
    for name, data in files.items():
        (folder / f"{name}.txt").write_bytes(data)
    report = class_report(folder, course_folder, roster={"s1": "Juno Pask"}, names="name")
    return list(json.loads(as_statements(report)))


def test_every_statement_has_what_the_standard_wants_and_nothing_else(
    statements: list[Statement],
) -> None:
    assert [str(error) for error in STATEMENTS.iter_errors(statements)] == []
    verbs = {said["verb"]["id"].rpartition("/")[2] for said in statements}
    assert verbs == {"answered", "completed", "experienced"}
    assert {"s1", "s2 \N{SNOWMAN} <b>/?#", "s3"} == {
        said["actor"]["account"]["name"] for said in statements
    }


def test_what_the_standard_only_advises_is_kept_as_well(statements: list[Statement]) -> None:
    """Ids are there and differ, so that nothing counts twice; times are of UTC and in their order; words
    stand beside what only a program reads."""
    assert len({said["id"] for said in statements}) == len(statements)
    times = [datetime.fromisoformat(said["timestamp"]) for said in statements]
    assert times == sorted(times)
    assert {at.utcoffset() for at in times} == {timedelta(0)}
    for said in statements:
        assert said["version"] == "2.0.0"
        assert said["verb"]["display"]
        assert said["object"]["definition"]["name"]
        assert said["object"]["definition"]["type"]


def test_a_result_says_what_was_done_and_its_time_and_share(statements: list[Statement]) -> None:
    ended = [said for said in statements if "completion" in said["result"]]
    assert {said["actor"]["account"]["name"] for said in ended} == {"s1", "s3"}
    share = {said["actor"]["account"]["name"]: said["result"]["score"] for said in ended}
    assert share == {"s1": {"scaled": 1.0}, "s3": {"scaled": 0.0}}
    for said in ended:
        assert float(re.fullmatch(r"PT(\d+)S", said["result"]["duration"])[1]) > 0  # type: ignore[index]
    answered = [said["result"]["success"] for said in statements if said not in ended]
    assert set(answered) == {True, False}


SPOILED: dict[str, Callable[[Statement], object]] = {
    "no actor": lambda s: s.pop("actor"),
    "no verb": lambda s: s.pop("verb"),
    "no object": lambda s: s.pop("object"),
    "a verb without its IRI": lambda s: s["verb"].pop("id"),
    "an activity without its IRI": lambda s: s["object"].pop("id"),
    "an account without its home page": lambda s: s["actor"]["account"].pop("homePage"),
    "an account without its name": lambda s: s["actor"]["account"].pop("name"),
    "an agent without an account": lambda s: s["actor"].pop("account"),
    "two ways to tell an agent": lambda s: s["actor"].update(mbox="mailto:a@b.invalid"),
    "an id that is no UUID": lambda s: s.update(id="s1-1"),
    "a relative IRI": lambda s: s["object"].update(id="/sets/week-3"),
    "an IRI with a space": lambda s: s["object"].update(id="https://x.invalid/eel trap"),
    "a name that is no language map": lambda s: s["object"]["definition"].update(name="A"),
    "a language that is none": lambda s: s["verb"].update(display={"e": "answered"}),
    "a time without a zone": lambda s: s.update(timestamp="2026-11-02T09:00:00.000"),
    "a time of zone -00:00": lambda s: s.update(timestamp="2026-11-02T09:00:00-00:00"),
    "a month that is none": lambda s: s.update(timestamp="2026-13-02T09:00:00Z"),
    "a duration in words": lambda s: s["result"].update(duration="90 s"),
    "an empty duration": lambda s: s["result"].update(duration="PT"),
    "a scaled score in percent": lambda s: s["result"].update(score={"scaled": 90}),
    "success in words": lambda s: s["result"].update(success="yes"),
    "a response that is no text": lambda s: s["result"].update(response=12),
    "an extension without an IRI": lambda s: s["result"].update(extensions={"step": "joints"}),
    "a parent that is no activity": lambda s: s["context"]["contextActivities"].update(parent=[{}]),
    "a null": lambda s: s["result"].update(score=None),
    "a property of its own": lambda s: s.update(mark=1),
    "what only the store says": lambda s: s.update(stored="2026-11-02T09:00:00Z"),
    "another version": lambda s: s.update(version="3.0.0"),
}


@pytest.mark.parametrize("how", SPOILED)
def test_a_statement_that_breaks_a_rule_would_be_refused(
    statements: list[Statement], how: str
) -> None:
    spoiled = copy.deepcopy(statements[0])
    SPOILED[how](spoiled)
    assert not STATEMENTS.is_valid([spoiled])


@pytest.mark.parametrize("time", [0.0, 0.9995, LATEST])
def test_a_clock_that_went_wrong_still_gives_a_time_of_the_standard(
    course_folder: Path, tmp_path: Path, time: float
) -> None:
    among = load_set(course_folder)
    own = variant_of(among.problems[0], student="s9", set=among.name)
    records = [
        {**each, "time": time} if "time" in each else each
        for each in records_of(own, HABIT["careful"])
    ]
    data = written("s9", among.name, among.title, DAY, [journal(own, records)])
    (tmp_path / "s9.txt").write_bytes(data)
    told = json.loads(as_statements(class_report(tmp_path, course_folder)))
    assert told
    assert [str(error) for error in STATEMENTS.iter_errors(told)] == []
