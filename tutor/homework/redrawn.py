"""What stands on a paper when its truss was corrected: a joint moved or renamed, a support changed?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from tutor.homework.paper import Paper
from tutor.judge import Along, Equation, Fx, Fy, M
from tutor.judge.headings import headed
from tutor.model import Problem
from tutor.notation import Line, Unreadable, read_line
from tutor.notation.elements.tree import Name, Share, within
from tutor.text import listed


@dataclass(frozen=True)
class Redrawn:
    """The paper on the corrected truss, and a sentence for each thing that is no longer of it."""

    paper: Paper
    told: tuple[str, ...] = ()


@dataclass(frozen=True)
class _Names:
    """What each joint and unknown of the truss as it was is called now; no entry where it is gone."""

    joints: Mapping[str, str]
    unknowns: Mapping[str, str]


def redrawn(paper: Paper, before: Problem, after: Problem, joints: Mapping[str, str]) -> Redrawn:
    """The paper of `before` on `after`; `joints` says what a renamed joint is called now.

    A value stays with its member or reaction, a line with its equation. What the corrected truss
    does not have is taken off, and told.
    """
    now = {name: joints.get(name, name) for name in before.joint}
    names = _Names({old: new for old, new in now.items() if new in after.joint}, {})
    names = replace(names, unknowns=_unknowns(before, after, names.joints))
    gone = [name for name in paper.values if name not in names.unknowns]
    told = [f"{name} = {paper.values[name]} is off the paper: the truss has no {name} now."
            for name in gone]  # fmt: skip
    told += _stays(paper, before, after, names)
    lines: list[tuple[Equation, str]] = []
    for number, (about, text) in enumerate(paper.lines, start=1):
        meant = _about(about, names.joints)
        if meant is None:
            told.append(f"Line {number} is off the paper: it is of a joint that is gone.")
        else:
            lines.append((meant, _text(before, after, names, meant, text)))
    place = None if paper.place is None else names.joints.get(paper.place)
    kept = Paper(
        {names.unknowns[n]: t for n, t in paper.values.items() if n in names.unknowns},
        tuple(lines),
        {names.unknowns[n]: s for n, s in paper.senses.items() if n in names.unknowns},
        tuple(names.joints.get(n, n) for n in paper.order if n in names.joints or n == "whole"),
        place,
        {names.unknowns[n]: names.joints[at] for n, at in paper.found_at.items()
         if n in names.unknowns and at in names.joints},
        paper.letters,
    )  # fmt: skip
    return Redrawn(kept, tuple(told))


def _stays(paper: Paper, before: Problem, after: Problem, names: _Names) -> list[str]:
    """What stays on the paper of each support that is another now; the rest of it is told as gone."""
    told = []
    for joint, now in names.joints.items():
        was = {replace(support, joint=now) for support in before.supports if support.joint == joint}
        if was == {support for support in after.supports if support.joint == now}:
            continue
        of_joint = {r.name for r in before.reactions if r.joint == joint}
        kept = [names.unknowns[n] for n in paper.values if n in of_joint and n in names.unknowns]
        if kept:
            verb = "stays" if len(kept) == 1 else "stay"
            told.append(
                f"The support at {now} was changed: {listed(kept)} {verb} on the paper; "
                "see whether the equations still give what is written there."
            )
    return told


def _unknowns(before: Problem, after: Problem, joints: Mapping[str, str]) -> dict[str, str]:
    found: dict[str, str] = {}
    for member in before.members:
        same = after.between(joints.get(member.start, ""), joints.get(member.end, ""))
        if same is not None:
            found[member.name] = same.name
    for reaction in before.reactions:
        at = joints.get(reaction.joint), reaction.axis
        there = (r.name for r in after.reactions if (r.joint, r.axis) == at)
        if (name := next(there, None)) is not None:
            found[reaction.name] = name
    return found


def _about(about: Equation, joints: Mapping[str, str]) -> Equation | None:
    """The same equation by the new names; None where one of its joints is gone."""
    named = [name for name in (about.joint, *about.part) if name is not None]
    if isinstance(about, M) and isinstance(about.at, str):
        named.append(about.at)
    if any(name not in joints for name in named):
        return None
    moved = replace(
        about,
        joint=None if about.joint is None else joints[about.joint],
        part=tuple(joints[name] for name in about.part),
    )
    if isinstance(moved, M) and isinstance(moved.at, str):
        return replace(moved, at=joints[moved.at])
    return moved


def _text(before: Problem, after: Problem, names: _Names, about: Equation, text: str) -> str:
    """The line with its forces by their new names; as it was typed where none has another name."""
    if all(old == new for old, new in (*names.unknowns.items(), *names.joints.items())):
        return text
    line = read_line(text, before.names)
    if isinstance(line, Unreadable):
        return text
    start = line.steps[0].span.start
    heading = _heading(about)
    body = text[start:]
    for name in sorted(_named(line), key=lambda each: each.span.start, reverse=True):
        new = names.unknowns.get(name.name, name.name)
        if new != name.name and name.span.start >= start:
            from_, to = name.span.start - start, name.span.end - start
            body = body[:from_] + _symbol(after, new, name.share) + body[to:]
    typed = f"{heading}: {body}" if heading and line.label else text[:start] + body
    return typed if headed(after, read_line(typed, after.names), about.joint) == about else text


def _named(line: Line) -> set[Name]:
    """The forces named in it, each where it stands."""
    sides = (side for step in line.steps for side in step.sides)
    return {node for side in sides for node in within(side.node) if isinstance(node, Name)}


def _symbol(problem: Problem, name: str, share: Share | None) -> str:
    if share is not None:
        return f"{name}_{share.axis}"
    if name in problem.reaction:
        return name
    return f"F_{name}" if len(name) == 2 else f"F_{{{name}}}"


def _heading(about: Equation) -> str:
    """A heading that names the equation by its joint; "" where the one typed names none."""
    at = "" if about.joint is None else f" at {about.joint}"
    match about:
        case Fx():
            return f"ΣFx{at}"
        case Fy():
            return f"ΣFy{at}"
        case M(at=str(point)):
            return f"ΣM_{point}" if len(point) == 1 else f"ΣM_{{{point}}}"
        case Along() | M():
            return ""
