"""Which value is said twice: "2.5 kip C (= 2500 lb)", "1.45 kN (1450 N)", "AE = -5.525, 5.53 C"?

The same size in another unit goes before the value that has its T or C; a size with its T or C behind a value
with its sign is the next link of a chain. That both are the same is judged as of any chain.
"""

from __future__ import annotations

import re

from tutor.notation.elements.source import Source
from tutor.notation.elements.tree import Span
from tutor.notation.elements.units import FORCES_AND_SIGNS

_NUMBER = r"(?:[0-9]{1,3}(?: [0-9]{3})+|[0-9][0-9.,]*(?<![.,]))"
_WAY = r"(?:[TtCc]\b|\([TtCc]\)|\[[TtCc]\]|[←→↑↓]|\([←→↑↓]\)|(?:in )?(?:tension|compression|tens|comp)\b\.?)"
_CONVERTED = re.compile(
    rf"(?P<value>(?P<minus>-?) ?(?<![\w.,]){_NUMBER} ?(?P<unit>{FORCES_AND_SIGNS})(?![\w]) *(?P<way>{_WAY})?) *"
    rf"(?:[(\[] ?(?:=|≈|i\.?e\.?,?|or|that is|~)? *(?P<inner>{_NUMBER} ?(?P<other>{FORCES_AND_SIGNS})) ?[)\]]|[,;] *(?:i\.e\.,?|ie|or|that is) +(?P<behind>{_NUMBER} ?(?P<last>{FORCES_AND_SIGNS})))(?P<after> *{_WAY})?(?=[ .]*(?:$|[,;∴⇒→]))"
)
_SIZE_BEHIND = re.compile(
    rf"(?<==) *(?P<value>(?:- ?)?(?P<size>{_NUMBER})(?: ?(?:{FORCES_AND_SIGNS}))?)(?P<mark>[,;]| /)(?= +(?P<again>{_NUMBER})(?: ?(?:{FORCES_AND_SIGNS}))? *{_WAY}[ .]*$)"
)
_NEAR = 0.1
"""How far, as a share, two sizes may lie apart that are meant to be the same, if one may be miscopied."""


def said_once_over(source: Source) -> Source:
    """The source with a value that is said twice as a chain."""
    source = source.rewritten(_SIZE_BEHIND, _next_link)
    found = _CONVERTED.search(source.text)
    if found is None or not _is_converted(found):
        return source
    group = "inner" if found["inner"] else "behind"
    way = _in_brackets((found["way"] or found["after"] or "").strip(" ()[]."))
    behind = Span(*found.span("after")) if found["after"] else ""
    return source.made_of([
        Span(0, found.start()), found["minus"], Span(*found.span(group)), f" {way} = ",
        Span(*found.span("value")), behind, Span(found.end(), len(source.text)),
    ])  # fmt: skip


def _is_converted(found: re.Match[str]) -> bool:
    """Whether a value is said again in another unit, and not as a factor or in the same one."""
    return _plain(found["unit"]) != _plain(found["other"] or found["last"])


def _plain(unit: str) -> str:
    return {"kips": "kip", "k": "kip", "lbs": "lb", "lbf": "lb", "#": "lb"}.get(unit, unit)


def _in_brackets(way: str) -> str:
    """A T or C, or a way, as it stands within a chain."""
    if not way or way in "←→↑↓":
        return way and f"({way})"
    return f"({way.lower().removeprefix('in ')[0].upper()})"


def _next_link(found: re.Match[str]) -> str | None:
    """A value with its sign, as the link before its size."""
    size, again = (_number(found[name]) for name in ("size", "again"))
    if size is None or again is None or abs(size - again) > _NEAR * size:
        return None
    return f" {found['value']} ="


def _number(text: str) -> float | None:
    try:
        return float(text.replace(",", "."))
    except ValueError:
        return None
