"""In how many of the walks that lead through a truss could a story of its mistakes have come about?

Two joints may explain the same numbers: the slip was made at one, and the walk closed at the other.
Then the one is likelier that more walks leave so. A few walks are drawn, the same ones each time, the
next joint being any that is ready; that students go so is our own judgement, no source.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import replace
from random import Random

from tutor.homework.places import Story
from tutor.homework.reading import FilledIn
from tutor.homework.sheet import WHOLE, Bodies

MOST = 96
"""So many walks are drawn."""
FROM_JOINTS = 8
"""One walk in so many takes the whole truss last, where its joints will do."""
SELDOM, NEAR = 0.1, 1.3
"""What a story costs for each e-fold that it is rarer than the likeliest; stories that cost more do not take part."""
MOST_BODIES = 60
"""On a truss of more bodies no walks are drawn."""

Finds = tuple[str, ...]
Walk = Sequence[tuple[str, Finds]]
"""The bodies in order, each with the unknowns that it gives."""


def walks(bodies: Bodies) -> list[Walk]:
    """Some walks through a truss, with every unknown found in each; none where there is no such walk."""
    rng = Random(len(bodies))
    ground = _Ground(bodies)
    found = [ground.walk(rng, k % FROM_JOINTS > 0) for k in range(MOST)]
    return [walk for walk in found if walk]


class _Ground:
    """The bodies of a truss as walks cross them; sets of unknowns are the bits of a number."""

    def __init__(self, bodies: Bodies) -> None:
        self._bodies = bodies
        self._bit = {name: 1 << k for k, name in enumerate(bodies.at)}
        self._bits = {b: sum(self._bit[n] for n in s.part) for b, s in bodies.items()}
        self._gives: dict[int, Finds] = {}
        self._beside: dict[Finds, tuple[int, tuple[str, ...]]] = {}

    def walk(self, rng: Random, whole_first: bool) -> Walk:
        """One walk, with every unknown found in it; nothing where it comes to no end."""
        known = 0
        steps: list[tuple[str, Finds]] = []
        ready: dict[str, Finds] = {}
        beside: Iterable[str] = self._bodies
        while True:
            for name in beside:
                ready.pop(name, None)
                if finds := self._found(name, self._bits[name] & ~known):
                    ready[name] = finds
            if not ready:
                break
            joints = [name for name in ready if name != WHOLE]
            name = WHOLE if WHOLE in ready and (whole_first or not joints) else rng.choice(joints)
            steps.append((name, ready[name]))
            bits, beside = self._touched(ready[name])
            known |= bits
        return steps if known.bit_count() == len(self._bit) else ()

    def _found(self, body: str, left: int) -> Finds:
        """The unknowns of a body that are `left`, where it gives all of them; else nothing.

        Any body on which just these are left gives them.
        """
        finds = self._gives.get(left)
        if finds is None:
            sheet = self._bodies[body]
            finds = tuple(name for name in sheet.part if self._bit[name] & left)
            if len(finds) > sheet.size or len(sheet.solved_for(finds)) < len(finds):
                finds = ()
            self._gives[left] = finds
        return finds

    def _touched(self, finds: Finds) -> tuple[int, tuple[str, ...]]:
        """These unknowns as bits, and the bodies on which they act."""
        touched = self._beside.get(finds)
        if touched is None:
            at = dict.fromkeys(body for name in finds for body in self._bodies.at[name])
            touched = self._beside[finds] = sum(self._bit[name] for name in finds), tuple(at)
        return touched


def weighed(
    pairs: Sequence[tuple[Story, FilledIn]], bodies: Bodies
) -> list[tuple[Story, FilledIn]]:
    """The stories again, cheapest first, those at the head of them dearer the fewer walks leave them."""
    near = [pair for pair in pairs if pair[0].cost <= pairs[0][0].cost + NEAR]
    if len({story.first for story, _ in near}) < 2 or len(bodies) > MOST_BODIES:
        return list(pairs)
    among = walks(bodies)
    shares = [_likelihood(story, read, among) for story, read in near]
    told = [
        (replace(story, doubt=story.doubt + SELDOM * (max(shares) - share)), read)
        for (story, read), share in zip(near, shares, strict=True)
    ]
    return sorted((*told, *pairs[len(near) :]), key=lambda pair: pair[0].cost)


def _likelihood(story: Story, read: FilledIn, among: Sequence[Walk]) -> float:
    """The logarithm of the number of walks in which the story could have come about, never of none."""
    return math.log(sum(_comes_of(story, read, walk) for walk in among) + 0.5)


def _comes_of(story: Story, read: FilledIn, walk: Walk) -> bool:
    """Whether each turn finds its own wrong values in a walk, and all other steps of it are sound."""
    turns = {turn.place: set(turn.values) for turn in story.turns}
    wrong = set(read.wrong)
    met = 0
    for name, finds in walk:
        if name in turns:
            if turns[name] != wrong.intersection(finds):
                return False
            met += 1
            continue
        sheet = read.bodies[name]
        if sheet.fails and not all(
            any(sheet.holds(n) for n in sheet.equations(each, finds)) for each in finds
        ):
            return False
    return met == len(turns)
