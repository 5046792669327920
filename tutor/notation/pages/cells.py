"""How does a row of a table give an equation? | A | ΣFy | A_y + 0.6 F_AD = 0 | -25 kN |

Cells before the equation are its headings, each set off by a colon; what stands behind it is what
follows. The columns stay as they are.
"""

from __future__ import annotations

import re
from dataclasses import replace

from tutor.notation.elements.source import Source
from tutor.notation.elements.tree import Span
from tutor.notation.elements.unreadable import Broken
from tutor.notation.headings.heading import heading_in
from tutor.notation.naming.names import Names

_MAY = re.compile(
    r'\t| \| |^ *\|.*\| *$|^[^|]* \| *$|^ *\| [^|]*$|" ?[,;] ?"|^ *"[^"]*" ?[,;]|[,;] ?"[^"]*"$'
)
_CLOSE = re.compile(r"^ *\|[^ ].*\| *$")
_SPACED = re.compile(r"^ *\|(?: +|$)| *\t[ \t]*| +\|(?: +|$)")
_BARS = re.compile(r" *\| *")
_QUOTED = re.compile(r'^ *"|" *[,;] *"?|[,;] *"|" *$')
_EQUATION = re.compile(r"[^=|]*[\w)\]}°] *=[^=|]*[\w({\[√|+-]")
_NUMBER = re.compile(r"[(\[]?[0-9]{1,3}[.)\]]?")
_COUNT = re.compile(r" *[0-9]{1,3} *")
_BULLET = re.compile(r" *(?:[•·◦*–—⇒∴→-]|[0-9]{1,2}[.)]) *")
_SIGN_ALONE = re.compile(r"(?:\||\t) *[-+=] *(?:\||\t)")
_EQUALS_ALONE = re.compile(r"(?:\||\t) *= *(?:\||\t)")
_GOES_ON = re.compile(r"	[^	=|]*[A-Za-z][^	=|]*	[ 	]*[-+] ?[0-9A-Z][^	=|]*=")
"""A sum that begins in one cell and goes on in the next: -0.8 F_AC ⇥ +200 = 0."""
_EQUALS_LAST = re.compile(r"(?<=[\w}\])]) *= *(?:\||\t)[ \t]*(?=[-+(]? ?[0-9.√])")
"""What ends a cell whose other side is in the next one: A_y = | 80.18 | N."""
_TERM = re.compile(r" *(?:\||\t)[ \t]*(?=[-+*/] ?[\w(√.])")
_OF_A_FACTOR = re.compile(
    r"(?:(?<=[-+*/=] )|(?<=[-+*/=(\t])|^ *)(?:0?\.[0-9]+|[0-9]+/[0-9]+|√[0-9]+(?:/[0-9]+)?) *\t[ \t]*(?=[(\[{A-Za-z])"
)
"""A gap between a factor, which is no number of a row, and what it multiplies: 0.6 ⇥ (F_AB + F_AC)."""
_BEFORE_EQUALS = re.compile(r"\t[ \t]*(?== *[-+]?[0-9.,]+ *$)")
_BEFORE_NUMBER = re.compile(r"\t[ \t]*(?=[(\[] ?[0-9]{1,2}[a-z]? ?[)\]] *$)")
_BEHIND_NUMBER = re.compile(
    r"^ *[(\[]?[0-9]{1,2}(?:\.[0-9]{1,2})+(?:[)\]] *\t[ \t]*|\t *(?=[^\t=]*[A-Za-z][^\t]*=[^\t]*$))"
)
"""A gap beside the number of a line or a section: ... = 0 ⇥ (1), 2.4) ⇥ ..., 2.4 ⇥ ..."""
_ADDED = re.compile(r" *[-+] ?[0-9][0-9.,]*(?: ?[A-Za-z]{1,3})? *= *[-+]?0(?:[.,]0*)? *")
"""The second half of a sum of a force and a number: A_x, +4 = 0."""
_FACTOR = re.compile(r" *[-+*/]?[-+( ]*[0-9]")
_NOTHING = re.compile(r"(?:\||\t) *= *(?:\||\t) *[-+]?0(?:[.,]0*)? *(?:$|\||\t)")
_DASHED = re.compile(r"(?:\||\t) *[-–—] *(?=$|\||\t)")
_NOTHING_IN = re.compile(r"(?:\||\t) *[-+]?0(?:[.,]0*)? *(?:k?N|MN|kips?|k|lbs?)? *(?:\||\t|$)")
_BLANK = str.maketrans(dict.fromkeys("•·◦*–—-|", " "))
_FIGURE = re.compile(r"[0-9]")
_WORD = re.compile(r"[A-Za-z][\w{}]*")
_VALUE = re.compile(r" *[-+]? ?[0-9]")


