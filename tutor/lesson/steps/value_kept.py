"""What is kept and said of a right value?"""

from __future__ import annotations

from dataclasses import replace

from tutor.judge import Value, Verdict
from tutor.judge.verdict import OPENING
from tutor.lesson.event import Event
from tutor.lesson.reply import Reply, Say
from tutor.lesson.rollers import roller_that_pulls
from tutor.lesson.state import Result, State
from tutor.lesson.steps.result_words import along_its_arrow, result_in_words
from tutor.lesson.trying import right
from tutor.notation import ValueReading

MINUS = {
    "minus": "What does the minus say about your arrow? Leave the arrow as you drew it, and let the value "
    "keep its minus in later lines.",
    "minus of a pull": "The line takes the member as pulling on the joint. What does the minus say of that? "
    "Let the value keep its minus in later lines.",
}
"""What is said of a negative value, of each kind once."""


def keep_value(
    others: State, event: Event, unknown: str, verdict: Verdict, before: Reply
) -> tuple[State, Reply]:
    """A right value is among the results from now on, in the place of an earlier one of it."""
    assert verdict.value is not None
    text = event.text("text")
    result = Result(unknown, text, verdict.value, verdict.radius)
    state = replace(others, results=(*others.results, result))
    state = right(state, event, Value(unknown), text)
    minus = verdict.value < 0 and _typed_with_minus(verdict)
    told = along_its_arrow(state, unknown) if minus else result_in_words(state, unknown)
    heard = told if minus else result_in_words(state, unknown, spoken=True)
    said = [*before.said, Say.opened("right", OPENING, f"{told}.", f"{heard}.")]
    remarks = (Say("remark", remark.text) for remark in verdict.remarks)
    said += [remark for remark in remarks if remark not in said]
    kind = "minus" if unknown in state.senses else "minus of a pull"
    if minus and kind not in state.taught:
        said.append(Say("remark", MINUS[kind]))
        state = replace(state, taught=(*state.taught, kind))
    if pulled := roller_that_pulls(state, unknown):
        said.append(Say("remark", pulled))
    return state, Reply(tuple(said), True, verdict)


def _typed_with_minus(verdict: Verdict) -> bool:
    """Whether the student wrote a bare negative number, so that the arrow still has to be read."""
    reading = verdict.reading
    if not isinstance(reading, ValueReading) or reading.letter or reading.sense:
        return False
    return reading.value < 0
