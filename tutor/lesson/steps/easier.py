"""Was there an easier line than this right one? One remark that teaches, and none too often.

A remark speaks of the line as it was typed, before it stood: which of its unknowns could have been
left out, or seen to be zero. It names no value and no line.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace

from tutor.judge import Along, Equation, Fx, Fy, M
from tutor.judge.about import equation_of
from tutor.judge.headings import slants
from tutor.judge.independent import adds_something
from tutor.lesson.reply import Reply, Say
from tutor.lesson.state import State
from tutor.statics import shown_zero

MOST_TAUGHT = 2
"""How often each kind of remark is made in one lesson."""

SEEN = "inspection"
"""The word of one who saw the force without a sum, and is not told that it can be seen."""

COUNTS = ("no unknown", "one unknown", "two unknowns", "three unknowns")


def teach(before: State, about: Equation, after: State, reply: Reply) -> tuple[State, Reply]:
    """The reply on a right line with at most one remark: its own, else one that teaches.

    `before` is where the student was when the line was typed, `after` where it led.
    """
    if about.part or any(say.tone == "remark" for say in reply.said):
        return after, reply
    for kind, find in KINDS:
        if before.taught.count(kind) >= MOST_TAUGHT:
            continue
        if kind == "zero-force" and SEEN in after.lines[-1].text.lower():
            continue
        if (text := find(before, about)) is not None:
            said = Say("remark", text, teaches=True)
            taught = replace(after, taught=(*after.taught, kind))
            return taught, replace(reply, said=(*reply.said, said))
    return after, reply


def _zero(state: State, about: Equation) -> str | None:
    """Where a member in the line can be seen to carry no force, at this very joint."""
    known = {r.unknown for r in state.results if r.value == 0.0}
    for name in _open(state, about):
        if name in state.problem.member:
            for seen in shown_zero(state.problem, name, known):
                if seen.joint == about.joint:
                    return (
                        "One member in this line carries no force, and that can be seen without a "
                        f"line: which of the forces on joint {about.joint} is alone in its direction?"
                    )
    return None


def _direction(state: State, about: Equation) -> str | None:
    """Where another direction would have left one of two unknowns out."""
    joint = about.joint
    here = set(_open(state, about))
    if joint is None or len(here) < 2 or state.lines_of(joint):
        return None
    left = ((other, set(_open(state, other))) for other in _directions(state, joint))
    shorter = [other for other, names in left if len(names) == 1 and names < here]
    if not shorter:
        return None
    if isinstance(shorter[0], Along):
        return (
            f"This line holds {_count(state, about)}. In a sum perpendicular to one of these members "
            "that one drops out, and the other follows at once."
        )
    return (
        f"This line holds {_count(state, about)}. One of the two axes leaves one of them out: the "
        "sum along it gives the other at once."
    )


def _point(state: State, about: Equation) -> str | None:
    """Where moments about another joint would have held fewer unknowns."""
    if not isinstance(about, M) or state.about == about:
        return None
    here = len(_open(state, about))
    points = [M(joint.name) for joint in state.problem.joints]
    best = min((n for n in (len(_open(state, p)) for p in points) if n), default=here)
    if best >= here:
        return None
    return (
        f"This line holds {_count(state, about)}. About another point it would hold "
        f"{COUNTS[best]}: look where lines of action of the others meet."
    )


def _directions(state: State, joint: str) -> Iterator[Equation]:
    """Both axes, then the directions perpendicular to a member."""
    yield Fx(joint)
    yield Fy(joint)
    for degrees, (_, along) in slants(state.problem, joint).items():
        if not along:
            yield Along(degrees, joint)


def _open(state: State, about: Equation) -> list[str]:
    """The unknowns of an equation that have no value yet; none where it adds nothing."""
    standing = [line.about for line in state.lines_of(about.joint) if line.adds]
    if not adds_something(state.problem, about, standing):
        return []
    linear = equation_of(state.problem, about).linear
    return [name for name in linear if name is not None and name not in state.result]


def _count(state: State, about: Equation) -> str:
    count = len(_open(state, about))
    return COUNTS[count] if count < len(COUNTS) else f"{count} unknowns"


KINDS: tuple[tuple[str, Callable[[State, Equation], str | None]], ...] = (
    ("zero-force", _zero),
    ("direction", _direction),
    ("point", _point),
)
"""The kinds of remark, the most telling first."""