def celled(source: Source, typed: str, names: Names) -> Source:
    """The source with a row that holds an equation laid out as a line: A: ΣFy: A_y + 0.6 F_AD = 0.

    `typed` is the text before look-alikes were replaced, column for column.
    """
    text = "".join(
        "\t" if one == "\t" else char for one, char in zip(typed, source.text, strict=True)
    )
    if _MAY.search(text) is None:
        return source
    if "\t" in text and "=" in text:
        for gap in (_OF_A_FACTOR, _BEFORE_NUMBER, _BEHIND_NUMBER, _BEFORE_EQUALS):
            text = gap.sub(lambda found: found[0].replace("\t", " "), text)
    text = _EQUALS_LAST.sub(lambda found: re.sub(r"[|\t]", " ", found[0]), text)
    split = _EQUALS_ALONE.search(text) is not None or _GOES_ON.search(text) is not None
    if split:
        text = _SIGN_ALONE.sub(
            lambda found: re.sub(r"[|\t]", " ", found[0]), _summed_up(text, names)
        )
    places = [span for span in _cells(text) if not _BULLET.fullmatch(text, span.start, span.end)]
    text = text[: places[0].start].translate(_BLANK) + text[places[0].start :] if places else text
    said = [text[span.start : span.end] for span in places]
    first = next((n for n, cell in enumerate(said) if _is_equation(cell, names)), None)
    if first is None:
        lead = places[1].start if _lead(said, names) else 0
        plain = source.text if "|" in text else source.text.replace('"', " ")
        plain = _without_dash(plain, text)
        return replace(source, text=" " * lead + plain[lead:])
    made = [" "] * len(text)
    for n, span in enumerate(places):
        made[span.start : span.end] = said[n]
        if n == 0 and first == 1 and _COUNT.fullmatch(said[0]) and text[span.end] == "\t":
            made[span.start : span.end] = _count(said, split, source.place(span))
            continue
        mark = _between(said, n, first, names)
        made[span.end : span.end + len(mark)] = mark
    return replace(source, text="".join(made).replace("\t", " "))


def _count(said: list[str], split: bool, place: Span) -> str:
    """The number of a row, left out before a sign. Raises Broken where it may be a term of a sum that is split up."""
    if said[1].lstrip()[:1] not in ("+", "-"):
        return said[0]
    if split:
        number = said[0].strip()
        cure = f"it with a point, {number}., or with its sign, +{number}"
        one, other = "the number of the row", "a term of the sum"
        raise Broken("ambiguous", place.start, place.end, one=one, other=other, cure=cure)
    return " " * len(said[0])


def _summed_up(text: str, names: Names) -> str:
    """The text with the cells of a sum that is split up, a term in each, as one cell."""
    last = max((found.start() for found in _EQUALS_ALONE.finditer(text)), default=text.index("="))
    nothing = _NOTHING.match(text, last) is not None

    def joined(found: re.Match[str]) -> str:
        if found.start() > last:
            return found[0]
        cell = re.split(r"[|\t]", text[: found.start()])[-1]
        counts = _COUNT.fullmatch(text, 0, found.start()) is not None
        force = any(map(names.meanings, _WORD.findall(cell)))
        alone = len(names.meant(cell.strip())) == 1 and not nothing and cell.strip()[0] not in "+-"
        alone = alone and not any(map(names.meanings, _WORD.findall(text, found.end(), last)))
        number = _FACTOR.match(cell) is not None and not counts
        term = (force and names.joint(cell.strip()) is None and not alone) or number
        return " " * len(found[0]) if term else found[0]

    return _TERM.sub(joined, text)


def _without_dash(plain: str, text: str) -> str:
    """A row of nothing without the dash where its T or C would stand: BD, 0, kN, -."""
    zero = _NOTHING_IN.search(text)
    if zero is None:
        return plain
    chars = list(plain)
    for found in _DASHED.finditer(text, zero.end() - 1):
        chars[found.start() : found.end()] = " " * len(found[0])
    return "".join(chars)


def _cells(text: str) -> list[Span]:
    """The places of the cells that hold something."""
    cuts = _BARS if _CLOSE.match(text) else _SPACED if re.search(r"\||\t", text) else _QUOTED
    places, at = [], 0
    for cut in cuts.finditer(text):
        places.append(Span(at, cut.start()))
        at = cut.end()
    places.append(Span(at, len(text.rstrip(" |"))))
    return [span for span in places if text[span.start : span.end].strip()]


def _is_equation(cell: str, names: Names) -> bool:
    """Whether a cell sets two sides equal and is no heading such as ΣFy = 0."""
    if _EQUATION.match(cell) is None:
        return False
    try:
        return heading_in(cell, 0, len(cell), names) is None
    except Broken:
        return False


def _names_what(cell: str, equation: str, names: Names) -> bool:
    """Whether a cell names the force that the sums of numbers in the next one come to."""
    words = _WORD.findall(equation.partition("=")[0])
    return len(names.meant(cell.strip())) == 1 and not any(map(names.meant, words))


def _between(said: list[str], n: int, first: int, names: Names) -> str:
    """The sign between a cell and the one behind it; `first` is the one that holds the equation."""
    if n + 1 == len(said):
        return ""
    if n < first:
        if said[n].rstrip().endswith(":"):
            return ""
        if n + 1 < first or not _names_what(said[n], said[first], names):
            return ":"
        return "" if _ADDED.fullmatch(said[first]) else "="
    behind = said[n + 1]
    if "=" not in behind and _VALUE.match(behind):
        return "⇒"
    return ";" if "=" in behind or _FIGURE.search(behind) else ""


def _lead(cells: list[str], names: Names) -> bool:
    """Whether a row gives the value of a force behind its own number, or behind a joint."""
    if len(cells) < 3 or len(names.meant(cells[1].strip())) != 1:
        return False
    word = cells[0].strip()
    counted = _NUMBER.fullmatch(word) is not None or names.joint(word) == word
    return counted and _VALUE.match(cells[2]) is not None
