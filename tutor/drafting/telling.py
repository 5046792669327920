"""What has just been entered, in a sentence, and what is there, a row each?"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from tutor.drafting.entries import (
    Drop,
    Entry,
    Hold,
    Join,
    Kind,
    Lay,
    Push,
    Put,
    Rename,
    Title,
    Units,
    Whole,
)
from tutor.model import Load, Problem, Spread, Support
from tutor.model.support import kind_of_support
from tutor.statics.along import intensity_words, spread_words
from tutor.statics.words import unit_in_words
from tutor.text import listed, so_many


@dataclass(frozen=True)
class PartRow:
    """One thing that is there: what it is, its name as it is dropped by, and its row of text."""

    kind: Kind
    name: str
    text: str


def told(before: Problem, after: Problem, entries: Sequence[Entry]) -> str:
    """What the entries did, shortly."""
    said = [
        _puts("Joint", after, [name for name in _put(entries) if name not in before.joint]),
        _puts("Moved joint", after, [n for n in _put(entries) if n in before.joint], "to"),
        _many(
            "Member",
            [m.name for m in after.members if m not in before.members] if _joins(entries) else [],
        ),
        _many("Already there:", _known(before, entries), plain=True),
    ]
    loaded = {entry.load.joint for entry in entries if isinstance(entry, Push)}
    for entry in entries:
        match entry:
            case Drop("load", name) if name in loaded:
                continue  # put there anew in the same step
            case Hold(support):
                said.append(_holds(before, support))
            case Push(load):
                loads = [held for held in after.given_loads if held.joint == load.joint]
                words = ", and ".join(load_text(held, after.force) for held in loads)
                said.append(f"{load.joint}: {words}." if words else "")
            case Lay(spread):
                said.append(f"{spread_words(after, spread)}.")
            case Drop("spread", name):
                said.append(f"Dropped the load on {name}.")
            case Units(force, length):
                said.append(
                    f"Forces are in {unit_in_words(force)}, lengths in {unit_in_words(length)}."
                )
            case Title(text):
                said.append(f"It is called {text}.")
            case Rename(old, new):
                said.append(f"Joint {old} is now {new}.")
            case Drop(kind, name):
                said.append(f"Dropped {kind} {name}.")
            case Whole(problem):
                said.append(told_of(problem))
    return " ".join(dict.fromkeys(filter(None, said)))


def _holds(before: Problem, support: Support) -> str:
    """A support, and the one whose place it takes."""
    held = next((s for s in before.supports if s.joint == support.joint), None)
    said = f"{support.joint}: {support_text(support)}"
    if held is None or held == support:
        return f"{said}."
    return f"{said}, in place of {support_text(held)}."


def _put(entries: Sequence[Entry]) -> list[str]:
    """The joints that are put somewhere, each once."""
    return list(dict.fromkeys(entry.name for entry in entries if isinstance(entry, Put)))


def _puts(what: str, after: Problem, names: Sequence[str], at: str = "at") -> str:
    """Joints that were put or moved; a lone one with its place."""
    joint = after.joint.get(names[0]) if len(names) == 1 else None
    if joint is None:
        return _many(what, names)
    return f"{what} {joint.name} {at} {joint.x.text}, {joint.y.text}."


def _joins(entries: Sequence[Entry]) -> bool:
    return any(isinstance(entry, Join) for entry in entries)


def _known(before: Problem, entries: Sequence[Entry]) -> list[str]:
    found = [before.between(e.start, e.end) for e in entries if isinstance(e, Join)]
    return [member.name for member in found if member is not None]


def _many(what: str, names: Sequence[str], *, plain: bool = False) -> str:
    if not names:
        return ""
    ending = "s" if len(names) > 1 and not plain else ""
    return f"{what}{ending} {listed(names, 12)}."


def told_of(problem: Problem) -> str:
    """A whole truss that was put in the place of what was there, shortly."""
    if not problem.joints:
        return "An empty sheet."
    return (
        f"{problem.title}: {so_many(len(problem.joints), 'joint')}, "
        f"{so_many(len(problem.members), 'member')}, in place of what was there."
    )


def rows(problem: Problem) -> tuple[PartRow, ...]:
    """Everything that is there: joints with their place, members, supports and loads."""
    return (
        *(PartRow("joint", j.name, f"{j.name}  {j.x.text}, {j.y.text}") for j in problem.joints),
        *(PartRow("member", m.name, m.name) for m in problem.members),
        *(PartRow("support", s.joint, f"{s.joint}  {support_text(s)}") for s in problem.supports),
        *(
            PartRow("load", load.joint, f"{load.joint}  {load_text(load, problem.force)}")
            for load in problem.given_loads
        ),
        *(
            PartRow("spread", name, f"{name}  {spread_text(problem, spread)}")
            for spread in problem.spreads
            for name in spread.on
        ),
    )


def support_text(support: Support) -> str:
    """A support in the words it is typed with."""
    if support.anchor is not None:
        return f"{support.kind} to {support.anchor[0].text}, {support.anchor[1].text}"
    if support.angle is not None:
        return f"{support.kind}, pushes at {support.angle.text}°"
    return kind_of_support(support).alone or support.kind


def spread_text(problem: Problem, spread: Spread) -> str:
    """A load on members without their names."""
    sizes = (intensity_words(problem, spread, way, size.value) for way, size in spread.pushes)
    return " and ".join(sizes)


def load_text(load: Load, unit: str) -> str:
    """A load in the words it is typed with."""
    if load.size is not None and load.angle is not None:
        return f"{load.size.text} {unit} at {load.angle.text}°"
    return " and ".join(f"{size.text} {unit} {way}" for way, size in load.pushes)
