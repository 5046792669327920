"""Which sums do vectors stand for: "(A_x, A_y) + (8, 0) = (0, 0)", "(4i + 3j) × 8i + 8i × B_y j = 0"? And which one a row of terms?

Pairs and unit vectors are one sum across and one upwards; a product of two is that of the force and its arm with the
sign that it turns with. A row of cells, a term of a force in each and their sum last, is that sum.
"""

from __future__ import annotations

import re

from tutor.notation.elements.source import Source
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import LETTERS

_UNIT = re.compile(rf"(?<![{LETTERS}_}}])[ij](?![\w'])")
_PART = r"(?:[^(),=]|\([^()=]*+\))++"
_NAME = rf"[{LETTERS}][\w{{}}]*+"
_PAIR = rf"(?:{_NAME} *+\*? *+)?\({_PART},(?=[ A-Za-z(-]){_PART}\)"
_HEAD = r"^(?P<head>(?:(?!Σ *F)[^=:(])*: *)?(?:Σ *F *[:=] *)?"
_PAIRS = re.compile(
    rf"{_HEAD}(?P<sum>-? *{_PAIR}(?: *[-+] *{_PAIR})+) *= *(?:0|\( *0 *, *0 *\))[. ]*$"
)
_ONE_PAIR = re.compile(
    rf"(?P<sign>[-+]?) *(?P<by>{_NAME})? *\*? *\((?P<x>{_PART}),(?P<y>{_PART})\)"
)
_FACTORED = re.compile(
    rf"(?P<sign>[-+]?) *(?P<by>{_NAME}) *\*? *\( *(?P<one>-? *[0-9./]+) *i *(?P<joint>[-+]) *(?P<two>[0-9./]+) *j *\)"
)
"""A force before its unit vector: AC(0.8 i + 0.6 j)."""
_TERM = r"(?:\([^()=]*(?:\([^()=]*\)[^()=]*)*\)|[^-+()=*]+?) *(?<![A-Za-z_])[ij](?!\w)"
_UNITS = re.compile(
    rf"{_HEAD}(?P<sum>[-+]? *{_TERM}(?: *[-+] *{_TERM})+) *= *0(?: *i *\+ *0 *j)?[. ]*$"
)
_ONE_TERM = re.compile(rf"(?P<sign>[-+]?) *(?P<of>{_TERM})")
_COMPONENT = rf"-? *+(?:[0-9][0-9.]*+|[{LETTERS}][\w{{}}]*+(?= ))? *+[ij](?!\w)"
_VECTOR = rf"(?:\( *{_COMPONENT}(?: *[-+] *{_COMPONENT})? *\)|{_COMPONENT})"
_PRODUCT = rf"{_VECTOR} *\* *{_VECTOR}"
_PRODUCTS = re.compile(
    rf"^(?P<head>(?:(?!r *\*)[^=:(*])*[:=] *)?(?:(?:Σ|Sum|sum)? *\(?r *\* *F\)? *[:=] *)?(?P<sum>{_PRODUCT}(?: *[-+] *{_PRODUCT})*) *= *0[. ]*$"
)
_ONE_PRODUCT = re.compile(rf"(?P<sign>[-+]?) *(?P<arm>{_VECTOR}) *\* *(?P<force>{_VECTOR})")
_ONE_COMPONENT = re.compile(
    rf"(?P<sign>[-+]?) *(?P<size>[0-9][0-9.]*|[{LETTERS}][\w{{}}]*(?= ))? *(?P<unit>[ij])(?!\w)"
)
_CELL = rf"(?P<name>[{LETTERS}][\w{{}}-]*) *[:=]? *(?P<size>[-+]? ?[0-9][0-9.]*)(?: ?(?:k?N|kips?|k|lbs?))? *\|"
_CELLS = re.compile(
    rf"^ *(?:{_CELL.replace('?P<name>', '').replace('?P<size>', '?:')} *){{2,}} *(?:Σ|[Ss]um|[Tt]otal) *[:=]? *0 *\|? *$"
)
_ONE_CELL = re.compile(_CELL)


