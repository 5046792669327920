"""Which reaction do words name? The horizontal reaction at A is 12 kN; the wall reaction B_x = 12; A_x reaction = 12."""

from __future__ import annotations

import re

from tutor.notation.elements.source import Source
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import LETTERS

_MAY = re.compile(r"\breaction\b", re.IGNORECASE)
_KIND = r"(?:(?:wall|support|pin|hinge|roller|link) +)?"
_AXIS = r"(?:(?P<axis>horizontal|vertical|x|y)(?:[ -]+(?:direction|axis))? +)"
_WHAT = r"reaction(?: +(?:force|component))?"
_NAME = rf"(?P<name>[{LETTERS}][\w{{}}]*)"
_SAYS = r"(?= *(?:=|[-+] *[0-9A-Z(]|: *[-+]?[0-9]|\b(?:is|acts|comes|equals|has)\b|$))"
_BEFORE_NAME = re.compile(
    rf"(?:\bthe +)?{_KIND}{_AXIS}?{_KIND}\b{_WHAT},? +{_NAME}{_SAYS}", re.IGNORECASE
)
_BEHIND_NAME = re.compile(rf"(?:\bthe +)?(?<![\w}}]){_NAME} +{_WHAT}{_SAYS}", re.IGNORECASE)
_AT = r"(?:at|of|from) +(?:(?:the|support|joint|pin|hinge|roller|wall) +){0,2}"
_BY_PLACE = re.compile(
    rf"(?:\bthe +)?{_KIND}{_AXIS}?{_KIND}{_WHAT} +{_AT}(?P<joint>[A-Z]\w{{0,2}}){_SAYS}",
    re.IGNORECASE,
)
"""A reaction by where it acts, and its direction where two act there."""


def with_reactions_named(source: Source, names: Names) -> Source:
    """The source with each reaction that is named in words by its name alone."""
    if _MAY.search(source.text) is None:
        return source
    source = source.rewritten(_BY_PLACE, lambda found: _by_place(found, names))
    source = source.rewritten(_BEFORE_NAME, lambda found: _named(found, names))
    return source.rewritten(_BEHIND_NAME, lambda found: _named(found, names))


def _by_place(found: re.Match[str], names: Names) -> str | None:
    joint, axis = found["joint"], _axis(found)
    if names.joint(joint) != joint:
        return None
    ways = (f"{joint}_{axis}",) if axis else (f"{joint}_x", f"{joint}_y", f"R_{joint}")
    acting = [name for name in ways if name in names.reactions]
    if axis and f"R_{joint}" in names.reactions and names.meanings(f"R_{joint}{axis}"):
        acting.append(f"R_{joint}{axis}")
    return acting[0] if len(acting) == 1 else None


def _named(found: re.Match[str], names: Names) -> str | None:
    """The name, where it is that of a reaction along the axis that the words say."""
    meant = names.meant(found["name"])
    if len(meant) != 1 or meant[0] not in names.reactions:
        return None
    axis = _axis(found)
    return found["name"] if not axis or meant[0].endswith(f"_{axis}") else None


def _axis(found: re.Match[str]) -> str:
    said = (found.groupdict().get("axis") or "").lower()
    return {"horizontal": "x", "vertical": "y"}.get(said, said)
