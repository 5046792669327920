"""Can the units of a line agree?

Only what cannot possibly be consistent is reported: an unknown is a force, an explicit unit is what
it says, and a number without a unit may be a pure number, a force, a length, or a product of them.
"""

from __future__ import annotations

from functools import lru_cache
from itertools import product
from typing import NamedTuple

from tutor.notation.elements.tree import Binary, Call, Name, Negative, Node, Number, Unit
from tutor.notation.elements.units import unit_meaning
from tutor.notation.elements.unreadable import Broken
from tutor.notation.formulas.evaluate import Frame


class Dimension(NamedTuple):
    """Powers of force and length, and whether bare numbers multiply (`up`) or divide (`down`).

    `typed` says that a unit was typed in it.
    """

    force: float
    length: float
    up: bool = False
    down: bool = False
    typed: bool = False

    def agrees(self, other: Dimension) -> bool:
        """Whether bare numbers can make both the same."""
        return self[:2] == other[:2] or bool(_possible(*self[:4]) & _possible(*other[:4]))

    def times(self, other: Dimension, sign: int) -> Dimension:
        """The product with `other` (sign 1) or the quotient (sign -1)."""
        up, down = (other.up, other.down) if sign > 0 else (other.down, other.up)
        return Dimension(
            self.force + sign * other.force,
            self.length + sign * other.length,
            self.up or up,
            self.down or down,
            self.typed or other.typed,
        )

    def to_power(self, power: float) -> Dimension:
        """This dimension raised to a power."""
        loose = self.up or self.down
        return Dimension(self.force * power, self.length * power, loose, loose, self.typed)

    def words(self) -> str:
        """What a quantity of this dimension is called."""
        return _WORDS.get((self.force, self.length), "neither a force nor a moment")


_BARE = Dimension(0, 0, up=True)
_NUMBER = Dimension(0, 0)
_FORCE = Dimension(1, 0)
_MOMENT = Dimension(1, 1)
_WORDS: dict[tuple[float, float], str] = {
    (0, 0): "a pure number",
    (1, 0): "a force",
    (0, 1): "a length",
    (1, 1): "a moment",
    (0, 2): "an area",
}


@lru_cache(maxsize=1024)
def _possible(force: float, length: float, up: bool, down: bool) -> frozenset[tuple[float, float]]:
    """All powers (force, length) that bare numbers leave open."""
    forces = [0] + [1] * up + [-1] * down
    lengths = [0] + [-1, 1, 2] * up + [-1, -2] * down
    return frozenset((force + f, length + n) for f, n in product(forces, lengths))


def check_equation(left: Node, right: Node, frame: Frame) -> None:
    """Raises Broken if the terms of an equation cannot all be of one dimension."""
    _agree([*_addends(left), *_addends(right)], frame)


def check_value(node: Node, frame: Frame) -> None:
    """Raises Broken if a constant expression cannot be a force."""
    found = _dimension(node, frame)
    if found is not None and not found.agrees(_FORCE):
        span = node.span
        raise Broken("dimension/value", span.start, span.end, this=found.words(), force=frame.force)


def _addends(node: Node) -> list[Node]:
    if isinstance(node, Negative):
        return _addends(node.inner)
    if isinstance(node, Binary) and node.operator in "+-":
        return [*_addends(node.left), *_addends(node.right)]
    return [node]


def _agree(nodes: list[Node], frame: Frame) -> Dimension | None:
    """The dimension that all of `nodes` can have, None where every one is a bare number."""
    known: list[tuple[Node, Dimension]] = []
    for node in nodes:
        found = _dimension(node, frame)
        if found is None:
            continue
        for other, earlier in known:
            if not found.agrees(earlier) and not (frame.mixed and _is_arm_short(found, earlier)):
                _disagree((node, found), (other, earlier))
        known.append((node, found))
    if not known:
        return None
    return min((found for _, found in known), key=lambda found: found.up + found.down)


def _is_arm_short(one: Dimension, other: Dimension) -> bool:
    """Whether one is a force and the other a moment."""
    return any(a.agrees(_FORCE) and b.agrees(_MOMENT) for a, b in ((one, other), (other, one)))


def _disagree(later: tuple[Node, Dimension], earlier: tuple[Node, Dimension]) -> None:
    """Points at the later of two terms, or at the one with a typed unit if only one has it."""
    (node, found), (_, other) = later, earlier
    if other.typed and not found.typed:
        (node, found), (_, other) = earlier, later
    span = node.span
    raise Broken("dimension", span.start, span.end, this=found.words(), that=other.words())


def _dimension(node: Node, frame: Frame) -> Dimension | None:
    """The dimension of a tree; None stands for a number without any unit in it."""
    match node:
        case Name():
            return _FORCE
        case Unit("deg" | "rad"):
            return None
        case Unit(unit):
            measured = unit_meaning(unit, frame.force, frame.length)
            return Dimension(measured.force, measured.length, typed=True)
        case Negative(inner):
            return _dimension(inner, frame)
        case Call():
            return _of_call(node, frame)
        case Binary("+" | "-"):
            return _agree(_addends(node), frame)
        case Binary("^", left, Number(power)):
            base = _dimension(left, frame)
            return None if base is None else base.to_power(float(power))
        case Binary("*", Number(value), Unit()) if value == 0:
            return None
        case Binary("*" | "/" as operator, left, right):
            one, other = _dimension(left, frame), _dimension(right, frame)
            if operator == "/" and one is None and _unit_below(node, frame):
                return None
            if one is None and other is None:
                return None
            if one is None and isinstance(right, Unit) and not isinstance(left, Binary):
                return other
            return (one or _BARE).times(other or _BARE, 1 if operator == "*" else -1)
        case _:
            return None


def _of_call(node: Call, frame: Frame) -> Dimension | None:
    inner = _dimension(node.argument, frame)
    if inner is None:
        return None
    if node.name == "sqrt":
        return inner.to_power(0.5)
    if not inner.agrees(_NUMBER):
        raise Broken("dimension/function", node.span.start, node.span.end, this=inner.words())
    return None


def _unit_below(node: Binary, frame: Frame) -> bool:
    """Whether a bare number is divided by one with a unit, as in 12/sqrt(2) kN.

    The unit may belong to the whole fraction. Both readings are the same number where the unit is
    the problem's own; where it is not, raises Broken.
    """
    right = node.right
    if not (isinstance(right, Binary) and right.operator == "*" and isinstance(right.right, Unit)):
        return False
    unit = right.right.unit
    if unit not in ("deg", "rad") and unit_meaning(unit, frame.force, frame.length).size != 1:
        raise Broken("ambiguous/unit-below", node.span.start, node.span.end)
    return True
