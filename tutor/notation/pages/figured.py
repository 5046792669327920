"""How does paper write a number? 12'-6", 7½, 33°41', 9 000, 1,500: each is spelled as a keyboard does.

A rule is there only where nothing else can be meant, and keeps the columns.
"""

from __future__ import annotations

import re
from fractions import Fraction
from math import gcd

from tutor.notation.elements.characters import RAISED
from tutor.notation.elements.source import Source
from tutor.notation.elements.units import METRES, NEWTONS
from tutor.notation.lines.found import Found
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import LETTERS

_VULGAR = {
    "½": (1, 2), "⅓": (1, 3), "⅔": (2, 3), "¼": (1, 4), "¾": (3, 4), "⅕": (1, 5), "⅖": (2, 5),
    "⅗": (3, 5), "⅘": (4, 5), "⅙": (1, 6), "⅚": (5, 6), "⅛": (1, 8), "⅜": (3, 8), "⅝": (5, 8),
    "⅞": (7, 8), "⅐": (1, 7), "⅑": (1, 9), "⅒": (1, 10),
}  # fmt: skip
_NUMBER = r"[0-9]+(?:\.[0-9]+)?"
_VULGAR_SIGN = re.compile(rf"(?:(?<![0-9.,])([0-9]+) ?)?([{''.join(_VULGAR)}])")
_RAISED = re.compile(r"([⁰¹²³⁴-⁹]+)[⁄/]([0-9]+)(?=[^0-9]|$)")
_MIXED = re.compile(
    r"(?<![0-9.,/*^]) ?(?<![0-9][0-9.,/*^ ])(?<![/^*])(?<![/^*] )\b([0-9]+)[ -]([0-9]{1,2}) ?/ ?(2|3|4|6|8|12|16)(?![0-9.,])"
)
_FEET = re.compile(
    rf"(?<![\w.,'])({_NUMBER}) *(?:'|ft\b\.?|feet\b|foot\b) *-? *({_NUMBER}) *(?:\"|''|in\b\.?|inch(?:es)?\b)"
)
_FEET_ALONE = re.compile(rf"(?<![\w.,'])({_NUMBER}) ?'(?!['\w])")
_INCHES = re.compile(rf"(?<![\w.,'])({_NUMBER}) ?(?:\"|'')")
_MINUTES = re.compile(
    r"(?<![\w.,])([0-9]{1,3}) ?° ?([0-9]{1,2}) ?'(?: ?([0-9]{1,2}(?:\.[0-9]+)?) ?(?:\"|''))?"
)
_GROUPS = re.compile(r"(?<![\w.,'])([1-9][0-9]{0,2}(?:,[0-9]{3})+)(\.[0-9]+)?(?![\w,]|\.[0-9])")
_POINTED = re.compile(
    r"(?<![\w.,'])([1-9][0-9]{0,2}(?:\.[0-9]{3})+)(,[0-9]+)?(?![0-9.]|,[0-9]|[A-Za-z]*_)"
)
_DECIMAL_COMMA = re.compile(r"[0-9],(?:[0-9]{1,2}|[0-9]{4,})(?![0-9])|(?<![0-9.,])0,[0-9]+")
_COORDINATES = re.compile(r"[(\[] *-?[0-9.]+,-?[0-9.]+ *[)\]]")
_ABOVE_LINE = "|".join(("'", *NEWTONS, *METRES, "kips", "lbs", "k"))
_RAISED_UNIT = re.compile(
    rf"(?<=[0-9]) ?\^ ?(?:\{{ ?(?P<braced>{_ABOVE_LINE}) ?\}}|(?P<bare>{_ABOVE_LINE})(?!\w))"
)
_APOSTROPHES = re.compile(
    r"(?<![\w.,'°] )(?<![\w.,'°])([1-9][0-9]{0,2}(?:'[0-9]{3})+)([.,][0-9]+)?(?![\w.,'\"])"
)
_SPACED = re.compile(
    r"(?<![\w.,'] )(?<![\w.,'])([1-9][0-9]{0,2})((?: [0-9]{3})+)(\.[0-9]+|,[0-9]{1,2}(?![0-9]))?(?![\w]|[,.](?! |$)|  ?[0-9])"
)


