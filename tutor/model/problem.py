"""What is one problem: a truss, its loads, its units and the words around it?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property
from pathlib import Path
from typing import Literal

from tutor.model.direction import Direction
from tutor.model.naming import names_of
from tutor.model.parts import Joint, Load, Member, Reaction, Support
from tutor.model.rules import Rules, Tolerance
from tutor.model.spread import Spread, brought_to_joints
from tutor.model.support import reactions_of
from tutor.model.vary import Vary
from tutor.notation import Names

Soundness = Literal["determinate", "unstable", "indeterminate"]
"""What a truss is: held with as many unknowns as equations; able to move; held by more than that."""


@dataclass(frozen=True)
class Problem:
    """One problem: a plane truss, its loads and units, and the words around it.

    `rules` are those of the set it was read with; `vary` is what may differ from student to student,
    None where every student has these numbers; `truss` is what the student has to find out about it
    first, None where that is not asked.

    `loads` are all loads at joints: those that were given, and behind them those that follow from
    `spreads`, made anew whenever a problem is made, so that they always agree.
    """

    title: str
    force: str
    length: str
    joints: tuple[Joint, ...]
    members: tuple[Member, ...]
    supports: tuple[Support, ...]
    loads: tuple[Load, ...]
    story: str = ""
    topics: tuple[str, ...] = ()
    level: int | None = None
    id: str = ""
    given: tuple[str, ...] = ()
    truss: Soundness | None = None
    tolerance: Tolerance = field(default_factory=Tolerance)
    vary: Vary | None = None
    source: Path | None = field(default=None, compare=False)
    rules: Rules = field(default_factory=Rules, compare=False)
    spreads: tuple[Spread, ...] = ()

    def __post_init__(self) -> None:
        if self.spreads or any(load.spread for load in self.loads):
            following = brought_to_joints(self.spreads, self.joint, self.member)
            object.__setattr__(self, "loads", (*self.given_loads, *following))

    @cached_property
    def given_loads(self) -> tuple[Load, ...]:
        """The loads that were given at joints, without those that follow from what is spread."""
        return tuple(load for load in self.loads if not load.spread)

    @cached_property
    def brought(self) -> Problem:
        """The problem as it is once all that is spread is brought to the joints."""
        if not self.spreads:
            return self
        loads = tuple(replace(load, spread=False) for load in self.loads)
        return replace(self, loads=loads, spreads=())

    @cached_property
    def joint(self) -> Mapping[str, Joint]:
        """Joints by name."""
        return {joint.name: joint for joint in self.joints}

    @cached_property
    def member(self) -> Mapping[str, Member]:
        """Members by their one name."""
        return {member.name: member for member in self.members}

    @cached_property
    def meeting(self) -> Mapping[str, tuple[Member, ...]]:
        """The members that meet at each joint, in the order of the file."""
        at: dict[str, list[Member]] = {joint.name: [] for joint in self.joints}
        for member in self.members:
            at[member.start].append(member)
            at[member.end].append(member)
        return {name: tuple(members) for name, members in at.items()}

    @cached_property
    def pulls(self) -> Mapping[tuple[str, str], Direction]:
        """Which way each member pulls on each of its joints, by (member, joint)."""
        return {
            (member.name, joint): self._pull(member, joint)
            for member in self.members
            for joint in (member.start, member.end)
        }

    def _pull(self, member: Member, joint: str) -> Direction:
        here, there = self.joint[joint], self.joint[member.other(joint)]
        return Direction.along(there.x.minus(here.x), there.y.minus(here.y))

    def between(self, one: str, other: str) -> Member | None:
        """The member between two joints, in either order, or None."""
        for member in self.meeting.get(one, ()):
            if member.other(one) == other:
                return member
        return None

    @cached_property
    def reactions(self) -> tuple[Reaction, ...]:
        """The unknown reactions of all supports, in the order of the file."""
        return tuple(r for s in self.supports for r in reactions_of(s, self.joint[s.joint]))

    @cached_property
    def reaction(self) -> Mapping[str, Reaction]:
        """Reactions by name."""
        return {reaction.name: reaction for reaction in self.reactions}

    @cached_property
    def unknowns(self) -> tuple[str, ...]:
        """The names of all unknowns: reactions first, then members."""
        return tuple(r.name for r in self.reactions) + tuple(m.name for m in self.members)

    @cached_property
    def names(self) -> Names:
        """The table of names that what is typed about this problem is read with."""
        return names_of(self)
