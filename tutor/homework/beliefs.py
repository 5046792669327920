"""Which one belief, held from the first line to the last, explains a whole page?

Each belief of the table is put in the place of the truth: the truss is walked through again as
somebody would who holds it, and every entry is held against what comes out. The costs say how often
the belief is met and how far-fetched it is; they are our own judgement, no source.
"""

from __future__ import annotations

import math
from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass
from itertools import pairwise

from tutor.homework import lenses
from tutor.homework.belief_words import WORDS
from tutor.homework.chain import Found, follow
from tutor.homework.half_mended import Was, begun, supposed
from tutor.homework.lenses import Lens, Sight, through
from tutor.homework.sheet import WHOLE, Bodies, Sheet
from tutor.homework.spread_beliefs import of_spread
from tutor.homework.work import Entry
from tutor.model import Problem
from tutor.statics.body import load_name

A_HABIT, MET, RARE = 1.1, 1.6, 2.0
"""What a belief costs: a habit of first examples, one that is met, and one that is met seldom."""
COSTS: Mapping[str, tuple[str, float]] = {
    "components": ("component", MET),  # the commonest belief: cosine is the horizontal one
    "one-slope": ("slope", RARE),  # the first slope worked out is used for every member
    "familiar-slope": ("slope", RARE),  # 3-4-5, 45, 30 or 60 degrees, where the truss has others
    "radians": ("angle-mode", MET),  # a calculator is set wrongly for the whole page or not at all
    "tangents": ("tangent", RARE),  # rise over run taken for sine or cosine
    "whole-forces": ("whole-force", RARE),  # no member is ever taken into components
    "stopped-short": ("component", RARE),  # the component found is written down as the force
    "half-each": ("symmetry", A_HABIT),  # half the load to each support, a habit of first examples
    "upright-roller": ("inclined-support", MET),  # rollers are mostly drawn on a level floor
    "level-roller": ("inclined-support", RARE),  # the same, against a wall
    "roller-component": ("component", RARE),  # an inclined roller with its components exchanged
    "no-pin": ("missing", MET),  # a pin taken as a roller: its horizontal part is nowhere
    "long-arms": ("arm", MET),  # the distance along the members for every arm
    "short-arms": ("arm", RARE),  # panels counted one short, or one too many
    "loads-lost": ("missing", RARE),  # loads count for the reactions and for no joint
    "reactions-lost": ("missing", RARE),  # reactions are found and put on no joint
    "loads-up": ("sign", RARE),  # loads drawn the other way at every joint
    "reactions-turned": ("sign", RARE),  # reactions drawn the other way at every joint
    "load-upright": ("whole-force", RARE),  # an inclined load as if it acted straight down
    "spread-end": ("spread-end", RARE),  # all of a member's load at the end that one looks at
    "spread-total": ("spread-length", MET),  # so much a metre is put down as if it were all
    "spread-measure": ("spread-slope", RARE),  # along the slope for along the span
    "spread-left-out": ("spread-neighbour", RARE),  # one of the members loaded is overlooked
    "load-components": ("component", RARE),  # an inclined load with its components exchanged
}
AGAINST = 0.6
"""What it costs that a right entry is not what the belief makes of it."""
SUPPOSED = 0.3
"""What it costs that a joint is supposed to have been mended since."""
WRITTEN_DOWN = 0.8
"""What a belief costs less where the force that it takes to be none is written down as none."""
LEAST = 2
"""So many wrong entries at least: a lone one shows no belief, unless it is written down as none."""
ROUNDINGS = (12, 2, 1, 0)


@dataclass(frozen=True)
class Held:
    """A belief that explains every wrong entry: which, what it costs, and where each comes from.

    `closing` are the joints with all their entries that close for somebody who holds it; `sole` is
    whether no other mistake would leave the same numbers.
    """

    name: str
    force: str | None
    cost: float
    follows: Found
    at_whole: bool
    closing: frozenset[str] = frozenset()
    sole: bool = True

    @property
    def code(self) -> str:
        return COSTS[self.name][0]

    def words(self, through: str) -> tuple[str, str, str]:
        """Its three hints, look, reason and place; where it runs through is put in as `through` says."""
        look, reason, place = WORDS[self.name]
        return look.format(through=through), reason, place.format(force=self.force)


