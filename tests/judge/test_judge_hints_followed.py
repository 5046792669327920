"""Is the third hint true? Whoever does just what it says gets the line right.

The lines are those of the judge's corpora, so the student of each is known down to the last term. A
hint that names a term which is right already, or leaves one that is not, is caught here. Where a hint
leaves open which of two forces with one number is meant, the student tries one after the other. Two
slips may together make the line that another one makes: it takes a second hint then. What is left of
failures are lines that another pair of slips, or three, explains as well.
"""

from __future__ import annotations

from collections.abc import Sequence
from random import Random

import pytest
from corpus import Wrong, wrong_line
from lines import Piece, Style, written
from mending import KEEP, alternatives, mended

from tutor.judge import judge

MOST_ROUNDS = 4
SLOW = pytest.mark.slow


def hint_on(wrong: Wrong, line: Sequence[Piece], seed: int) -> str | None:
    """The third hint on a line; None where the line is right."""
    text = written(Random(seed), wrong.problem, line, Style(figures=5))
    verdict = judge(wrong.problem, wrong.about, text, senses=wrong.senses, known=wrong.known)
    if verdict.right:
        return None
    return " ".join(dict.fromkeys(mistake.place for mistake in verdict.mistakes))


def rounds_needed(wrong: Wrong, seed: int) -> int | None:
    """How often the hint had to be followed until the line was right; None where it never was."""
    line: tuple[Piece, ...] = wrong.slipped
    for done in range(MOST_ROUNDS + 1):
        hint = hint_on(wrong, line, seed)
        if hint is None or KEEP in hint:
            return done
        tried = [mended(each, line, wrong.line) for each in alternatives(hint)]
        ways = [way for way in tried if way is not None]
        if not ways:
            return None
        line = next((way for way in ways if hint_on(wrong, way, seed) is None), ways[0])
    return None


def followed(seeds: range, count: int) -> tuple[float, float]:
    """The shares of wrong lines right after the hint was followed once, and after some rounds."""
    rounds = [
        rounds_needed(wrong, seed)
        for seed in seeds
        if (wrong := wrong_line(seed, count)) is not None
    ]
    at_once = sum(1 for needed in rounds if needed is not None and needed <= 1)
    ever = sum(1 for needed in rounds if needed is not None)
    return at_once / len(rounds), ever / len(rounds)


@pytest.mark.parametrize(
    "seeds", [pytest.param(range(90), id="some"), pytest.param(range(500), id="all", marks=SLOW)]
)
@pytest.mark.parametrize(
    ("count", "at_once", "ever"), [(1, 1.0, 1.0), (2, 0.99, 0.998), (3, 0.97, 0.99)]
)
def test_a_student_who_follows_the_third_hint_gets_the_line_right(
    count: int, at_once: float, ever: float, seeds: range
) -> None:
    first, last = followed(seeds, count)
    assert first >= at_once
    assert last >= ever
