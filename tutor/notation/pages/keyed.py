"""Is a line keyed in as a formula and nothing else, so that it need not be laid out first?"""

from __future__ import annotations

import re
import string

from tutor.notation.naming.symbols import POINTS
from tutor.notation.pages.raised_points import RAISED_POINT

_OF_A_FORMULA = frozenset(string.ascii_letters + string.digits + "_-+*/^=()[]{}. °√π⁰¹²³⁴⁵⁶⁷⁸⁹⁻")
"""All that a plain formula holds once its look-alikes are replaced."""
_GIVEN_OTHERWISE = frozenset("\t•÷")
"""What looks like a blank or a sign for times and may set statements apart, or divides by a whole fraction."""
_HEADED = re.compile(
    r" *(?:[Ee](?:[Ff]_?[xyXY]|[Mm][ _]?[A-Za-z])"
    r"|[(\[]?[0-9a-z]{1,3}(?:\.[0-9]{1,2})?[)\].] |0[0-9]|[0-9]+   )"
)
"""A sum with an E for its sign, or a number that the line goes by, where it begins."""
_NUMBERED = re.compile(r"[ .-][(\[][0-9a-z]{1,3}(?:\.[0-9]{1,2})?[)\]] *$")
"""The number that the line goes by, where it ends."""
_LETTERED = re.compile(
    r"[TtCc](?![A-Za-z_0-9])"
    r"(?:(?<![A-Za-z_0-9].)|(?<=[0-9].)|(?<=kN.)|(?<=lb.)|(?<=kip.)|(?<=k.))"
)
"""A letter for tension or compression."""
_EQUATED = re.compile(
    r"=(?: *0 +[*] "
    r"|[^=]*[0-9)\]](?: ?[A-Za-z]{1,4}(?:[ .*-][A-Za-z]{1,4})?)? +[A-Za-z][\w{}]* *="
    r"| *[0-9.]+[A-Za-z]\w*_[^=]*=)"
)
"""A second statement behind the first, with nothing between them but a blank, a star or a unit."""
_IN_FEET = re.compile(r"f(?:t|eet|oot)[ -]*[0-9]")
"""A length in feet and inches."""
_GROUPED = re.compile(
    r"[1-9](?<![\w.].)[0-9]{0,2}\."
    r"(?:[0-9]00|[0-9]{3} *(?:N|mm|lbs?)?\)? *$|[0-9]{3} *(?:N|mm|lbs?)(?!\w))(?![0-9])"
)
"""A point that may set off thousands."""
_POINTED = re.compile(r"[0-9]\.\([0-9]")
"""A point for times before a bracket."""
_SET_OUT = (_LETTERED, _EQUATED, _GROUPED, _POINTED, _IN_FEET, _NUMBERED)


def is_keyed(text: str, typed: str) -> bool:
    """Whether a text, `typed` with its look-alikes replaced, may go straight to the scanner."""
    return (
        _OF_A_FORMULA.issuperset(typed)
        and _GIVEN_OTHERWISE.isdisjoint(text)
        and (POINTS.isdisjoint(text) or RAISED_POINT.search(text) is None)
        and _HEADED.match(typed) is None
        and not any(each.search(typed) for each in _SET_OUT)
    )