def held(
    problem: Problem,
    bodies: Bodies,
    entries: Mapping[str, Entry],
    wrong: Collection[str],
    most: float = math.inf,
) -> list[Held]:
    """Every belief that explains all of the `wrong` entries and costs `most`, cheapest first, each once."""
    found: dict[tuple[str, str | None], Held] = {}
    for name, force, lens in _table(problem) if wrong else ():
        none = bool(lens.zero) and all(n in wrong and entries[n].value == 0.0 for n in lens.zero)
        usual = COSTS[name][1] - (WRITTEN_DOWN if none else 0.0)
        if usual > most or (len(wrong) < LEAST and not none):
            continue
        for seen in through(problem, bodies, lens):
            cost_and_walk = _walked(seen, entries, wrong, set(problem.reaction))
            if cost_and_walk is None:
                continue
            more, walk = cost_and_walk
            closing = frozenset(n for n in bodies if n != WHOLE and _closes(seen.body(n)))
            one = Held(name, force, usual + more, walk, lens.at_whole, closing, not lens.zero)
            if (name, force) not in found or one.cost < found[name, force].cost:
                found[name, force] = one
    return sorted(found.values(), key=lambda each: each.cost)


def held_before(
    problem: Problem, bodies: Bodies, entries: Mapping[str, Entry], wrong: Collection[str]
) -> list[tuple[Held, Was]]:
    """The beliefs that explain all of the `wrong` entries where the joints worked first were mended since.

    Each with the page as it then was, cheapest first.
    """
    if len(wrong) < LEAST or any(name in wrong for name in problem.reaction):
        return []
    chains = begun(problem, bodies, entries, wrong)
    mended = {name for chain in chains for _, names in chain for name in names}
    right = [n for n in problem.member if n in entries and n not in wrong and n not in mended]
    if sum(abs(entries[n].value) > entries[n].radius for n in right) > len(wrong):
        return []
    beside = {body for name in mended for body in bodies.at[name]}
    apart = [name for name in wrong if beside.isdisjoint(bodies.at[name])]
    found: list[tuple[Held, Was]] = []
    for name, force, lens in _table(problem) if chains else ():
        now = Sight(problem, bodies, lens)
        if lens.at_whole or not all(map(now.may_give, apart)):
            continue
        for was in (was for c in chains for was in supposed(now, c, bodies, entries, wrong)):
            seen = Sight(problem, was.bodies, lens)
            cost_and_walk = _walked(seen, was.entries, was.wrong, set(problem.reaction))
            if cost_and_walk is not None and cost_and_walk[0] == 0.0:
                one = Held(name, force, COSTS[name][1] + SUPPOSED, cost_and_walk[1], False)
                found.append((one, was))
    return sorted(found, key=lambda each: each[0].cost)


def _closes(sheet: Sheet) -> bool:
    return not sheet.missing and not sheet.fails


def _walked(
    seen: Sight,
    entries: Mapping[str, Entry],
    wrong: Collection[str],
    reactions: set[str],
) -> tuple[float, Found] | None:
    """What it costs that these bodies give the entries, and how; None where they do not."""
    lens = seen.lens
    known = {n for n in lens.zero if n not in entries or abs(entries[n].value) <= entries[n].radius}
    if len(known) < len(lens.zero):
        return None
    if not all(map(seen.may_give, wrong)):
        return None
    if not seen.balances:
        return None
    bodies = seen.bodies
    if not lens.at_whole or lens.zero:
        known |= {n for n in reactions if n in entries and n not in wrong}
    start = set(known)
    walk = follow(bodies, entries, known, partly=True)
    if any(name not in walk and name not in start for name in wrong):
        return None
    against = [n for n in entries if n not in walk and n not in start]
    if 4 * len(against) > len(entries):
        return None
    return AGAINST * len(against), walk


def _table(problem: Problem) -> Iterator[tuple[str, str | None, Lens]]:
    """Every belief that can be held of this truss: its name, the force it is about, how it looks."""
    yield from _of_members(problem)
    yield from _of_supports(problem)
    yield from _of_loads(problem)
    yield from of_spread(problem)


