"""What is said of a line that cannot be read is so: what it quotes stands there, at its column."""

from __future__ import annotations

import json
import re
from functools import lru_cache
from pathlib import Path
from random import Random

import pytest

from tutor import load_problem
from tutor.notation import Line, Names, Unreadable, read_line
from tutor.notation.elements.characters import plain
from tutor.notation.lines.reading import checked
from tutor.notation.pages.keyed import is_keyed
from tutor.notation.read import _laid_out, _plainly

PAPER = Path(__file__).parents[1] / "paper"
QUOTED = re.compile("“([^”]*)”")
TRIES = 200


@lru_cache(maxsize=32)
def names(truss: str) -> Names:
    return load_problem(PAPER / f"{truss}.toml").names


def right_lines() -> list[tuple[str, str]]:
    rows = (
        json.loads(row)
        for file in ("lecturer", "own-a", "typed")
        for row in (PAPER / f"{file}.jsonl").read_text("utf-8").splitlines()
    )
    return [(row["truss"], row["text"]) for row in rows if row["kind"] == "right"]


RIGHT = right_lines()


def mistyped(rng: Random, text: str) -> str:
    """The line with one character left out, doubled, or changed with the next."""
    at = rng.randrange(len(text))
    kind = rng.randrange(3)
    if kind == 0:
        return text[:at] + text[at + 1 :]
    if kind == 1:
        return text[:at] + text[at] + text[at:]
    return text[:at] + text[at + 1 : at + 2] + text[at] + text[at + 2 :]


def squeezed(text: str) -> str:
    return " ".join(plain(text).replace("×", "*").split())


def assert_true(found: Unreadable, text: str) -> None:
    says = found.message.removesuffix(f"; {found.cure}.")
    for quoted in QUOTED.findall(says):
        assert squeezed(quoted).rstrip("…") in squeezed(text), found.message
    end = found.column - 1 + found.length
    assert 0 <= found.column - 1 <= end <= len(text)
    if found.length:
        there = squeezed(text[found.column - 1 : end])
        assert there.startswith(squeezed(found.found).rstrip("…")), found


def broken_lines(seed: int, count: int) -> int:
    rng, unread = Random(seed), 0
    for _ in range(count):
        truss, right = rng.choice(RIGHT)
        text = mistyped(rng, right)
        found = read_line(text, names(truss))
        if isinstance(found, Unreadable):
            unread += 1
            assert_true(found, text)
    return unread


def test_what_is_quoted_of_a_mistyped_line_stands_in_it() -> None:
    assert broken_lines(1, TRIES) > TRIES / 5


@pytest.mark.slow
@pytest.mark.parametrize("seed", range(2, 22))
def test_what_is_quoted_of_thousands_of_mistyped_lines_stands_in_them(seed: int) -> None:
    assert broken_lines(seed, 3_000) > 600


@pytest.mark.parametrize(
    ("text", "cure"),
    [
        ("4a E_y = 60a", "a = 4.8 m: 4a E_y = 60a"),
        ("F_AF sin α = -12", "α = 22.62°, F_AF sin α = -12"),
        ("a = 4.8 m", "a = 4.8 m, 4a E_y = 60a"),
        ("θ = 22.62°", "θ = 22.62°, F_AF sin θ = -12"),
        ("A_y \u00ad 12 = 0", "A_y - 12 = 0"),
    ],
)
def test_what_a_complaint_advises_is_read(text: str, cure: str) -> None:
    assert isinstance(read_line(text, names("pratt")), Unreadable)
    found = read_line(cure, names("pratt"))
    assert isinstance(found, Line), found.message


def said_by(line: Line) -> list[tuple[str | None, float, float]]:
    return [term[:3] for step in line.steps for link in step.links for term in link.terms]


def test_two_signs_for_times_are_not_a_power() -> None:
    found = read_line("H_A ×× 3.6 = 50.4", names("gantry"))
    assert isinstance(found, Unreadable)
    assert (found.code, found.found) == ("operator", "×")


def test_a_plain_formula_says_the_same_when_it_is_laid_out_in_full() -> None:
    tried = 0
    for truss, text in RIGHT:
        typed = checked(text, "empty")
        if not is_keyed(text, typed):
            continue
        quick = read_line(text, names(truss))
        if isinstance(quick, Unreadable):
            continue
        frame = quick.steps[0].frame
        try:
            assert _plainly(text, typed, names(truss), frame) == quick
        except Exception as other:
            assert type(other).__name__ == "Broken"  # noqa: PT017 - then it was laid out
            continue
        tried += 1
        slow = _laid_out(text, names(truss), frame, {})
        assert said_by(slow) == said_by(quick), text
    assert tried > 200


@pytest.mark.parametrize(
    ("text", "meant"),
    [
        ("F_AB = 26O", "260"),
        ("F_AB = l4.5", "14.5"),
        ("3/1O F_AB = 12", "10"),
        ("F_AB = |5 kN", "15"),
    ],
)
def test_a_letter_among_figures_is_asked_about_and_never_taken_for_one(
    text: str, meant: str
) -> None:
    found = read_line(text, names("pratt"))
    assert isinstance(found, Unreadable)
    assert f"write {meant} if that number is meant" in found.message


@pytest.mark.parametrize("text", ["F_AB = -4 kN (so 4 kN <- hm)", "F_AB = (12 kN left (T))"])
def test_a_bracket_that_is_closed_is_never_said_to_be_open(text: str) -> None:
    found = read_line(text, names("pratt"))
    assert not isinstance(found, Unreadable) or "never closed" not in found.message


@pytest.mark.parametrize(
    ("text", "sign"),
    [
        (r"F_{AB} - 3 \cdot = 0", r"\cdot"),
        ("F_AB &minus; = 0", "&minus;"),
        ("F_AB · = 0", "·"),
        ("F_AB - 3 * = 0", "*"),
    ],
)
def test_a_sign_that_nothing_follows_is_quoted_as_it_was_typed(text: str, sign: str) -> None:
    found = read_line(text, names("tri60"))
    assert isinstance(found, Unreadable)
    assert f"“{sign}”" in found.message
