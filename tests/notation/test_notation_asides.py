"""Does a statement end where it is whole, whatever is said behind it, and is nothing left out that turns it?"""

from __future__ import annotations

import json
import re
from functools import lru_cache
from pathlib import Path
from random import Random

import pytest

from tutor import load_problem
from tutor.notation import Line, Names, Unreadable, read_line

PAPER = Path(__file__).parents[1] / "paper"
ASIDES = (
    "too",
    "as before",
    "like i said",
    "bc nothing else acts there",
    "cuz the load just hangs there",
    "no load here",
    "each",
    "just to be sure",
    "(both of them)",
    "(dont forget this one)",
    "hmm ok",
    "same as on the other side",
)
CHANGING = (
    "and 5 more",
    "or 117",
    "plus 5",
    "twice that",
    "but negative",
    "the other way round",
    "isnt right",
    "not really",
    "no wait",
    "(not {last})",
)


PLAIN = re.compile(r"=( *)(?!0\.?0*$)[0-9][0-9.]*$")


@lru_cache(maxsize=32)
def names(truss: str) -> Names:
    return load_problem(PAPER / f"{truss}.toml").names


def results() -> list[tuple[str, str]]:
    """Right lines of students that end in a plain number which is not negative and not zero."""
    rows = (
        json.loads(row)
        for file in ("night", "hurry", "asides", "typed", "lecturer")
        for row in (PAPER / f"{file}.jsonl").read_text("utf-8").splitlines()
    )
    found = [(row["truss"], row["text"]) for row in rows if row["kind"] == "right"]
    return [
        (truss, text)
        for truss, text in found
        if PLAIN.search(text) is not None and isinstance(read_line(text, names(truss)), Line)
    ]


def said(line: Line) -> list[tuple[object, ...]]:
    """What each statement of a line sets equal, with its letters."""
    return [
        tuple(
            (side.letter, side.sense, *((term.name, term.value) for term in side.terms))
            for side in step.sides
        )
        for step in line.steps
    ]


def test_an_aside_behind_a_whole_statement_changes_nothing_of_it() -> None:
    assert len(results()) > 30
    for truss, text in results():
        usual = read_line(text, names(truss))
        assert isinstance(usual, Line)
        for aside in Random(text).sample(ASIDES, 4):
            found = read_line(f"{text} {aside}", names(truss))
            assert isinstance(found, Line), (text, aside, found.message)
            assert said(found) == said(usual), (text, aside)


@pytest.mark.parametrize("change", CHANGING)
def test_words_that_make_a_statement_another_one_are_never_left_out(change: str) -> None:
    for truss, text in results():
        usual = read_line(text, names(truss))
        assert isinstance(usual, Line)
        last = text.rpartition("=")[2].strip()
        found = read_line(f"{text} {change.format(last=last)}", names(truss))
        assert isinstance(found, Unreadable) or said(found) != said(usual), (text, change)


@pytest.mark.parametrize(
    ("text", "same"),
    [
        ("-rv-0.6sv=0 sub sv=15 so rv=-9", "-rv-0.6sv=0; sv=15; so rv=-9"),
        ("-rv-0.6sv=0 plug in sv=15 rv=-9", "-rv-0.6sv=0; sv=15; rv=-9"),
        ("-rv-0.6sv=0 w/ sv=15 gives rv=-9", "-rv-0.6sv=0; sv=15; so rv=-9"),
        ("-rv-0.6sv=0 (since sv=15) so rv=-9", "-rv-0.6sv=0; sv=15; so rv=-9"),
        ("rs+.8qr=0 thats .8qr=20 , qr=25", "rs+.8qr=0 so .8qr=20, qr=25"),
        ("qs=0.6sv gives about 9", "qs=0.6sv so 9"),
        ("qs=0.6sv=9 or 12", "qs=0.6sv=9 so 12"),
        ("rs+.8qr=0, rv is zero", "rs+.8qr=0, rv=0"),
        ("rs+.8qr=0, qr=24 no 25", "rs+.8qr=0, qr=25"),
        ("about -9", "-9"),
        ("should be 9 C", "9 C"),
        ("qr = roughly 25", "qr = 25"),
        ("24 comp not tension", "24 comp"),
        ("24 not in tension", "24 comp"),
        ("24 hmm tension i guess", "24 tension"),
        ("qs=9 (more on the right)", "qs=9"),
        ("rs+.8qr=0 ... qr=25 yay", "rs+.8qr=0; qr=25"),
        ("rs+.8qr=0, qr is 25 then", "rs+.8qr=0, qr=25"),
        ("qr has 25 too", "qr=25"),
        ("qr takes all 25 of it", "qr=25"),
        ("qs=0.6sv is 9", "qs=0.6sv so 9"),
        ("qs=qr, both 25", "qs=qr so 25"),
        ("minus 24", "-24"),
        ("qs=9 cos the load pulls straight down", "qs=9"),
        ("24 left, against the load", "24 left"),
        ("24 left (i drew right)", "24 left"),
    ],
)
def test_what_is_said_between_statements_joins_them(text: str, same: str) -> None:
    one, other = read_line(text, names("trolley")), read_line(same, names("trolley"))
    assert isinstance(one, Line), one.message
    assert isinstance(other, Line), other.message
    assert said(one) == said(other)
    assert [step.follows for step in one.steps] == [step.follows for step in other.steps]


@pytest.mark.parametrize(
    ("text", "quoted"),
    [
        ("ps + rs = 0", "ps"),
        ("rs = 0.8 qv", "qv"),
        ("qs = 0.6 (sx)", "sx"),
        ("rs + qr too = 0", "too"),
        ("qs + 3 because of it = 0", "because"),
    ],
)
def test_a_slip_of_the_fingers_is_explained_and_no_aside(text: str, quoted: str) -> None:
    found = read_line(text, names("trolley"))
    assert isinstance(found, Unreadable)
    assert f"“{quoted}" in found.message


def test_an_aside_that_names_a_force_or_says_a_number_is_told() -> None:
    for text in ("qs=9 same as rv", "qs=9 each on joint 3", "qs=9 no tension"):
        found = read_line(text, names("trolley"))
        assert isinstance(found, Line), found.message
        assert [text[span.start : span.end] for span in found.unread] == [text.partition(" ")[2]]
