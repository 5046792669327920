"""Which slip runs through every line of a body, at one force or at all its members?"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence

from tutor.homework.account import AccountDraft
from tutor.homework.changes import COPIED, miscopied
from tutor.homework.sheet import ForcePart, Sheet
from tutor.homework.slips import FACTORS, cost_of
from tutor.homework.vectors import along
from tutor.homework.work import Entry
from tutor.judge import Value
from tutor.statics.body import load_name

MISFIT = 0.5
EVERYWHERE = 0.5
ARITHMETIC = cost_of("arithmetic") + 0.4
STRAIGHT = 1.0
TOGETHER = 0.2
REVERSED = cost_of("sign") + 0.1
"""All members at a joint reversed; less plausible than a lone sign that explains it as well."""


def of_one_force(
    sheet: Sheet, solved: Sequence[str], entries: Mapping[str, Entry]
) -> Iterator[AccountDraft]:
    """One force that goes wrong in every line alike: what is left over lies along it."""
    for part in sheet.parts:
        ends = along(part.vector, sheet.lefts, sheet.slacks)
        if ends is None or ends[0] <= 0.0 <= ends[1]:
            continue
        yield from _along(part, sum(ends) / 2, (ends[1] - ends[0]) / 2, entries)
        if part.name in solved and not part.is_load:
            straight = sum(1 for a in part.vector if abs(a) > 1e-9) == 1
            cost = ARITHMETIC + (STRAIGHT if straight else 0.0)
            yield AccountDraft("arithmetic", part.name, cost, Value(part.name))


def _along(
    part: ForcePart, left: float, slack: float, entries: Mapping[str, Entry]
) -> Iterator[AccountDraft]:
    """Accounts of a force that is too large by what is `left` in every line of the body."""
    value = part.number
    if value == 0.0:
        return
    about = None if part.is_load else Value(part.name)
    for code, factor, cost in _factors(part, entries.get(part.name)):
        allowed = slack + abs(1.0 - factor) * part.radius
        off = abs(left - (1.0 - factor) * value)
        if off <= allowed:
            misfit = MISFIT * (off / allowed) ** 2 if allowed else 0.0
            yield AccountDraft(code, part.name, cost + misfit, about)


def _factors(part: ForcePart, entry: Entry | None) -> Iterator[tuple[str, float, float]]:
    """(code, what the force was taken times, cost) for each slip that changes a force as a whole."""
    turned = "tension-compression" if part.force.kind == "member" else "sign"
    yield turned, -1.0, cost_of(turned) + 0.1
    yield "missing", 0.0, cost_of("missing") + EVERYWHERE
    for factor in FACTORS:
        yield "unit", factor, cost_of("unit") + EVERYWHERE
    if entry is not None and entry.value:
        for other in miscopied(entry):
            yield "magnitude", other / entry.value, COPIED + 0.3


def of_both_lines(sheet: Sheet) -> Iterator[AccountDraft]:
    """Slips that run through both lines of a joint: components exchanged, members or loads reversed, no load."""
    (rx, ry), (tx, ty) = sheet.lefts, sheet.slacks
    if abs(rx) > tx and abs(ry) > ty:
        yield from _exchanged(sheet)
        yield from _of_loads(sheet)
    members = [p for p in sheet.parts if p.force.kind == "member"]
    if 2 <= len(members) < len(sheet.parts):
        dx = -2 * math.fsum(p.vector[0] * p.number for p in members)
        dy = -2 * math.fsum(p.vector[1] * p.number for p in members)
        if abs(rx + dx) <= tx and abs(ry + dy) <= ty:
            yield AccountDraft("pull-push", None, REVERSED)


def _exchanged(sheet: Sheet) -> Iterator[AccountDraft]:
    """One force with its components exchanged."""
    (rx, ry), (tx, ty) = sheet.lefts, sheet.slacks
    for part in sheet.parts:
        ux, uy = part.vector
        if ux == 0.0 or uy == 0.0:
            continue
        value = part.number
        dx = (math.copysign(uy, ux) - ux) * value
        dy = (math.copysign(ux, uy) - uy) * value
        slack = abs(abs(uy) - abs(ux)) * part.radius
        if abs(rx + dx) <= tx + slack and abs(ry + dy) <= ty + slack:
            yield AccountDraft("component", part.name, cost_of("component") + TOGETHER)


def _of_loads(sheet: Sheet) -> Iterator[AccountDraft]:
    """Loads in two directions that were left out together, or turned round together."""
    loads = [part for part in sheet.parts if part.is_load]
    if len(loads) < 2:
        return
    (rx, ry), (tx, ty) = sheet.lefts, sheet.slacks
    x, y = (math.fsum(p.vector[k] * p.number for p in loads) for k in range(2))
    for code, by in (("missing", -1.0), ("sign", -2.0)):
        if abs(rx + by * x) <= tx and abs(ry + by * y) <= ty:
            yield AccountDraft(code, load_name(sheet.name), cost_of(code) + TOGETHER)