def _of_members(problem: Problem) -> Iterator[tuple[str, str | None, Lens]]:
    slopes = _slopes(problem)
    if not slopes:
        return
    see = lenses.members
    yield "components", None, Lens(joint=see(lenses.swapped))
    for run, rise in slopes:
        yield "one-slope", None, Lens(joint=see(lenses.sloped(run, rise)))
    for run, rise in lenses.FAMILIAR:
        if all(abs(run - other) > 0.01 for other, _ in slopes):
            yield "familiar-slope", None, Lens(joint=see(lenses.sloped(run, rise)))
    for places in ROUNDINGS:
        for upright in (False, True):
            yield "radians", None, Lens(joint=see(lenses.in_radians(places, upright)))
    yield "tangents", None, Lens(joint=see(lenses.by_tangent))
    yield "tangents", None, Lens(joint=see(lenses.by_cotangent))
    for level in (True, False):
        yield "stopped-short", None, Lens(joint=see(lenses.for_its_component(level)))
    for level, upright in ((True, True), (True, False), (False, True)):
        yield "whole-forces", None, Lens(joint=see(lenses.stands_whole(level, upright)))


def _slopes(problem: Problem) -> list[tuple[float, float]]:
    """Run and rise of the inclined members, each slope once."""
    found: dict[float, tuple[float, float]] = {}
    for pull in problem.pulls.values():
        run, rise = abs(pull.x), abs(pull.y)
        if lenses.inclined(run, rise):
            found.setdefault(round(run, 6), (run, rise))
    return list(found.values())[:12]


def _of_supports(problem: Problem) -> Iterator[tuple[str, str | None, Lens]]:
    for balance in _halves(problem):
        yield "half-each", None, Lens(balance=balance)
    for reaction in problem.reactions:
        if reaction.axis == "x" and f"{reaction.joint}_y" in problem.reaction:
            gone = lenses.only(reaction.name, (0.0, 0.0))
            yield "no-pin", reaction.name, Lens(joint=gone, whole=gone, zero=(reaction.name,))
    for reaction in problem.reactions:
        x, y = reaction.direction.x, reaction.direction.y
        if not lenses.inclined(x, y):
            continue
        see = lenses.only(reaction.name, (0.0, math.copysign(1.0, y)))
        for balance in _halves(problem, reaction.name):
            yield "half-each", None, Lens(whole=see, balance=balance)
        ways = (
            ("upright-roller", (0.0, math.copysign(1.0, y))),
            ("level-roller", (math.copysign(1.0, x), 0.0)),
            ("roller-component", (math.copysign(y, x), math.copysign(x, y))),
        )
        for name, way in ways:
            see = lenses.only(reaction.name, way)
            yield name, reaction.name, Lens(joint=see, whole=see)
    yield "reactions-lost", None, Lens(joint=lenses.turned("reaction", 0.0))
    yield "reactions-turned", None, Lens(joint=lenses.turned("reaction", -1.0))


def _halves(problem: Problem, upright: str | None = None) -> Iterator[Mapping[str, float]]:
    """That the two vertical reactions are alike, one taken as `upright` if need be; else the two horizontal."""
    for across in (False, True):
        pair = {
            r.name: (r.joint, r.direction.x if across else r.direction.y)
            for r in problem.reactions
            if abs(r.direction.x if across else r.direction.y) > lenses.LEVEL
        }
        if len(pair) == 2 and len({joint for joint, _ in pair.values()}) == 2:
            (one, (_, way)), (other, (_, back)) = pair.items()
            size = {
                n: math.copysign(1.0, w) if n == upright else w
                for n, w in ((one, way), (other, back))
            }
            yield {one: size[one], other: -size[other]}
            return


def _of_loads(problem: Problem) -> Iterator[tuple[str, str | None, Lens]]:
    yield "loads-lost", None, Lens(joint=lenses.turned("load", 0.0))
    yield "loads-up", None, Lens(joint=lenses.turned("load", -1.0))
    yield "long-arms", None, Lens(turning=lenses.as_long_as_it_is)
    for panel in _panels(problem):
        for kind in ("load", "reaction"):
            for by in (-panel, panel):
                yield "short-arms", None, Lens(turning=lenses.shifted(kind, by))
    for load in problem.loads:
        right, up = load.vector
        size = math.hypot(right, up)
        if load.size is None or not lenses.inclined(right, up):
            continue
        name = load_name(load.joint)
        ways = (
            ("load-upright", (0.0, math.copysign(1.0, up))),
            ("load-components", (math.copysign(up, right) / size, math.copysign(right, up) / size)),
        )
        for belief, way in ways:
            see = lenses.only(name, way)
            yield belief, name, Lens(joint=see, whole=see)


def _panels(problem: Problem) -> list[float]:
    """The distances from one joint to the next along the truss, each once, at most three."""
    xs = sorted({joint.at[0] for joint in problem.joints})
    steps = dict.fromkeys(round(b - a, 6) for a, b in pairwise(xs))
    return [step for step in steps if step][:3]
