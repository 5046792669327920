"""What do forces come to together? "Ay + By - 10 - 12 = 0 → sum 22" says that Ay + By = 22."""

from __future__ import annotations

import re

from tutor.notation.elements.source import Source
from tutor.notation.elements.units import FORCES
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import LETTERS

_NAME = rf"[{LETTERS}][\w{{}}'-]*"
_VALUE = rf"(?P<value>[0-9][0-9.,]*(?: ?(?:{FORCES}))?)"
_WORD = r"(?:sum|total|summe|somme|suma|add(?:s|ing)? up to|come to|make|(?:all |both )?together|altogether)"
_SO = r"(?:(?:so|hence|thus|i\.e\.|ie|and),? +)?"
_TOTAL = re.compile(
    rf"(?P<mark>[,;:→⇒∴(\[]|=>|->|-->) *{_SO}(?:(?:the|they|their|in|which|it|both) +)?{_WORD}(?: +is| of| they are)? *[=:]? *{_VALUE} *[)\]]?(?=[ .]*$)",
    re.IGNORECASE,
)
_IN_TOTAL = re.compile(
    rf"(?P<mark>[;→⇒∴(\[]|=>|->|-->) *{_SO}{_VALUE} +(?:(?:in )?(?:total|sum|all)|(?:all |both )?together|altogether) *[)\]]?(?=[ .]*$)",
    re.IGNORECASE,
)
_MAY = re.compile(r"sum|som|tot|add|come|make|toge|\ball\b", re.IGNORECASE)
_ADDED = re.compile(rf"(?:^|:) *(?P<forces>{_NAME}(?: *\+ *{_NAME})+)(?= *=| *-[-+*/0-9., ()]*=)")
"""Forces that are added up at the beginning of an equation."""


def totalled(source: Source, names: Names) -> Source:
    """The source with what its forces come to together as an equation."""
    if _MAY.search(source.text) is None:
        return source
    added = _ADDED.search(source.text)
    if added is None or not all(
        len(names.meanings(force.strip())) == 1 for force in added["forces"].split("+")
    ):
        return source

    def spelled(found: re.Match[str]) -> str | None:
        before = found.string[: found.start()]
        if "=" not in before:
            return None
        mark = ";" if found["mark"] in "([,:" else found["mark"]
        return f"{mark} {added['forces']} = {found['value']}"

    return source.rewritten(_TOTAL, spelled).rewritten(_IN_TOTAL, spelled)
