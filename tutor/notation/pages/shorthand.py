"""Which short words head a sum on a page of sums: "jt C up/dn", "mts A", "l/r", "R: ... = L: ...", "up ... = dn ..."?

Each is spelled as the heading that it is. A rule says what of a text it needs.
"""

from __future__ import annotations

import re

from tutor.notation.elements.source import Replaced, Rule, Source

_AT = r"(?P<lead>^ *|[.;] +|(?<=:) +)(?:(?P<at>(?:(?:jt|joint|node|Jt|Joint|Node)\.? +)?[A-Z][0-9]?|whole(?: +truss)?)[,:]? +)?"
_UP_DOWN = re.compile(rf"{_AT}(?:up/dn|up/down|u/d)[,:]? +(?=[^ ])")
_LEFT_RIGHT = re.compile(rf"{_AT}(?:l/r|r/l|left/right)[,:]? +(?=[^ ])")
_MOMENTS = re.compile(
    r"(?P<lead>^ *|[.;] +)[Mm]ts?\.? +(?:about +|abt\.? +|@ *)?(?P<joint>[A-Z][0-9]?)(?: +\([a-z]{1,2}\))?[,:]? +(?=[^ ])"
)
_DOWN = re.compile(r"(?:^|(?<=[ =/]))dn(?=[ :])")
_SIDES = r"(?:^|(?<= )){one}:? +(?P<sum>[^=:]*?) *= *{other}:? +"
_RIGHT_LEFT = re.compile(_SIDES.format(one="R", other="L"))
_LEFT_THEN_RIGHT = re.compile(_SIDES.format(one="L", other="R"))
_UP_THEN_DOWN = re.compile(_SIDES.format(one="[Uu]p", other="(?:dn|down)"))


def shorthand(source: Source) -> Source:
    """The source with such words as headings."""
    return source.by_rules(_RULES)


def _vertically(found: re.Match[str]) -> str:
    return _headed(found, "vertically")


def _horizontally(found: re.Match[str]) -> str:
    return _headed(found, "horizontally")


def _headed(found: re.Match[str], way: str) -> str:
    at = (found["at"] or "").split()
    joint = f"Joint {at[-1]} " if at and at[0] != "whole" else ""
    return f"{found['lead']}{joint}{way}: "


def _moments(found: re.Match[str]) -> str:
    return f"{found['lead']}moments about {found['joint']}: "


def _set_equal(sides: str) -> Replaced:
    """The two ways before their equation: R: AB + 12 = L: CD as right = left: AB + 12 = CD."""
    return lambda found: f"{sides}: {found['sum']} = " if found["sum"] else f"{sides}: "


_RULES: tuple[Rule, ...] = (
    Rule(("up/d", "u/d"), _UP_DOWN, _vertically),
    Rule(("l/r", "r/l", "left/right"), _LEFT_RIGHT, _horizontally),
    Rule(("mt", "Mt"), _MOMENTS, _moments),
    Rule(("dn", "down"), _UP_THEN_DOWN, _set_equal("up = down")),
    Rule(("dn",), _DOWN, "down"),
    Rule(("L ", "L:"), _RIGHT_LEFT, _set_equal("right = left")),
    Rule(("R ", "R:"), _LEFT_THEN_RIGHT, _set_equal("left = right")),
)
