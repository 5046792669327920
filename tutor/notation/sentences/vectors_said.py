"""Which clauses only say along which unit vectors members lie: "u_CA = (-4/5, -3/5), u_CB = (4/5, -3/5); x: ..."?

Asked where a line cannot be read with them. What is summed is judged with the numbers that stand in it.
"""

from __future__ import annotations

import re

from tutor.notation.elements.source import Source
from tutor.notation.elements.tree import Span
from tutor.notation.lines.found import trimmed
from tutor.notation.naming.names import Names

_NUMBER = r"-? ?[0-9.]+(?: ?/ ?-?[0-9.√]+)?"
_VECTOR = re.compile(
    rf"(?:^|(?<=[,;:])|(?<= and)|(?<= with)|(?<= where)) *(?P<letter>[a-zλ])_?\{{?(?P<member>[A-Z]\w{{1,4}})\}}? *= *"
    rf"[(⟨<\[] *{_NUMBER} *[,;] *{_NUMBER} *[)⟩>\]] *(?P<mark>[,;.:]|$)"
)


def without_vectors(source: Source, names: Names) -> tuple[Source, tuple[Span, ...]] | None:
    """The source with blanks for such clauses before its equation, and their places; None where there is none."""
    text, told, gone = source.text, list[Span](), list[Span]()
    for found in _VECTOR.finditer(text):
        if not names.meant(found["member"]):
            return None
        told.append(source.span(*trimmed(text, found.start(), found.start("mark"))))
        gone.append(Span(*found.span()))
    made = source.blanked(gone)
    return (made, tuple(told)) if told and "=" in made.text else None
