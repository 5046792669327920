"""Which equation is a line said to be?"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from tutor.notation.elements.tree import Span

LabelKind = Literal["x", "y", "moment", "along"]
Side = Literal["left", "right", "upper", "lower", "outer", "inner"]


@dataclass(frozen=True)
class PartSaid:
    """The part of a truss that a heading speaks of: the members cut, and on which side of them it lies.

    Either may be left unsaid. The outer part is the one that is not held, the inner one has the supports.
    """

    cut: tuple[str, ...]
    side: Side | None


@dataclass(frozen=True)
class Between:
    """The direction from one joint to another, turned by `turn` degrees."""

    start: str
    end: str
    turn: float = 0.0


@dataclass(frozen=True)
class Label:
    """The equation a line is said to be.

    `kind` is "x", "y", "along" (then `degrees` from +x or `between` two joints, both None where only
    words say along what) or "moment"; None where only a joint or the whole truss is named. `point` is the joint named, if
    any (the point of a moment, or the joint whose forces are added), or a point (x, y) of a moment.
    `span` is its text; `whole` says that the whole truss was named, `part` which part was. Where only words
    say along what, `line` is what they call it ("rafter"), and `across` whether square to it.
    """

    kind: LabelKind | None
    point: str | tuple[float, float] | None
    degrees: float | None
    span: Span
    whole: bool = False
    between: Between | None = None
    part: PartSaid | None = None
    line: str = ""
    across: bool = False


@dataclass(frozen=True)
class Heading:
    """A heading found in a text: what it names, where it ends, and what of it was passed over.

    `summed` says that it names a sum or a direction, and not only a place.
    """

    label: Label | None
    end: int
    summed: bool
    passed: tuple[Span, ...] = ()
