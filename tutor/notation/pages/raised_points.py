"""Which points set at half height are decimal ones, 0·6 AC, and which are signs for times, 0·6 + 4·24?

Without a blank on either side both look alike. A nought before one shows that a decimal may be meant, and so does a
value that a line ends in, = 12·5 kN; then it is meant by all points of the line.
"""

from __future__ import annotations

import re

from tutor.notation.elements.source import Source
from tutor.notation.elements.tree import Span
from tutor.notation.lines.found import Found
from tutor.notation.naming.symbols import LETTERS, POINTS

_POINTS = "".join(POINTS)
_BEGUN = rf"(?<![\w.,{_POINTS}])0[{_POINTS}][0-9]"
_ENDED = rf"(?:^|[,;:⇒→∴]) *(?:(?:so +)?[A-Z][\w{{}}]* *= *)?[-−]?[0-9]+[{_POINTS}][0-9]+(?= *(?:[A-Za-z#]{{1,4}}\b[ ,]*)?(?:[(\[]?[TtCc]\b[)\]]?)? *$)"
RAISED_POINT = re.compile(rf"{_BEGUN}|{_ENDED}")
_ANY = re.compile(
    rf"(?<![\w.,{_POINTS}])(?P<whole>[0-9]+)[{_POINTS}](?P<places>[0-9]+)(?![\w.,{_POINTS}]*[0-9])"
)
_SHOWN = re.compile(rf"(?<![\w.,])0[{_POINTS}][0-9]+ ?[{LETTERS}(\[]|{_ENDED}")
_PLAIN_POINT = re.compile(r"[0-9][.,][0-9]")


def with_raised_points(source: Source, text: str, found: Found) -> Source:
    """The source with points at half height as decimal ones, where that is chosen; `text` is the line as typed.

    It is the usual choice where a force stands behind one, or the line ends in one, and no number has its point on the line.
    """
    if RAISED_POINT.search(text) is None:
        return source
    found.open.add("raised")
    usual = _SHOWN.search(text) is not None and _PLAIN_POINT.search(text) is None
    if found.choice.raised is usual:
        return source
    chars, typed = list(source.text), source.typed(text)
    for number in _ANY.finditer(typed):
        at = number.end("whole")
        if chars[at] == "*":
            chars[at] = "."
            found.taken.append(("raised", source.place(Span(*number.span()))))
    return Source("".join(chars), source.starts, source.ends, source.size)
