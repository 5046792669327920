"""What does a page say in words or in proportions that a formula writes otherwise?

moments about P in metres; cos 2θ; F_ABy : F_ABx = 3 : 4, F_ABy/F_ABx = 3/4. Each is rewritten as the
formula that it is, and the columns are kept.
"""

from __future__ import annotations

import re

from tutor.notation.elements.source import Source
from tutor.notation.lines.layout import ANGLE
from tutor.notation.naming.names import Names

_UNIT_WORDS = (
    r"(?:milli|centi)?met(?:re|er)s?|feet|foot|inch(?:es)?|(?:kilo)?newtons?(?:[ -]met(?:re|er)s?)?|kips?|pounds?"
    r"|k?N ?[·*.]? ?mm?|kip ?[·*.-]? ?ft|lb ?[·*.-]? ?ft|mm|cm|m|ft|kN|N|lb"
)
_IN_UNIT = re.compile(rf" in (?P<unit>{_UNIT_WORDS})(?= *[:,(])")
_CUT_UNIT = re.compile(r"(?<=[0-9])(?P<gap> ?)(?P<unit>[kM] N|k ?i ?p|l b)(?![\w({])")
"""A unit that a blank has come into: 28k N."""
_MULTIPLE = re.compile(
    rf"\b(?P<function>sin|cos|tan) +(?P<digits>\d{{1,2}}) ?(?P<angle>{ANGLE})(?!\w)"
)
_RATIO = re.compile(
    r"(?P<one>(?<![\w*/^+-])\w[\w{}'-]*) *[:/] *(?P<other>\w[\w{}'-]*) *= *"
    r"(?P<top>[-+]?[0-9][0-9.]*+)(?: *[:/] *(?P<bottom>[0-9][0-9.]*+))?(?= *(?:$|[,;.]|so\b|⇒|∴|→))"
)


def in_formulas(source: Source, names: Names) -> Source:
    """The source with units of a heading left out, multiples of angles in brackets, ratios as products."""
    source = source.rewritten(_CUT_UNIT, lambda found: _unit(found, names))
    source = unit_apart(source, names).rewritten(_MULTIPLE, _multiple)
    return source.rewritten(_RATIO, lambda found: _ratio(found, names))


def unit_apart(source: Source, names: Names) -> Source:
    """The source without the unit that its heading says the numbers behind it are in."""
    return source.rewritten(_IN_UNIT, lambda found: _unit_said(found, names))


def _unit_said(found: re.Match[str], names: Names) -> str | None:
    """Nothing for the unit of a heading: it says what the numbers behind it are in."""
    before = found.string[: found.start()]
    heads = "=" not in before or re.fullmatch(r"[^=]*= *0", before) is not None
    return " " if heads and names.joint(found["unit"]) is None else None


def _unit(found: re.Match[str], names: Names) -> str | None:
    """A unit without the blank in it, where its last letter is nothing of the truss."""
    last = found["unit"][-1]
    named = names.meanings(last) or names.joint(last) == last
    return None if named else f"{found['gap']}{found['unit'].replace(' ', '')}"


def _multiple(found: re.Match[str]) -> str:
    """The function of a multiple of an angle; without a blank, sin2θ may be a square as well."""
    return f"{found['function']}({found['digits']}{found['angle']})"


def _ratio(found: re.Match[str], names: Names) -> str | None:
    """Two components of one force in a ratio, as the one times a number: F_ABy = (3/4) F_ABx."""
    one, other = (names.meanings(found[key]) for key in ("one", "other"))
    if len(one) != 1 or len(other) != 1 or one[0].name != other[0].name:
        return None
    if one[0].share is None and other[0].share is None:
        return None
    bottom = f"/{found['bottom']}" if found["bottom"] else ""
    return f"{found['one']} = ({found['top']}{bottom}) {found['other']}"
