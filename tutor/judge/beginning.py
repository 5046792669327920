"""Up to where is what was typed right, when its end is not?"""

from __future__ import annotations

from tutor.judge.verdict import Verdict
from tutor.judge.worked import value_given
from tutor.notation import Line, Step


def before(line: Line, step: Step) -> str:
    """What was typed before a statement."""
    end = line.steps[max(0, line.steps.index(step) - 1)].span.end
    return line.text[:end] if end <= step.span.start else ""


def as_far_as_right(step: Step, broken: Verdict) -> str:
    """What was typed of a chain before the first number that does not follow."""
    at = broken.mistakes[0].span
    ended = [side for side in step.sides if at is not None and side.span.end <= at.start]
    return step.text[: ended[-1].span.end] if len(ended) > 1 else ""


def without_end(step: Step) -> str:
    """What was typed before the number that a chain ends in, or before the T or C behind it."""
    last = step.sides[-2] if len(step.sides) > 2 else step.sides[-1]
    return step.text[: last.node.span.end]


def up_to_value(line: Line, step: Step) -> str:
    """What was typed before the value that a statement ends in, where that is not all that it says."""
    last = step.sides[-1]
    if len(step.sides) == 2 and value_given(step) and not (last.letter or last.sense):
        return before(line, step)
    return without_end(step) if len(step.sides) > 1 else ""
