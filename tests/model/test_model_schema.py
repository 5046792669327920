"""Does the schema of problem files know what a schema can know, and refuse nothing that is sound?

The outside judge is the `jsonschema` package (draft 4), over what `tomllib` reads.
"""

from __future__ import annotations

import tomllib
from pathlib import Path

import pytest
from broken_files import CASES, SOUND, Case, text_of
from hypothesis import given
from hypothesis import strategies as st
from jsonschema import Draft4Validator
from strategies import make_truss

from tutor.model import defects, load_problem, write_problem
from tutor.model.read import KEYS
from tutor.model.schema import FILE, problem_schema, schema_text, shipped_text
from tutor.model.write import SCHEMA
from tutor.shipped import shipped_problems

VALIDATOR = Draft4Validator(problem_schema())
PROBLEMS = sorted(p for p in shipped_problems().rglob("*.toml") if p.name != "set.toml")
BEYOND = (
    # what another part of the file has to say
    *(
        "which is not there",
        "at joint D, which is not",
        "which are not there",
        "has no member",
        "begins and ends at",
        "is already there as",
    ),
    *('"ABC" does not name two joints', "has no length", "is more than remark", "cancel, so it is"),
    # what an expression, a figure or a character comes to
    *(
        "which cannot be read",
        "with a unit",
        "“1/0” divides",
        "so it is no load",
        "the title is empty",
    ),
    *("more than 30 digits", "smaller than 1e-12", "is nan"),
)
"""What is said of files that no schema can tell from sound ones."""


def refused(text: str) -> list[str]:
    """What the schema finds wrong; TOML that cannot be read is refused before it gets there."""
    try:
        data = tomllib.loads(text)
        return [error.message for error in VALIDATOR.iter_errors(data)]
    except ValueError as error:  # no TOML, or a number too long for the validator's own message
        return [str(error)]


def test_the_schema_is_one_of_draft_4_in_every_part() -> None:
    Draft4Validator.check_schema(problem_schema())
    assert set(problem_schema()["properties"]) == set(KEYS)


def test_the_shipped_file_is_the_schema_of_the_code() -> None:
    assert shipped_text() == schema_text()


@pytest.mark.parametrize("path", PROBLEMS, ids=lambda path: path.stem)
def test_every_shipped_problem_fits_the_schema(path: Path) -> None:
    assert refused(path.read_text("utf-8")) == []
    assert refused(write_problem(load_problem(path))) == []


@given(st.integers(0, 10**6), st.integers(3, 9))
def test_any_problem_that_is_written_fits_the_schema(seed: int, joints: int) -> None:
    assert refused(write_problem(make_truss(seed, joints))) == []


def test_a_sound_file_fits_and_each_way_of_writing_a_part_does() -> None:
    assert refused(SOUND) == []
    for old, new in (
        ('B = "roller"', 'B = { roller = "atan(3/4)" }'),
        ('B = "roller"', 'B = { link = [9, "3/2"] }'),
        ("down = 12", "size = 12.5\nangle = -330"),
        ("down = 12", 'down = "5*sqrt(3)"\nright = 1'),
        ('"CA"', '" C - A "'),
        ("level = 2", 'level = 2\ntolerance = { silent = 0, remark = "3/2" }'),
        ("level = 2", 'level = 2\ngiven = ["reactions"]\ntopics = ["a"]\nid = "x"\nstory = "y"'),
    ):
        text = SOUND.replace(old, new)
        assert text != SOUND
        assert defects(text) == ()
        assert refused(text) == [], new


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.says[:40])
def test_a_broken_file_is_refused_where_a_schema_can_tell(case: Case) -> None:
    beyond = any(words in case.says for words in BEYOND)
    assert bool(refused(text_of(case))) is not beyond, case


def test_what_the_tool_writes_says_in_its_first_line_where_the_schema_is() -> None:
    first = write_problem(make_truss(7, 5)).splitlines()[0]
    assert first == f"#:schema {SCHEMA}"
    assert f"./{FILE}" == SCHEMA
    assert not write_problem(make_truss(7, 5), schema="").startswith("#")
