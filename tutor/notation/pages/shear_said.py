"""What is said of the numbers that a force follows from: "Shear in panel 2 is 48 - 30 = 18 kip = 0.6 F_CD"?"""

from __future__ import annotations

import re

from tutor.notation.elements.source import Source
from tutor.notation.naming.symbols import LETTERS

_WHERE = r"(?:in|at|across|through|between|on|(?:just +)?(?:to +the +)?(?:right|left) +of)"
_PLACE = r"(?:(?:the|panel|section|cut|joint|node|bay|and|[a-z]?[0-9]{1,2}|[a-z])(?:-[a-z]?[0-9]{0,2})?(?![\w]))"
_SHEAR = re.compile(
    rf"^ *(?:the +)?(?:panel +)?shear(?: +force)?(?: +{_WHERE}(?: +{_PLACE})+)? *(?:=|:|\bis\b) *"
    rf"(?=[-+(0-9.][^={LETTERS}]*=(?P<rest>.*))",
    re.IGNORECASE,
)


def without_shear(source: Source) -> Source:
    """The source with the numbers alone before a force that follows from them."""
    return source.rewritten(_SHEAR, lambda found: " " if "=" in found["rest"] else None)
