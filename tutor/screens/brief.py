"""What is shown at once of a long reply? What was written at the board is counted, not said again."""

from __future__ import annotations

from collections.abc import Sequence

from tutor.lesson import Say

MANY = 3
COUNTED = "{} things are written up to here, each among the lines. {}"
READ_ALL = "Type “again” to read all of them with their reasons."
FROM_TABLE = "To see them, press b."


def brief(said: Sequence[Say], more: str = READ_ALL) -> tuple[Say, ...]:
    """The sentences; of many that were shown their number, and what was said after the last one.

    `more` is where the rest is to be read.
    """
    shown = [place for place, say in enumerate(said) if say.tone == "shown"]
    if len(shown) < MANY:
        return tuple(said)
    behind = shown[-1] + 2  # each is followed by its reason
    return (Say("shown", COUNTED.format(len(shown), more)), *said[behind:])
