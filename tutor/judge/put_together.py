"""Is a sum of numbers in brackets one of the student's own values: (√3/2) F_AD = -(26 - √3), where A_y is that?"""

from __future__ import annotations

from collections.abc import Collection
from fractions import Fraction

from tutor.judge.remade import remade
from tutor.judge.same import are_same
from tutor.notation import Line
from tutor.notation.elements.tree import Binary, Name, Negative, Node, Number, has
from tutor.notation.formulas.evaluate import Frame, constant


def put_together(line: Line, values: Collection[float]) -> Line | None:
    """A line with its bracketed sums that are one of `values` as one number; None where it has none."""
    frame = line.steps[0].frame

    def in_one(node: Node, text: str) -> Node:
        match node:
            case Negative(inner):
                return Negative(in_one(inner, text), node.span)
            case Binary("+" | "-") if text[node.span.start] in "([{" and not has(node, Name):
                return _number(node, frame, values) or node
            case Binary(sign, left, right):
                return Binary(sign, in_one(left, text), in_one(right, text), node.span)
            case _:
                return node

    return remade(line, in_one)


def _number(node: Node, frame: Frame, values: Collection[float]) -> Node | None:
    """What a sum of numbers without units comes to, if that is one of `values` but for its sign."""
    total = constant(node, frame)
    if total.units is not None or not any(are_same(abs(total.value), abs(each)) for each in values):
        return None
    return Number(Fraction(total.value), Fraction(0), node.span)
