"""Of what is not an equation the judge says one sentence with a place and a cure, and never raises."""

from __future__ import annotations

from functools import lru_cache

import pytest
from broken import assert_one_sentence, broken, prefixes
from corpus import Right, right_line

from tutor.judge import Verdict, judge

LINES = 50


@lru_cache(maxsize=LINES)
def right(seed: int) -> Right:
    return right_line(seed)


def judged(line: Right, text: str) -> Verdict:
    """The verdict on `text` in the place of a right line; one sentence where it cannot be read."""
    verdict = judge(line.problem, line.about, text, senses=line.senses, known=line.known)
    assert verdict.text.isprintable()
    if verdict.kind == "unreadable":
        assert_one_sentence(verdict.unreadable, text)
        assert verdict.text == verdict.unreadable.message  # type: ignore[union-attr]
    return verdict


def test_broken_lines_get_one_sentence_each_and_nothing_raises() -> None:
    lines = [right(seed % LINES) for seed in range(700)]
    found = [judged(line, broken(seed, line.text)) for seed, line in enumerate(lines)]
    assert sum(verdict.kind == "unreadable" for verdict in found) > 350


@pytest.mark.parametrize(
    "seed", [pytest.param(n, marks=[pytest.mark.slow] if n % 2 else []) for n in range(LINES)]
)
def test_every_half_typed_line_is_judged_or_gets_one_sentence(seed: int) -> None:
    line = right(seed)
    for half in prefixes(line.text):
        verdict = judged(line, half)
        assert verdict.kind == "unreadable" or "=" in half
