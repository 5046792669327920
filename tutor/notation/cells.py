"""How does a row of a table give an equation? | A | ΣFy | A_y + 0.6 F_AD = 0 | -25 kN |

Cells before the equation are its headings, each set off by a colon; what stands behind it is what
follows. The columns stay as they are.
"""

from __future__ import annotations

import re
from dataclasses import replace

from tutor.notation.heading import heading_in
from tutor.notation.names import Names
from tutor.notation.source import Source
from tutor.notation.tree import Span
from tutor.notation.unreadable import Broken

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
    if _EQUALS_ALONE.search(text) is not None:
        text = _SIGN_ALONE.sub(lambda found: re.sub(r"[|\t]", " ", found[0]), text)
    places = [span for span in _cells(text) if not _BULLET.fullmatch(text, span.start, span.end)]
    text = text[: places[0].start].translate(_BLANK) + text[places[0].start :] if places else text
    said = [text[span.start : span.end] for span in places]
    first = next((n for n, cell in enumerate(said) if _is_equation(cell, names)), None)
    if first is None:
        lead = places[1].start if _lead(said, names) else 0
        plain = source.text if "|" in text else source.text.replace('"', " ")
        return replace(source, text=" " * lead + plain[lead:])
    made = [" "] * len(text)
    for n, span in enumerate(places):
        made[span.start : span.end] = said[n]
        counts = n == 0 and first == 1 and _COUNT.fullmatch(said[0]) and text[span.end] == "\t"
        mark = "" if counts else _between(said, n, first, names)
        made[span.end : span.end + len(mark)] = mark
    return replace(source, text="".join(made).replace("\t", " "))


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
        return "=" if n + 1 == first and _names_what(said[n], said[first], names) else ":"
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
