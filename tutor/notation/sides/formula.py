"""What do the sides of a formula say, once its heading and remarks are taken away?"""

from __future__ import annotations

import itertools
from collections.abc import Iterable, Mapping

from tutor.notation.elements.digits import figures
from tutor.notation.elements.tree import Binary, Negative, Node, Number, Unit
from tutor.notation.elements.unreadable import Broken
from tutor.notation.formulas.angles import check_angles, in_radians
from tutor.notation.formulas.dimension import check_equation, check_value
from tutor.notation.formulas.evaluate import Frame, parts
from tutor.notation.formulas.formulaic import formulaic
from tutor.notation.formulas.parser import parse_sides
from tutor.notation.lines.line import Side
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import PARTNER
from tutor.notation.sides.scanner import Scanner


def sides_of(
    text: str,
    names: Names,
    frame: Frame,
    letters: Mapping[str, Node] | None = None,
    turned: Iterable[int] = (),
    signed: bool = False,
    length: bool = False,
) -> tuple[tuple[Side, ...], bool]:
    """The sides of plain `text`, which holds a formula and nothing else; raises Broken.

    The second says whether a component is in it whose force points to the left or down.

    `letters` are the angles and lengths that go by a letter; the numbers in front of the columns `turned` count
    with the other sign; `signed` as in `Scanner`; with
    `length` a number alone may be one.
    """
    own = letters and any(map(names.meanings, letters))
    nodes = None if turned or own else formulaic(text, names)
    if nodes is not None:
        return tuple([_side(node, frame, text, False) for node in nodes]), False
    scanner = Scanner(text, names, letters=letters, signed=signed)
    symbols = scanner.scan()
    if not symbols:
        raise Broken("empty", len(text), len(text))
    scanner.check_closed()
    for column in turned:
        last = [symbol for symbol in symbols if symbol.type == "NUMBER" and symbol.end <= column]
        if last:
            last[-1].value = Negative(last[-1].value, last[-1].value.span)
    nodes = _with_angles(parse_sides(symbols, text), scanner, frame)
    sides = tuple([_side(node, frame, text, scanner.has_units) for node in nodes])
    if scanner.has_units:
        for one, other in itertools.pairwise(nodes):
            check_equation(one, other, frame)
        if len(nodes) == 1 and sides[0].numeric and not length:
            check_value(nodes[0], frame)
    return sides, scanner.has_backward


def _with_angles(nodes: tuple[Node, ...], scanner: Scanner, frame: Frame) -> tuple[Node, ...]:
    """The trees with each angle in its unit; raises Broken for one where none can stand."""
    if scanner.has_angles:
        for node in nodes:
            check_angles(node)
    return tuple(map(in_radians, nodes)) if scanner.has_pi and frame.degrees else nodes


def _side(node: Node, frame: Frame, text: str, measured: bool) -> Side:
    terms = tuple(parts(node, frame))
    if len(terms) == 1 and terms[0].name is None:
        return Side(node, terms, node.span, _figures(node, text), terms[0].units)
    unit = next((term.units for term in terms if term.units), None) if measured else None
    return Side(node, terms, node.span, None, unit)


def _figures(node: Node, text: str) -> int | None:
    while isinstance(node, Negative):
        node = node.inner
    if isinstance(node, Binary) and node.operator == "*" and isinstance(node.right, Unit):
        node = node.left
    if not isinstance(node, Number):
        return None
    return figures(text[node.span.start : node.span.end])


def unclosed(formula: str) -> Broken:
    """That a bracket within a name, R_{C[}, is never closed, so that it hides the equals sign behind it."""
    opened: list[int] = []
    for at, char in enumerate(formula):
        if char in "([{":
            opened.append(at)
        elif char in ")]}":
            fitting = [one for one in opened if PARTNER[formula[one]] == char]
            opened = [one for one in opened if one not in fitting[-1:]]
    at = opened[0] if opened else 0
    return Broken("brackets", at, at + 1, partner=PARTNER.get(formula[at], ")"))
