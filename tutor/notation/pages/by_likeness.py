"""Which value is given by its likeness to another force: "B_y same as A_y, 16 kN ↑", "FE: same as DE by symmetry, 8 kN C"?

It is the value of the force named first, and of the other one too where nothing is said of symmetry: "GH same as
FG = -25" is GH = FG = -25. A likeness by symmetry goes behind the value in brackets.
"""

from __future__ import annotations

import re

from tutor.notation.elements.source import Source
from tutor.notation.elements.tree import Span
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import LETTERS

_NAME = rf"[{LETTERS}][\w{{}}'-]*"
_WAY = r"(?:in |to the |acting )?(?:[TtCc]\b|[(\[][TtCc][)\]]|[(\[]?[←→↑↓][)\]]?|(?:tension|compression|tens|comp|up|down|left|right)(?:wards?)?\b)"
_ALIKE = re.compile(
    rf"^ *(?P<name>{_NAME})(?: *[:,=]| +(?:is|acts))? +(?P<said>(?:also +)?(?:just +)?(?:the +)?(?:same|alike|equal) +(?:as|to|with) +(?P<other>{_NAME})"
    r"(?P<symmetry>,? +\(?(?:by|from|through|because of) +(?:sym\w*)\)?)?)"
    rf"(?: *(?:[,;:=∴⇒→]|[-=]+>) *(?:(?:so|thus|hence|then)(?: also)?,? +)?| +(?:so|thus|hence)(?: also)?,? +)"
    rf"(?P<value>[-+]? ?[0-9][0-9.,]*(?: ?(?:k?N|MN|kips?|k|lbs?))?(?:,? *{_WAY})?)(?:[ .]*$|(?=, [a-z]{{2}}[a-z ]*$))",
    re.IGNORECASE,
)


def by_likeness(source: Source, names: Names) -> Source:
    """The source with such a value set equal to its force, before what it is said to be like."""
    found = _ALIKE.match(source.text)
    if found is None or len(names.meant(found["name"])) != 1 or not names.meanings(found["other"]):
        return source
    name, said, other, value = (
        Span(*found.span(key)) for key in ("name", "said", "other", "value")
    )
    rest = Span(found.end(), len(source.text))
    if found["symmetry"] is None:
        return source.made_of([name, " = ", other, " = ", value, rest])
    return source.made_of([name, " = ", value, " (", said, ")", rest])
