"""Which number does a comma before three figures make, 20,975, where the loads rule one of both out?"""

from __future__ import annotations

import re

from tutor.model import Problem
from tutor.notation import Unreadable

FARTHEST = 100.0
"""No force is so many times all loads together."""
_COMMA = re.compile(r"(?<![\w.,])(?P<whole>[0-9]{1,3}),(?P<rest>[0-9]{3})(?![0-9.,])")


def with_decimals(problem: Problem, text: str, unreadable: Unreadable) -> str | None:
    """The text of a value with its comma as a point, where with thousands it could be no force here."""
    if unreadable.code != "comma" or len(_COMMA.findall(text)) != 1:
        return None
    loads = sum(abs(part) for load in problem.loads for part in load.vector)
    found = _COMMA.search(text)
    if found is None or float(found["whole"] + found["rest"]) < FARTHEST * loads:
        return None
    return _COMMA.sub(r"\g<whole>.\g<rest>", text)
