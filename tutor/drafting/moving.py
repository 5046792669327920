"""How is a part of the truss moved, taken a second time, or mirrored?

move D 7 1      move D by 1 0      move D 2 right      move load C to D
copy B C D by 4 0       copy all by 12 0       copy load C to D E
mirror          the other half, about the upright line through the last joint on the right
mirror about C  or about x = 6
flip            the whole truss, left for right
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from tutor.drafting.cursor import Cursor, way_of
from tutor.drafting.entries import Drop, Entry, Hold, Join, Kind, Lay, Push, Put, applied, fold
from tutor.drafting.measured import Measured, is_measured
from tutor.drafting.names import free_name, joint_meant, member_meant, needed
from tutor.drafting.words import Bad, Word, from_fraction, pair_in, plus
from tutor.model import Load, Problem, Spread, Support
from tutor.model.parts import PushDirection
from tutor.notation import Exact

Place = tuple[Exact, Exact]
ZERO = Exact.of(0)
ALL = ("all", "everything", "truss")
SMALL = ("the", "joint", "joints", "member", "members", "of", "at")
MOVES = "write move D 7 1 for a new place, or move D by 1 0 for how far"
COPIES = "write copy B C D by 4 0, or copy load C to D"
TURNED: dict[PushDirection, PushDirection] = {
    "left": "right",
    "right": "left",
    "up": "up",
    "down": "down",
}
SAME_PLACE = 1e-9


def move(problem: Problem, words: Sequence[Word]) -> list[Entry]:
    """The entries of a statement that begins with `move`; Bad."""
    if (carried := _carried(problem, words)) is not None:
        kind, source, targets = carried
        if len(targets) > 1:
            raise Bad(words[0].text, f"one {kind} goes to one joint", COPIES, words[-1])
        return [*_given(problem, kind, source, targets[0], words[0]), Drop(kind, source)]
    if is_measured(problem, words[1:]):
        return Measured(problem, list(words[1:])).read()
    part = _Part(problem, words, MOVES).read()
    if part.place is not None:
        if len(part.names) > 1:
            raise Bad(words[0].text, "one place cannot take several joints", MOVES, words[0])
        return [Put(part.names[0], *part.place)]
    return [Put(name, *part.shifted(problem, name, words[0])) for name in part.names]


def copy(problem: Problem, words: Sequence[Word]) -> list[Entry]:
    """The entries of a statement that begins with `copy`: joints with the members between them."""
    if (carried := _carried(problem, words)) is not None:
        kind, source, targets = carried
        return [e for name in targets for e in _given(problem, kind, source, name, words[0])]
    part = _Part(problem, words, COPIES).read()
    if part.place is not None and len(part.names) > 1:
        raise Bad(words[0].text, "one place cannot take several joints", COPIES, words[0])
    places = {name: part.place or part.shifted(problem, name, words[0]) for name in part.names}
    return _again(problem, places)


def mirror(problem: Problem, words: Sequence[Word]) -> list[Entry]:
    """The other half of a truss: joints, members and loads; supports stay where they are."""
    if not problem.joints:
        raise Bad(words[0].text, "there is nothing to mirror yet", "put joints first", words[0])
    axis = _axis(problem, words)
    places = {j.name: (_across(axis, j.x, words[0]), j.y) for j in problem.joints}
    entries = _again(problem, places)
    names = {name: name for name in places} | _twins(problem, entries, places)
    for load in problem.given_loads:
        twin = names[load.joint]
        if twin != load.joint:
            entries.append(Push(_turned(load, twin)))
    return [*entries, *_laid_on_twins(problem, fold(entries, problem), names)]


def _laid_on_twins(problem: Problem, grown: Problem, names: Mapping[str, str]) -> Iterator[Lay]:
    """What lies on members, on their twins too."""
    for spread in problem.spreads:
        ends = [problem.member[name] for name in spread.on if name in problem.member]
        twins = [grown.between(names[m.start], names[m.end]) for m in ends]
        on = tuple(t.name for t in twins if t is not None and t.name not in spread.on)
        if on:
            yield Lay(replace(_over(spread), on=on))


def flip(problem: Problem, words: Sequence[Word]) -> list[Entry]:
    """The whole truss with its supports and loads, left for right."""
    if len(words) > 1:
        raise Bad(words[1].text, "flip turns the whole truss over", "write flip alone", words[1])
    if not problem.joints:
        raise Bad(words[0].text, "there is nothing to flip yet", "put joints first", words[0])
    xs = sorted((joint.x for joint in problem.joints), key=lambda x: x.value)
    both = plus(xs[0], xs[-1], words[0])
    entries: list[Entry] = [Put(j.name, plus(both, j.x, words[0], -1), j.y) for j in problem.joints]
    for support in problem.supports:
        angle = None if support.angle is None else _half_turn(support.angle, words[0])
        anchor = support.anchor
        if anchor is not None:
            anchor = (plus(both, anchor[0], words[0], -1), anchor[1])
        entries.append(Hold(Support(support.joint, support.kind, angle=angle, anchor=anchor)))
    entries += [Drop("load", load.joint) for load in problem.given_loads]
    entries += [Push(_turned(load, load.joint)) for load in problem.given_loads]
    entries += [Drop("spread", name) for spread in problem.spreads for name in spread.on]
    return [*entries, *(Lay(_over(spread)) for spread in problem.spreads)]


@dataclass(frozen=True)
class _Moved:
    """Which joints, and where to or how far: one of `place` and `by`."""

    names: tuple[str, ...]
    place: Place | None
    by: Place

    def shifted(self, problem: Problem, name: str, word: Word) -> Place:
        joint = problem.joint[name]
        return plus(joint.x, self.by[0], word), plus(joint.y, self.by[1], word)


class _Part(Cursor):
    """Reads which joints move, and where to or how far."""

    def __init__(self, problem: Problem, words: Sequence[Word], cure: str) -> None:
        super().__init__(problem, list(words))
        self.place = 1
        self.cure = cure

    def read(self) -> _Moved:
        names = self._joints()
        if not names:
            raise Bad(self.words[0].text, "no joint is named", self.cure, self.words[0])
        by = not self.next_is("to") and self.next_is("by")
        if self.done:
            raise Bad(self.words[-1].text, "where to is missing", self.cure, self.words[-1])
        ways = self._ways()
        if ways is not None:
            moved = _Moved(names, None, ways)
        else:
            x, y = self._pair(names[0])
            moved = _Moved(names, None, (x, y)) if by else _Moved(names, (x, y), (ZERO, ZERO))
        if not self.done:
            left = self.words[self.place]
            raise Bad(left.text, "this stands behind the place", self.cure, left)
        return moved

    def _joints(self) -> tuple[str, ...]:
        names: dict[str, None] = {}
        while (word := self.peek()) is not None and not word.is_number:
            if word.lower in ("to", "by"):
                break
            self.place += 1
            pair = member_meant(self.problem, word)
            if word.lower in ALL and joint_meant(self.problem, word.text) is None:
                names |= dict.fromkeys(self.problem.joint)
            elif pair is not None:
                names |= dict.fromkeys(pair)
            elif word.lower not in SMALL or joint_meant(self.problem, word.text) is not None:
                names[needed(self.problem, word)] = None
        return tuple(names)

    def _ways(self) -> Place | None:
        """How far, said by ways: 2 right 1 up."""
        after = self.peek(1)
        if after is None or way_of(after) is None:
            return None
        x, y = ZERO, ZERO
        while self.number_at(0):
            word = self.take(self.words[-1], self.cure)
            size = self.distance(word)
            way = way_of(self.take(word, "up, down, left or right behind it"))
            sign = -1 if way in ("left", "down") else 1
            if way in ("left", "right"):
                x = plus(x, size, word, sign)
            else:
                y = plus(y, size, word, sign)
        return x, y

    def _pair(self, name: str) -> Place:
        word = self.take(self.words[-1], "x and y")
        both = pair_in(word)
        if both is not None and not self.number_at(0):
            x, y = (self.length(part, name) for part in both)
            return x, y
        first = self.length(word, name)
        return first, self.length(self.take(word, f"y too, like {word.text} 0"), name)


def _carried(problem: Problem, words: Sequence[Word]) -> tuple[Kind, str, list[str]] | None:
    """`load C to D`: what is carried from which joint to which; None where it is no such line."""
    kinds: dict[str, Kind] = {"load": "load", "loads": "load", "support": "support"}
    rest = [word for word in words[1:] if word.lower not in SMALL[:2]]
    if not rest or rest[0].lower not in kinds or joint_meant(problem, rest[0].text) is not None:
        return None
    named = [word for word in rest[1:] if word.lower not in (*SMALL, "to", "from")]
    if len(named) < 2:
        cure = "write move load C to D"
        raise Bad(words[0].text, "two joints are wanted, from and to", cure, words[0])
    source, *targets = (needed(problem, word) for word in named)
    return kinds[rest[0].lower], source, targets


def _given(problem: Problem, kind: Kind, source: str, target: str, word: Word) -> list[Entry]:
    """The loads or the support of one joint at another."""
    if kind == "support":
        support = next((s for s in problem.supports if s.joint == source), None)
        if support is None:
            raise Bad(word.text, f"there is no support at {source}", COPIES, word)
        held = Support(target, support.kind, angle=support.angle, anchor=support.anchor)
        return [Hold(held)]
    loads = [load for load in problem.given_loads if load.joint == source]
    if not loads:
        raise Bad(word.text, f"there is no load at {source}", "name a joint that has one", word)
    return [Push(Load(target, load.pushes, load.size, load.angle)) for load in loads]


def _again(problem: Problem, places: dict[str, Place]) -> list[Entry]:
    """The joints a second time at these places, with the members between them.

    Where a joint is there already, it is taken; else it gets the next free name.
    """
    entries: list[Entry] = []
    grown = problem
    names: dict[str, str] = {}
    for name, at in places.items():
        there = _joint_at(grown, at)
        if there is None:
            there = free_name(grown)
            entries.append(Put(there, *at))
            grown = applied(grown, entries[-1])
        names[name] = there
    for member in problem.members:
        if member.start in names and member.end in names:
            start, end = names[member.start], names[member.end]
            if start != end and grown.between(start, end) is None:
                entries.append(Join(start, end))
                grown = applied(grown, entries[-1])
    return entries


def _joint_at(problem: Problem, at: Place) -> str | None:
    x, y = at[0].value, at[1].value
    for joint in problem.joints:
        if abs(joint.at[0] - x) < SAME_PLACE and abs(joint.at[1] - y) < SAME_PLACE:
            return joint.name
    return None


def _twins(problem: Problem, entries: Sequence[Entry], places: dict[str, Place]) -> dict[str, str]:
    """For each joint the one at its mirrored place."""
    grown = fold(entries, problem)
    found = {name: _joint_at(grown, at) for name, at in places.items()}
    return {name: twin for name, twin in found.items() if twin is not None}


def _axis(problem: Problem, words: Sequence[Word]) -> Exact:
    """The x of the upright line that is mirrored about: a joint's, a number, or the last joint's."""
    rest = [w for w in words[1:] if w.lower not in (*SMALL, "about", "on", "line", "x", "in")]
    if not rest:
        return max((joint.x for joint in problem.joints), key=lambda x: x.value)
    if len(rest) > 1:
        cure = "write mirror about C, or mirror about x = 6"
        raise Bad(rest[1].text, "one vertical line is wanted", cure, rest[1])
    if rest[0].is_number:
        return Cursor(problem, list(words)).length(rest[0], "the line")
    return problem.joint[needed(problem, rest[0])].x


def _across(axis: Exact, x: Exact, word: Word) -> Exact:
    return plus(plus(axis, axis, word), x, word, -1)


def _half_turn(angle: Exact, word: Word) -> Exact:
    """The direction on the other side of the upright: 180 degrees less the angle."""
    turned = plus(Exact.of(180), angle, word, -1)
    if turned.value > 360 and turned.fraction is not None:
        return from_fraction(turned.fraction - Fraction(360))
    return turned


def _over(spread: Spread) -> Spread:
    """A load on members, left for right."""
    pushes = tuple((TURNED[way], size) for way, size in spread.pushes)
    return replace(spread, pushes=pushes)


def _turned(load: Load, joint: str) -> Load:
    pushes = tuple((TURNED[way], size) for way, size in load.pushes)
    if load.angle is None:
        return Load(joint, pushes)
    word = Word(load.angle.text, 0, 0)
    return Load(joint, pushes, load.size, _half_turn(load.angle, word))
