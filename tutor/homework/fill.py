"""What must the values be that the student has left blank, if the rest was worked with them?

Only used to go on past a blank; nothing of it is ever shown.
"""

from __future__ import annotations

from collections.abc import Mapping

from tutor.homework.sheet import Sheet, renumbered
from tutor.homework.work import LEAST_FIGURES, Entry, half_step


def filled(
    bodies: Mapping[str, Sheet],
    entries: Mapping[str, Entry],
    true: Mapping[str, float],
    without: str | None = None,
) -> tuple[dict[str, Sheet], dict[str, Entry]]:
    """The bodies and values with every blank that a body gives from the values beside it.

    Where several bodies give one differently, a mistake lies between them; the one nearer to what
    is true is taken, so that a blank adds no mistake of its own. The body `without` gives nothing.
    """
    found = dict(entries)
    sheets = dict(bodies)
    while True:
        fresh: dict[str, Entry] = {}
        for sheet in sheets.values():
            if sheet.name == without:
                continue
            for name in sheet.missing:
                guess = _from_body(sheet, name)
                kept = fresh.get(name)
                if guess is not None and (
                    kept is None or abs(guess.value - true[name]) < abs(kept.value - true[name])
                ):
                    fresh[name] = guess
        if not fresh:
            return sheets, found
        found.update(fresh)
        sheets = renumbered(bodies, found)


def _from_body(sheet: Sheet, name: str) -> Entry | None:
    """The value of `name` that one body gives, with the rounding it inherits, or None."""
    equations = sheet.equations(name, sheet.missing)
    if not equations:
        return None
    n = equations[0]
    share = sheet.part[name].share(n)
    value = -sheet.left(n) / share
    radius = max(sheet.slack(n) / abs(share), half_step(value, LEAST_FIGURES))
    return Entry(name, value, radius, "")
