"""Can what an outcome claims be so at all? Seen without judging anything.

Only an answer adds to what stands, what is shown stands as shown, no step is left undone, and every
value is near the true one.
"""

from __future__ import annotations

from collections.abc import Mapping

from tutor.judge import Judge, Value
from tutor.lesson import Event
from tutor.lesson.fold import barred
from tutor.lesson.older import WIDE
from tutor.lesson.outcome import Outcome
from tutor.lesson.place import NoForce
from tutor.lesson.state import State
from tutor.lesson.steps import STEPS

BEFORE_LINES = frozenset(
    {
        *("reasons_done", "count_done", "sound_done", "moving_done"),
        *("halves_done", "brought", "supports_done"),
    }
)
ADDS: Mapping[str, frozenset[str]] = {
    "reasons": frozenset({"reasons_done"}),
    "count": frozenset({"count_done"}),
    "soundness": frozenset({"sound_done"}),
    "loose": frozenset({"moving_done"}),
    "halves": frozenset({"halves_done"}),
    "shares": frozenset({"brought"}),
    "support": frozenset({"supports_done"}),
    "zero": frozenset({"results"}),
    "bring": BEFORE_LINES | {"results"},
    "skip": BEFORE_LINES,
    "type": frozenset({"lines", "results", "ended"}),
    "keep": frozenset({"lines", "ended"}),
    "show": BEFORE_LINES | {"lines", "results", "ended"},
}
"""What an event of each kind may add to what stands; what is shown stands as shown (`_is_shown`)."""
CREDIT = frozenset().union(*ADDS.values())
ANSWERS = ADDS.keys() - {"bring", "skip", "show"}
"""What the student answers, so that it is judged; the rest is no answer."""
NEARLY_ZERO = 1e-6


def may_add(event: Event, kept: Outcome) -> bool:
    """Whether an event of this kind may add what its outcome adds."""
    added = CREDIT & kept.changed.keys()
    return not added or (kept.accepted and added <= ADDS.get(event.kind, frozenset()))


def has_to_fit(event: Event, kept: Outcome) -> bool:
    """Whether there is something to be held against the states before and after (`can_be`)."""
    return event.kind == "show" or "step" in kept.changed or "results" in kept.changed


def can_be(before: State, after: State, desk: Judge, event: Event, kept: Outcome) -> bool:
    """Whether what an outcome claims can be so at all, without judging anything."""
    if event.kind == "undo":
        return True
    if not may_add(event, kept):
        return False
    if event.kind == "show" and not _is_shown(before, after):
        return False
    if STEPS.index(after.step) > STEPS.index(before.step) and barred(after, after.step):
        return False
    if "results" not in kept.changed:
        return True
    true = desk.values()
    reach = max(map(abs, true.values()))
    return all(
        abs(after.signed(r.unknown) - true[r.unknown])
        <= WIDE.remark * abs(true[r.unknown]) + r.radius + NEARLY_ZERO * reach
        and r.radius <= WIDE.remark * reach
        for r in after.results
        if r not in before.results
    )


def _is_shown(before: State, after: State) -> bool:
    """Whether what a `show` event adds is marked as shown, so that it counts as nobody's."""
    tries = after.tries[len(before.tries) :]
    places = {made.at for made in tries}
    return all(made.verdict == "shown" for made in tries) and all(
        Value(result.unknown) in places or NoForce(result.unknown) in places
        for result in after.results
        if result.unknown not in before.result
    )