def figured(source: Source, names: Names) -> Source:
    """The source with its numbers spelled as one types them into a formula."""
    source = source.rewritten(_RAISED, _raised).rewritten(_VULGAR_SIGN, _vulgar)
    if "^" in source.text:
        source = source.rewritten(_RAISED_UNIT, _unit_above)
    if "°" in source.text:
        source = source.rewritten(_MINUTES, _minutes)
    if "'" in source.text:
        source = source.rewritten(_APOSTROPHES, lambda found: _set_off(found, names))
    source = source.rewritten(_FEET, _feet)
    source = source.rewritten(_FEET_ALONE, lambda found: f"({found[1]} ft)")
    source = source.rewritten(_INCHES, lambda found: f"({found[1]} in)")
    decimal = "," in source.text and _has_decimals(source.text)
    if "." in source.text:
        source = source.rewritten(_POINTED, lambda found: _pointed(found, decimal))
    source = source.rewritten(_GROUPS, lambda found: _grouped(found, source.text, names, decimal))
    source = source.rewritten(_SPACED, lambda found: _spaced(found, source.text, names))
    return source.rewritten(_MIXED, _mixed)


def _has_decimals(text: str) -> bool:
    """Whether a comma stands that can only be a decimal one, and parts no coordinates: 0,8 and 12,5."""
    return _DECIMAL_COMMA.search(_COORDINATES.sub(" ", text)) is not None


def _set_off(found: re.Match[str], names: Names) -> str | None:
    """A number with its thousands set off by apostrophes, 4'500; where lengths are in feet, one that shows it."""
    several = found[1].count("'") > 1 or found[2] is not None or _several_set_off(found.string)
    if names.length in ("ft", "in") and not several:
        return None
    return found[1].replace("'", "") + (found[2] or "").replace(",", ".")


def _several_set_off(text: str) -> bool:
    """Whether more than one number has three figures behind an apostrophe, as no feet and inches have."""
    return len(_APOSTROPHES.findall(text)) > 1


def thousands(source: Source, found: Found) -> Source:
    """The source with the points of 4.500 N and of = 27.000 taken out, where they are chosen to set off thousands.

    Nobody writes so who counts in pounds. That they may do so is a choice of the line: a number with a unit in which no thousandths are
    written; one that ends a line, where it ends in 00 or forces are large; where both is so, one that
    stands beside no force.
    """
    text = source.text
    if _american(found.names):
        return _decimals(source, found)
    if _POINT.search(text) is None or _has_decimals(text):
        return source
    large = found.names.force == "N"
    places = [each for each in _POINT.finditer(text) if _sets_off(each, text, large)]
    if not places:
        return source
    if not found.choice.pointed:
        found.open.add("pointed")
        return source
    found.taken += [("thousands", source.span(*each.span())) for each in places]
    starts = {each.start() for each in places}
    return source.rewritten(
        _POINT, lambda each: each[1] + each[2] if each.start() in starts else None
    )


def _decimals(source: Source, found: Found) -> Source:
    """The source with the comma of 20,625 kip as that of a decimal, where that is chosen.

    Who counts in pounds and kips may write as at home; a number in another unit than the problem's own is left.
    """
    others = {*NEWTONS, "lbs", "kips", "k", "#"} - set(_OWN_UNIT.get(found.names.force, ()))

    def decimal(each: re.Match[str]) -> bool:
        unit = re.match(r" *([A-Za-z#]+)", source.text[each.end() :])
        return "," in each[1] and each[1].count(",") == 1 and not (unit and unit[1] in others)

    places = [each for each in _GROUPS.finditer(source.text) if not each[2] and decimal(each)]
    if not places:
        return source
    if not found.choice.commas:
        found.open.add("commas")
        return source
    found.taken += [("decimals", source.span(*each.span())) for each in places]
    starts = {each.start() for each in places}
    return source.rewritten(
        _GROUPS, lambda each: each[1].replace(",", ".") if each.start() in starts else None
    )


_OWN_UNIT = {"kip": ("kip", "kips", "k"), "lb": ("lb", "lbs", "#")}
_POINT = re.compile(r"(?<![\w.,'])([1-9][0-9]{0,2})\.([0-9]{3})(?![0-9]|[.,][0-9]|[A-Za-z]*_)")
_ANGLE_BEFORE = re.compile(r"(?:sin|cos|tan)[( ]*$", re.IGNORECASE)
_LETTER_BEHIND = re.compile(rf"[°)\]}} ]*[*·×]?[(\[ ]*[{LETTERS}]")
_LETTER_BEFORE = re.compile(rf"[{LETTERS}][\w{{}}]*[)\] ]*[*·×(/]? *\(?$")
_VALUE_BEGINS = re.compile(r"(?:^|[=≈:→⇒∴,;]|[^\W\d_]{2}) *[-+]? *$")
_VALUE_ENDS = re.compile(r" *(?:\(?[TtCc]\)?)? *$")


