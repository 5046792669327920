"""What do wrong lines beyond the first wrong place say: of the values found there, and of the page?"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from tutor.homework.findings import Finding
from tutor.homework.lines import LineVerdict, typed_in
from tutor.homework.outcome import ReviewOutcome
from tutor.homework.sheet import place_in_words
from tutor.judge import Judge
from tutor.text import listed

UNNAMED = "not-equilibrium"
SAME = "The lines of {places} show the same kind of mistake."


def with_later_lines(
    desk: Judge, misleading: Sequence[LineVerdict], outcome: ReviewOutcome
) -> ReviewOutcome:
    """The outcome with what the `misleading` lines of later places show beside it.

    A wrong value that nothing explains gets the mistake of the line in which its letter stands, and
    where lines of other places show what the first one does, a sentence says so.
    """
    if not outcome.places or not outcome.accounts:
        return outcome
    first, code = outcome.places[0], outcome.accounts[0].mistake.code
    if all(judged.place != first for judged in misleading):
        return outcome
    findings = dict(outcome.findings)
    alike: list[str] = []
    for judged in misleading:
        mistake = judged.verdict.mistakes[0]
        if mistake.code == code and judged.place not in (first, None, *alike):
            alike.append(str(judged.place))
        for name in typed_in(desk, judged.line):
            found = findings.get(name)
            unexplained = found is not None and found.state == "wrong" and found.cause is None
            if unexplained and mistake.code != UNNAMED:
                findings[name] = Finding(name, "wrong", mistake, "likely")
    note = SAME.format(places=listed([place_in_words(place) for place in alike])) if alike else ""
    return replace(outcome, findings=findings, note=note)
