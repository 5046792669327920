"""Up to where is what was typed right, when its end is not?"""

from __future__ import annotations

from tutor.judge.worked import value_given
from tutor.notation import Line, Step


def before(line: Line, step: Step) -> str:
    """What was typed before a statement."""
    end = line.steps[max(0, line.steps.index(step) - 1)].span.end
    return line.text[:end] if end <= step.span.start else ""


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
