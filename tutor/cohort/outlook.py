"""How many answers of a class have to be judged anew, and about how long does that take?

Told before it begins, from a few of the files: a class whose lessons bear the verdicts of another version
takes ten times as long, and nobody should have to wonder.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from tutor.cohort.folder import Lying, read
from tutor.judge.version import of_sources

LOOKED_AT = 20
"""So many files are looked at, spread over the class."""
A_SECOND = 250
"""So many typed answers are judged in a second on one processor; as measured, and it need be no better."""
WORTH_TELLING = 10.0
"""A wait of so many seconds is told beforehand."""
TYPED = re.compile(rb'"judge":"([0-9a-f]*) [^"]*","accepted":(?:true|false),"verdict":"[a-z]')
OTHER_VERSION = "were judged by another version of pinjoint and are judged anew"
IN_FULL = "are judged anew"


def outlook(files: Sequence[Lying], in_full: bool, workers: int) -> str:
    """One sentence on what is judged anew and how long that may take; empty where it is not long."""
    step = max(1, len(files) // LOOKED_AT)
    looked_at = files[::step]
    found = sum(_judged_anew(read(lying), in_full) for lying in looked_at)
    answers = found * len(files) / max(1, len(looked_at))
    seconds = answers / (A_SECOND * max(1, workers))
    if seconds < WORTH_TELLING:
        return ""
    why = IN_FULL if in_full else OTHER_VERSION
    return f"About {_round(answers)} answers {why}; that takes about {_length(seconds)}."


def _judged_anew(data: object, in_full: bool) -> int:
    if not isinstance(data, bytes):
        return 0
    version = of_sources().encode()
    return sum(in_full or found != version for found in TYPED.findall(data))


def _round(count: float) -> str:
    """A count to two figures: 12,000."""
    return f"{int(float(f'{count:.2g}')):,}"


def _length(seconds: float) -> str:
    """A length of time as one says it."""
    if seconds < 60.0:
        return f"{round(seconds, -1):.0f} seconds"
    minutes = round(seconds / 60.0)
    return "a minute" if minutes == 1 else f"{minutes} minutes"
