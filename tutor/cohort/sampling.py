"""Which answers of a lesson are judged again, though its verdicts may be believed?

They are drawn by lot, from a seed that depends on every file of the class. What speaks for the student
is drawn oftener than what was called wrong: nobody gains by being called wrong, and to find out again
which mistake a line shows takes three times as long. One that speaks for the student is drawn from each
lesson in any case, so that a lesson made up as a whole is always found.
"""

from __future__ import annotations

import hashlib
from collections.abc import Sequence
from random import Random

from tutor.cohort.claimed import ANSWERS
from tutor.lesson.outcome import Outcome
from tutor.lesson.replay import KeptEvent

SHARE = 0.02
"""The share of the answers that speak for the student which is judged again; our own judgement."""
AGAINST = 0.25
"""So much less often is an answer drawn that was called wrong."""


def sample(kept: Sequence[KeptEvent], seed: str, share: float = SHARE) -> frozenset[int]:
    """The places of the answers to be judged again."""
    draw = Random(hashlib.sha256(seed.encode("utf-8", "surrogatepass")).digest()).random
    lots: dict[int, tuple[bool, float]] = {}
    tries = 0
    for place, (event, outcome, _) in enumerate(kept):
        called_wrong, tries = _called_wrong(outcome, tries)
        if event.kind in ANSWERS:
            lots[place] = called_wrong, draw()
    if not lots:
        return frozenset()
    least = min(lots, key=lambda place: lots[place])
    shares = {False: share, True: share * AGAINST}
    return frozenset({least, *(place for place, (of, lot) in lots.items() if lot < shares[of])})


def _called_wrong(outcome: Outcome | None, tries: int) -> tuple[bool, int]:
    """Whether an outcome adds one wrong try to those before it and nothing else that counts, and how
    many tries there are then."""
    row = None if outcome is None else outcome.changed.get("tries")
    if outcome is None or row is None:
        return False, tries
    try:
        start, verdicts = row["from"], [each["verdict"] for each in row["add"]]
        so = start == tries and verdicts == ["wrong"] and not outcome.accepted
        return so, start + len(verdicts)
    except (TypeError, KeyError):
        return False, tries
