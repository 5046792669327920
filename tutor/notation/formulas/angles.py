"""Do angles stand where angles can, and in a unit that is clear?"""

from __future__ import annotations

from tutor.notation.elements.tree import Binary, Call, Negative, Node, Pi, Unit, children
from tutor.notation.elements.unreadable import Broken

_TURNING = ("sin", "cos", "tan")


def check_angles(node: Node, inside: bool = False) -> None:
    """Raises Broken for an angle with a unit that no sine, cosine or tangent is taken of."""
    if isinstance(node, Binary) and not inside and _is_angle(node.right):
        raise Broken("angle", node.span.start, node.span.end)
    inside = inside or (isinstance(node, Call) and node.name in _TURNING)
    for child in children(node):
        check_angles(child, inside)


def check_pi(node: Node, text: str) -> None:
    """Raises Broken for cos(pi/6): bare angles are in degrees, and this one looks like radians."""
    if isinstance(node, Call) and node.name in _TURNING and _bare_pi(node.argument):
        start, end = node.argument.span.start, node.argument.span.end
        typed = text[start:end]
        call = f"{node.name}{typed[:-1] if typed[:1] in '([{' else '(' + typed}"
        raise Broken("ambiguous/pi", start, end, call=call)
    for child in children(node):
        check_pi(child, text)


def in_radians(node: Node) -> Node:
    """A tree with the angles that hold π in radians, cos(pi/6): nobody means so many degrees."""
    match node:
        case Call(name, argument, span) if name in _TURNING and _bare_pi(argument):
            unit = Unit("rad", argument.span)
            return Call(name, Binary("*", argument, unit, argument.span), span)
        case Call(name, argument, span):
            return Call(name, in_radians(argument), span)
        case Negative(inner, span):
            return Negative(in_radians(inner), span)
        case Binary(operator, left, right, span):
            return Binary(operator, in_radians(left), in_radians(right), span)
    return node


def _is_angle(node: Node) -> bool:
    return isinstance(node, Unit) and node.unit in ("deg", "rad")


def _bare_pi(node: Node) -> bool:
    """Whether π multiplies an angle that has no unit (180/π is a conversion to degrees)."""
    if isinstance(node, Pi):
        return True
    if isinstance(node, Binary):
        if node.operator == "*" and _is_angle(node.right):
            return False
        if node.operator == "/":
            return _bare_pi(node.left)
    return not isinstance(node, Call) and any(map(_bare_pi, children(node)))
