"""What number stands in a problem file? A constant without names and units, exact if it can be."""

from __future__ import annotations

from tutor.notation.elements.exact import Exact
from tutor.notation.elements.rational import rational
from tutor.notation.elements.unreadable import Broken, Unreadable
from tutor.notation.formulas.angles import check_angles, check_pi
from tutor.notation.formulas.evaluate import Frame, constant
from tutor.notation.formulas.parser import parse_expression
from tutor.notation.lines.reading import checked
from tutor.notation.sides.scanner import Scanner

_UNITLESS = Frame("N", "m")


def read_number(text: str) -> Exact | Unreadable:
    """The constant in `text`, such as "3/2", "5*sqrt(3)/2" or "2*tan(30)", angles in degrees."""
    try:
        return _number(text)
    except Broken as broken:
        broken.words.setdefault("example", "12, 3/2 or 5*sqrt(3)/2")
        return broken.about(text)


def _number(text: str) -> Exact:
    typed = checked(text, "empty/value")
    equals = typed.find("=")
    if equals >= 0:
        raise Broken("value/equation", equals, equals + 1)
    scanner = Scanner(typed, None)
    symbols = scanner.scan()
    scanner.check_closed()
    tree = parse_expression(symbols, typed)
    if scanner.has_angles:
        check_angles(tree)
    if scanner.has_pi:
        check_pi(tree, typed)
    value = constant(tree, _UNITLESS).value
    fraction = rational(tree)
    if fraction is not None:
        return Exact(text, float(fraction), fraction)
    return Exact(text, value, None, tree)
