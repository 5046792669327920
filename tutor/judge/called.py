"""What is each mistake called among people? Its code in a few words, for tables and reports."""

from __future__ import annotations

from collections.abc import Mapping

CALLED: Mapping[str, str] = {
    "angle-mode": "an angle in radians",
    "arithmetic": "a value worked out wrongly",
    "arm": "a distance that is not the moment arm",
    "arm-from": "an arm measured from another point",
    "arm-unit": "an arm in another unit",
    "carried": "an earlier value not carried over as it was",
    "complement": "the other angle of the right triangle",
    "component": "the other component",
    "component-in-moment": "one component of two in a moment",
    "dependent": "an equation that adds nothing new",
    "double": "a force counted twice",
    "extra": "something that does not belong there",
    "inclined-support": "an inclined reaction taken as vertical or horizontal",
    "lost-load": "a load of several left out",
    "magnitude": "a given number copied wrongly",
    "minus": "the minus of an earlier value",
    "missing": "a force or a reason left out",
    "needless-component": "a component of a force that counts whole",
    "no-arm": "a force without its arm",
    "not-equilibrium": "a line that no rule explains",
    "other-equation": "another equation than the one asked for",
    "other-point": "moments about another point",
    "pull-push": "all members at a joint reversed",
    "ratio": "a ratio turned upside down",
    "reflected": "a member that acts one way at both ends",
    "rounding": "a number rounded too hard",
    "sense": "a force against its own arrow",
    "side": "the wrong side of the slope triangle",
    "sign": "a sign turned",
    "slope": "the slope of another member",
    "stray-load": "a load that acts elsewhere",
    "stray-reaction": "a reaction that acts elsewhere",
    "symmetry": "symmetry where there is none",
    "tangent": "a tangent for a sine or cosine",
    "tension-compression": "tension and compression exchanged",
    "turning": "a moment that turns the other way",
    "unit": "another unit",
    "whole-force": "a whole force for its component",
    "too-many-reactions": "more than a support holds",
    "too-few-reactions": "less than a support holds",
    "reaction-direction": "a reaction in a wrong direction",
    "invented-moment": "a moment at a support that lets turn",
    "zero-loaded": "a zero member at a loaded joint",
    "zero-third-member": "a zero member that another balances",
    "zero-rule": "a zero member by a rule that does not fit",
}


def called(code: str) -> str:
    """A mistake in a few words, from the code of its kind."""
    return CALLED.get(code, code.replace("-", " "))


def counted(code: str, count: int) -> str:
    """A mistake and how often it was made: "a sign turned (3 times)"."""
    return called(code) if count == 1 else f"{called(code)} ({count} times)"