def in_components(source: Source, names: Names) -> Source:
    """The source with such a line as the sums that it says."""
    text = source.text
    if "=" not in text and "|" not in text:
        return source
    if "|" in text and (cells := _CELLS.match(text)) is not None:
        return source.rewritten(cells.re, lambda found: _added_up(found, names))
    if _UNIT.search(text) is not None:
        source = source.rewritten(_PRODUCTS, lambda found: _turning(found, names))
        source = source.rewritten(_FACTORED, _multiplied)
        return source.rewritten(_UNITS, lambda found: _two_sums(found, _by_units(found["sum"])))
    if "(" in text and "," in text:
        return source.rewritten(_PAIRS, lambda found: _two_sums(found, _by_pairs(found["sum"])))
    return source


def _added_up(found: re.Match[str], names: Names) -> str | None:
    """The terms of a row of cells as a sum; None where one of them is of no force."""
    cells = list(_ONE_CELL.finditer(found[0]))
    if not all(names.meanings(cell["name"]) for cell in cells):
        return None
    return " + ".join(f"({cell['size'].replace(' ', '')})" for cell in cells) + " = 0"


def _two_sums(found: re.Match[str], parts: tuple[str, str]) -> str | None:
    """The sum across and the one upwards, each with its heading."""
    head = (found["head"] or "").rstrip(": ")
    lead = f"{head}, " if head else ""
    across, up = parts
    return f"{lead}ΣFx: {across} = 0; ΣFy: {up} = 0" if across and up else None


def _by_pairs(said: str) -> tuple[str, str]:
    pairs = list(_ONE_PAIR.finditer(said))
    across, up = (
        _joined([(one["sign"], _times(one["by"], one[axis].strip())) for one in pairs])
        for axis in "xy"
    )
    return across, up


def _times(force: str | None, share: str) -> str:
    """A share of a force, where one stands before its pair."""
    return f"{force}*({share})" if force else share


def _multiplied(found: re.Match[str]) -> str:
    """The two components of a force before its unit vector."""
    turned = found["sign"] == "-"
    first = "-" if turned != found["one"].startswith("-") else "+"
    second = "-" if turned != (found["joint"] == "-") else "+"
    one, force = found["one"].lstrip("- "), found["by"]
    return f"{first} {one} {force} i {second} {found['two']} {force} j"


def _by_units(said: str) -> tuple[str, str]:
    terms = [(one["sign"], one["of"].strip()) for one in _ONE_TERM.finditer(said)]
    across, up = (
        _joined([(sign, of[:-1].strip() or "1") for sign, of in terms if of[-1] == unit])
        for unit in "ij"
    )
    return across, up


def _joined(terms: list[tuple[str, str]]) -> str:
    """Terms with their signs as a sum; one that is a sum itself in brackets."""
    made = ""
    for sign, of in terms:
        bare = of[1:-1] if of[:1] == "(" and of[-1:] == ")" and ")" not in of[1:-1] else of
        several = re.search(r"[-+]", bare) is not None
        term = f"({bare})" if several and (sign == "-" or bare[0] in "-+") else bare
        made += f" {sign or '+'} {term}" if made else f"{'-' if sign == '-' else ''}{term}"
    return made


def _turning(found: re.Match[str], names: Names) -> str | None:
    """The products of forces and arms, each with the sign that it turns with; None where one is of no force."""
    made = ""
    for one in _ONE_PRODUCT.finditer(found["sum"]):
        turn = -1.0 if one["sign"] == "-" else 1.0
        arm, force = _components(one["arm"]), _components(one["force"])
        if any(size[0].isalpha() and not names.meanings(size) for _, size in force.values()):
            return None
        for along, across, way in (("i", "j", turn), ("j", "i", -turn)):
            if along in arm and across in force:
                (lever, length), (sense, size) = arm[along], force[across]
                sign = "-" if way * lever * sense < 0.0 else "+"
                made += f" {sign} {size}*{length}"
    first = made[3:] if made.startswith(" + ") else f"-{made[3:]}"
    return f"{found['head'] or ''}{first} = 0" if made else None


def _components(vector: str) -> dict[str, tuple[float, str]]:
    """The sign and the size of each component of a vector."""
    return {
        one["unit"]: (-1.0 if one["sign"] == "-" else 1.0, one["size"] or "1")
        for one in _ONE_COMPONENT.finditer(vector)
    }
