"""What is said of made homeworks, page by page, is what `made/` keeps of it.

The shares of `test_homework_figures` say how often the place and the mistake are found; a change that
trades one page for another leaves them as they are. Here each page has a row: its seed and the slips it
was made with, then what was said of it. A row may change only for the better: look at each before
`PINJOINT_RENEW_GOLDENS=1` writes them anew.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path
from random import Random

import pytest
from kept import is_as_kept
from students_work import Homework, homework

from tutor.homework import Review, review

KEPT = Path(__file__).parent / "made"
CHUNK = 50
BLANK = 0.2
Page = Mapping[str, object]


def whole(done: Homework, rng: Random) -> Page:
    return done.work()


def in_order(done: Homework, rng: Random) -> Page:
    return done.work(order=done.order)


def with_lines(done: Homework, rng: Random) -> Page:
    return done.work(lines=done.written_lines(rng))


def with_blanks(done: Homework, rng: Random) -> Page:
    """The values as written, but for some that are not there."""
    work = done.work()
    for part in ("reactions", "forces"):
        entries = work[part]
        assert isinstance(entries, dict)
        work[part] = {name: text for name, text in entries.items() if rng.random() > BLANK}
    return work


PAGES: dict[str, tuple[Callable[[Homework, Random], Page], int, int]] = {
    "whole": (whole, 1, 80_000),
    "two-slips": (whole, 2, 81_000),
    "in-order": (in_order, 2, 82_000),
    "lines": (with_lines, 2, 83_000),
    "blanks": (with_blanks, 1, 84_000),
    "blanks-two-slips": (with_blanks, 2, 85_000),
    "two-figures": (whole, 1, 86_000),
}
"""How each page is handed in, with how many slips, and the first of its seeds."""


def said(result: Review) -> str:
    """The places, what explains the first, and every finding that is not plainly right."""
    accounts = ", ".join(f"{a.mistake.code} {a.mistake.force or '-'}" for a in result.accounts[:2])
    found = [
        f"{f.name} {f.state} {f.sure}"
        + (f" {f.cause.code} {f.cause.force or '-'}" if f.cause else "")
        for f in result.findings
        if f.state != "right"
    ]
    asked = f"decides {result.decides or '-'}, more {result.more or '-'}"
    clear = "clear" if result.clear else "unclear"
    places = ", ".join(result.places) or "-"
    return " | ".join((places, clear, accounts or "-", asked, "; ".join(found)))


def rows(name: str) -> str:
    hand_in, mistakes, first = PAGES[name]
    digits = 2 if name == "two-figures" else None
    found = []
    for seed in range(first, first + CHUNK):
        both = homework(seed, mistakes, digits=digits)
        if both is None:
            continue
        done = both[0]
        slips = ", ".join(f"{slip.code} {slip.force or '-'} at {slip.place}" for slip in done.slips)
        result = review(done.problem, hand_in(done, Random(seed)))
        found.append(f"{seed} | {slips} | {said(result)}\n")
    return "".join(found)


@pytest.mark.parametrize("name", PAGES)
def test_of_made_homeworks_the_same_is_said_as_before(name: str) -> None:
    assert is_as_kept(KEPT / f"{name}.txt", rows(name))
