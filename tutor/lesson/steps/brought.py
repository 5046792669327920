"""Which values does a student bring along? A walk that begins in the middle of work done on paper."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from tutor.judge import Judge, Value
from tutor.judge.known_values import KnownValues, senses_for
from tutor.lesson.event import Event
from tutor.lesson.reply import Reply, Say
from tutor.lesson.state import Result, State
from tutor.lesson.steps import joints
from tutor.lesson.steps.spread import all_brought

ONLY_AT_FIRST = "Values are brought along only at the beginning of a walk."


def bring(state: State, event: Event, desk: Judge) -> tuple[State, Reply]:
    """The student goes on from work done already: data `values`, `senses` and perhaps `joint`.

    Only values that are right by themselves are taken; the others stay unknown. Arrows that
    `senses` leaves open are drawn in the positive sense. Without a joint, the reactions come next.
    """
    if state.lines or state.results or state.tries:
        return state, Reply((Say("note", ONLY_AT_FIRST),))
    senses = {r.name: senses_for(state.problem, r.name)[0] for r in state.problem.reactions}
    for name, sense in _texts(event, "senses").items():
        if name in state.problem.unknowns and sense in senses_for(state.problem, name):
            senses[name] = sense
    results = []
    for name, text in _texts(event, "values").items():
        if name in state.problem.unknowns:
            verdict = desk.judge(Value(name), text, KnownValues(senses, {}))
            if verdict.right and verdict.value is not None:
                results.append(Result(name, text, verdict.value, verdict.radius, "given"))
    state = replace(
        all_brought(state),
        reasons_done=True,
        count_done=True,
        supports_done=tuple(support.joint for support in state.problem.supports),
        senses=senses,
        turning="counter-clockwise",
        results=tuple(results),
        step="reactions",
    )
    note = Say("note", f"{len(results)} of your values stand; what is not right yet is unknown.")
    if event.text("joint") not in state.problem.joint:
        return state, Reply((note,), True)
    state, reply = joints.pick(
        state, Event("joint", {"joint": event.text("joint")}, event.time), desk
    )
    return state, replace(reply, said=(note, *reply.said))


def _texts(event: Event, key: str) -> Mapping[str, str]:
    """The texts by name under `key`; none where it is no such table."""
    table = event.data.get(key)
    if not isinstance(table, Mapping):
        return {}
    return {k: v for k, v in table.items() if isinstance(k, str) and isinstance(v, str)}
