"""What came of one event, in words that a later version of the program can take as they stand?

An outcome holds what the event changed in the state, each part under its own name. A lesson that is
opened again takes it instead of judging anew, so that what stood stands, whatever the judge has
learnt since. Parts may be added; none is ever renamed or given another meaning.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import field, fields
from typing import Any

from tutor.judge import Equation
from tutor.lesson.event import Event
from tutor.lesson.outcome_parts import PARTS, Record
from tutor.lesson.state import State
from tutor.lesson.steps import STEPS
from tutor.notation.elements.fact import fact

OF_THE_EVENT = frozenset({"problem", "started", "last_time"})
"""What follows from the problem and the times of the events alone, and is in no outcome."""


@fact
class Outcome:
    """What came of one event: by which judge, whether it was taken, and all that it changed.

    `verdict` is the kind of the verdict, empty where nothing was judged; `back` is whether undo
    takes the event back.
    """

    judge: str
    accepted: bool
    verdict: str = ""
    back: bool = False
    changed: Mapping[str, Any] = field(default_factory=dict)

    def as_record(self, of: Event) -> Record:
        """The outcome as a mapping of JSON values, for the journal."""
        return {
            "kind": "outcome",
            "of": mark_of(of),
            "judge": self.judge,
            "accepted": self.accepted,
            "verdict": self.verdict,
            "back": self.back,
            "changed": dict(self.changed),
        }

    @classmethod
    def from_record(cls, record: Mapping[str, Any]) -> Outcome:
        """The outcome that `as_record` wrote. ValueError where the mapping is none."""
        judge, verdict = record.get("judge"), record.get("verdict")
        accepted, back, changed = (record.get(key) for key in ("accepted", "back", "changed"))
        if not (isinstance(judge, str) and isinstance(verdict, str)):
            raise ValueError("a kept outcome lacks its judge or its verdict")
        if not (isinstance(accepted, bool) and isinstance(back, bool)):
            raise ValueError("a kept outcome does not say whether it was taken")
        if not isinstance(changed, Mapping):
            raise ValueError("a kept outcome does not say what it changed")
        return cls(judge, accepted, verdict, back, changed)


def mark_of(event: Event) -> str:
    """What tells an event from the others of its lesson: a digest of all it holds."""
    text = json.dumps(event.as_record(), sort_keys=True)
    return hashlib.sha256(text.encode()).hexdigest()[:12]


def changes(before: State, after: State) -> Record:
    """Every part of the state that differs, as plain JSON values."""
    found: Record = {}
    for name, part in PARTS.items():
        old, new = getattr(before, name), getattr(after, name)
        if old is not new and old != new:
            found[name] = part.difference(old, new)
    return found


def changed(before: State, event: Event, found: Mapping[str, Any]) -> State:
    """The state after an event, from the changes kept of it.

    Parts of no name known here are passed over. ValueError where one cannot be read, or speaks of
    what this truss does not have.
    """
    return changed_by_all(before, ((event, found),))


def changed_by_all(before: State, taken: Sequence[tuple[Event, Mapping[str, Any]]]) -> State:
    """The state after one event or more, as `changed` makes it one by one; what a later one changes
    again is not read."""
    times = [event.time for event, _ in taken]
    started = before.started if before.started is not None else times[0]
    new: Record = {"started": started, "last_time": max(before.last_time, *times)}
    found: dict[str, list[Any]] = {}
    for _, kept in taken:
        for name, change in kept.items():
            if name in PARTS:
                found.setdefault(name, []).append(change)
    name = ""
    try:
        for name, each in found.items():
            new[name] = PARTS[name].changed(getattr(before, name), *each)
    except (TypeError, KeyError, AttributeError, IndexError, OverflowError) as fault:
        raise ValueError(f"the kept {name} cannot be read") from fault
    after = _with(before, new)
    _must_fit(after, found)
    return after


NAMES = tuple(each.name for each in fields(State))


def _with(before: State, new: Record) -> State:
    """As `replace` does it, in a third of its time: a class has half a million of these."""
    after = object.__new__(State)
    kept = vars(before)
    vars(after).update({name: new[name] if name in new else kept[name] for name in NAMES})
    return after


def _must_fit(state: State, found: Mapping[str, Sequence[Any]]) -> None:
    """ValueError where what was found speaks of joints, forces or steps that there are none of."""
    if not all(FITS[name](state, kept) for name, kept in found.items() if name in FITS):
        raise ValueError("the kept outcome is not of this truss")


def _are_of(state: State, abouts: Iterable[Equation | None]) -> bool:
    return all(about is None or _is_of(state, about) for about in abouts)


def _is_of(state: State, about: Equation) -> bool:
    at = getattr(about, "at", None)
    joints = [*about.part, *([about.joint] if about.joint else [])]
    joints += [at] if isinstance(at, str) else []
    return all(joint in state.problem.joint for joint in joints)


def _added(row: Sequence[Any], kept: Sequence[Any]) -> Sequence[Any]:
    """What some changes of a row have put there."""
    return row[min(each["from"] for each in kept) :]


FITS: Mapping[str, Callable[[State, Sequence[Any]], bool]] = {
    "step": lambda state, _: state.step in STEPS,
    "joint": lambda state, _: state.joint is None or state.joint in state.problem.joint,
    "part": lambda state, _: all(joint in state.problem.joint for joint in state.part),
    "results": lambda state, kept: all(
        r.unknown in state.problem.unknowns for r in _added(state.results, kept)
    ),
    "senses": lambda state, kept: all(
        name in state.problem.unknowns for each in kept for name in each["put"]
    ),
    "lines": lambda state, kept: _are_of(state, (line.about for line in _added(state.lines, kept))),
    "about": lambda state, _: _are_of(state, (state.about,)),
    "offered": lambda state, _: _are_of(state, state.offered[:1] if state.offered else ()),
}
"""Whether what was kept of a part fits its truss; the others speak of no joint, force or step."""