def _sets_off(found: re.Match[str], text: str, large: bool) -> bool:
    """Whether the point of a number may set off its thousands."""
    if _in_small_unit(text, found.end()):
        return True
    before, behind = text[: found.start()], text[found.end() :]
    if _ANGLE_BEFORE.search(before) or _LETTER_BEFORE.search(before):
        return False
    if _VALUE_ENDS.match(behind) is not None and _VALUE_BEGINS.search(before) is not None:
        return large or found[2].endswith("00")
    return large and found[2].endswith("00") and _LETTER_BEHIND.match(behind) is None


def _unit_above(found: re.Match[str]) -> str:
    """A unit set above the line, as in 18^k."""
    unit = found["braced"] or found["bare"]
    return unit if unit == "'" else f" {unit}"


def _vulgar(found: re.Match[str]) -> str:
    top, bottom = _VULGAR[found[2]]
    return f"({found[1]}+{top}/{bottom})" if found[1] else f"({top}/{bottom})"


def _raised(found: re.Match[str]) -> str | None:
    """A fraction set in figures above and below the line: ⁵⁄₁₃."""
    if (
        found.start()
        and found.string[found.start() - 1] in "0123456789)]}abcdefghijklmnopqrstuvwxyz"
    ):
        return None
    top = "".join(str(RAISED[figure]) for figure in found[1])
    return f"({top}/{found[2]})"


def _mixed(found: re.Match[str]) -> str | None:
    top, bottom = int(found[2]), int(found[3])
    if not 0 < top < bottom or gcd(top, bottom) != 1:
        return None
    lead = found[0][: len(found[0]) - len(found[0].lstrip())]
    return f"{lead}({found[1]}+{found[2]}/{found[3]})"


def _feet(found: re.Match[str]) -> str | None:
    return f"({found[1]} ft+{found[2]} in)" if Fraction(found[2]) < 12 else None


def _minutes(found: re.Match[str]) -> str | None:
    if int(found[2]) >= 60:
        return None
    seconds = f"+{found[3]}/3600" if found[3] else ""
    return f"({found[1]}+{found[2]}/60{seconds})°"


def _american(names: Names) -> bool:
    return names.force in ("lb", "kip")


def _grouped(found: re.Match[str], text: str, names: Names, decimal: bool) -> str | None:
    """A number with its thousands set off by commas, where no decimal comma can be meant."""
    digits = found[1].replace(",", "") + (found[2] or "")
    several = found[1].count(",") > 1 or found[2] is not None
    points = re.search(r"(?<![0-9,])[0-9]*\.[0-9]", text) is not None
    if decimal and not several:
        return found[1].replace(",", ".")
    if (below := _below(found, text)) is not None:
        return below
    round_number = names.force == "N" and digits.endswith("00")
    if _american(names) or points or several or round_number or _in_small_unit(text, found.end()):
        return digits
    return None


def _pointed(found: re.Match[str], decimal: bool) -> str | None:
    """A number with its thousands set off by points, where its own decimals or others have a comma."""
    several = found[1].count(".") > 1 or found[2] is not None
    if not (several or decimal):
        return None
    return found[1].replace(".", "") + (found[2] or "").replace(",", ".")


def _below(found: re.Match[str], text: str) -> str | None:
    """The number below a fraction bar, read so that the quotient can be a ratio: 4/6,248."""
    above = _ABOVE.search(text[: found.start()])
    sizes = {found[1].replace(",", mark) for mark in ("", ".")}
    fits = [
        size for size in sizes if above and 1 / STEEPEST < float(above[1]) / float(size) < STEEPEST
    ]
    return fits[0] if len(fits) == 1 else None


_ABOVE = re.compile(r"(?<![\w.,])([0-9]+(?:\.[0-9]+)?) ?/ ?$")
STEEPEST = 50.0
"""No quotient on paper is larger than this, nor smaller than its inverse."""


def _in_small_unit(text: str, at: int) -> bool:
    """Whether a unit follows in which no thousandths are written."""
    return re.match(r" *(?:N|mm|lbs?|lbf|kips?|ft|in|pounds?|feet|inches)\b", text[at:]) is not None


_UNIT = re.compile(
    rf" *(?:{'|'.join(sorted((*NEWTONS, *METRES, 'lbs', 'kips', 'KN'), key=len, reverse=True))})\b"
)


def _spaced(found: re.Match[str], text: str, names: Names) -> str | None:
    """A number with its thousands set off by spaces, where the forces are large or a unit follows."""
    large = names.force in ("N", "lb", "kip") or _UNIT.match(text, found.end()) is not None
    places = (found[3] or "").replace(",", ".")
    return found[1] + found[2].replace(" ", "") + places if large else None
