"""Does a clause only say into which two parts a load falls: 10 kN = 7.07 left & 7.07 down?"""

from __future__ import annotations

import re
from math import hypot, isclose

_UNIT = r"(?: ?(?:kN|MN|N|lbf?s?|kips?|k)\b)?"
_NUMBER = r"[0-9]+(?:[.,][0-9]+)?"
_ALONG = r"(?:to the )?(?:left|right)(?:wards?)?|[←→]"
_UPRIGHT = r"up(?:wards?)?|down(?:wards?)?|[↑↓]"
_PART = rf"(?P<{{0}}>{_NUMBER}){_UNIT} *(?P<{{1}}>{_ALONG}|{_UPRIGHT})"
_PARTED = re.compile(
    rf" *(?:the +)?(?:(?:load|force|pull|push|wind|cable|rope|gust) *)?(?:(?:at|on|in|of) +\w{{1,3}} *)?(?P<whole>{_NUMBER})?{_UNIT}"
    rf"(?: +(?:load|force|pull|push) *)?(?: +(?:at|on) +\w{{1,3}})? *(?:=|:|\bis\b|\bgives\b) *{_PART.format('one', 'way')} *(?:,|&|\+|and)* *{_PART.format('other', 'across')}[ .]*",
    re.IGNORECASE,
)
NEAR = 0.01


def parts_a_load(clause: str) -> bool:
    """Whether a clause says no more than the part of a load along x and the one along y, and truly."""
    found = _PARTED.fullmatch(clause)
    if found is None:
        return False
    along = [re.fullmatch(_ALONG, found[way], re.IGNORECASE) for way in ("way", "across")]
    if (along[0] is None) == (along[1] is None):
        return False
    one, other = (float(found[part].replace(",", ".")) for part in ("one", "other"))
    whole = found["whole"]
    return whole is None or isclose(float(whole.replace(",", ".")), hypot(one, other), rel_tol=NEAR)
