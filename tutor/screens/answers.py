"""Which event is an answer? From what is asked and what was picked or typed to an event's data."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from tutor.figure.senses import drawn
from tutor.lesson import Ask, Reply, State
from tutor.lesson.hints import LEVELS
from tutor.screens.widgets.choices import OneOption
from tutor.screens.widgets.sense_picker import ArrowWay

TICKS: Mapping[str, str] = {
    "reasons": "chosen",
    "halves": "chosen",
    "support": "acts",
    "loose": "joints",
}
"""Under which name an event carries the options that were ticked."""
PLACE = LEVELS.index("place") + 1


@dataclass(frozen=True)
class ToBeDone:
    """One event to be done: its kind and its data."""

    kind: str
    data: dict[str, Any] = field(default_factory=dict)


def picked(ask: Ask, keys: Sequence[str]) -> ToBeDone:
    """The event that picking these options is."""
    first = keys[0] if keys else ""
    match ask.kind:
        case "reasons":
            return ToBeDone("reasons", {"chosen": list(keys)})
        case "halves":
            return ToBeDone("halves", {"chosen": list(keys)})
        case "support":
            return ToBeDone("support", {"joint": ask.subject, "acts": list(keys)})
        case "turning":
            return ToBeDone("turning", {"positive": first})
        case "soundness":
            return ToBeDone("soundness", {"is": first})
        case "loose":
            return ToBeDone("loose", {"joints": list(keys)})
        case "joint":
            return ToBeDone("joint", {"joint": first})
        case _:
            return ToBeDone("choose", {"about": first})


def ticked(kind: str, data: Mapping[str, Any]) -> frozenset[str] | None:
    """The options that an event hands in as ticked; None where it ticks none."""
    named = TICKS.get(kind)
    return None if named is None else frozenset(data[named])


def choices(ask: Ask) -> tuple[OneOption, ...]:
    """The options of what is asked, for a widget."""
    return tuple(OneOption(option.key, option.words, option.chosen) for option in ask.options)


def ways(state: State, ask: Ask) -> tuple[ArrowWay, ...]:
    """The ways in which the arrow asked about may be drawn."""
    reaction = state.problem.reaction[ask.subject or ""]
    return tuple(
        ArrowWay(option.key, option.words, *drawn(reaction, option.key)) for option in ask.options
    )


def is_taken(reply: Reply) -> bool:
    """Whether a typed line is done with, so that the next one can be typed."""
    return reply.accepted and (reply.verdict is None or reply.verdict.right)


def marked(state: State, reply: Reply, text: str) -> tuple[int, int] | None:
    """Which characters of the line to point at.

    What cannot be read at once; a mistake only when the hints at its place have come as far as to
    name the term, since the verdict itself says no more than what kind of thing is wrong.
    """
    verdict = reply.verdict
    if verdict is not None and verdict.unreadable is not None:
        start = verdict.unreadable.column - 1
        return start, start + verdict.unreadable.length
    last = state.tries[-1] if state.tries else None
    if last is None or last.text != text:
        return None
    given = state.hints.get(last.at)
    if given is None or given.level < PLACE:
        return None
    spans = [mistake.span for mistake in given.mistakes if mistake.span is not None]
    return (spans[0].start, spans[0].end) if spans else None
