"""What does a line of a program or a calculator say? np.sin(np.radians(30)), hypot(3, 4), atan2(y, x).

Rewritten as one types it into a formula, column by column. A function with np. or math. before it
takes radians, and a number there that can only be in radians is read so; π always is.
"""

from __future__ import annotations

import math
import re

from tutor.notation.source import Source

_MAY_BE = re.compile(
    r"(?<!\w)(?:np|numpy|math|radians|deg2rad|degrees|rad2deg|hypot|a(?:rc)?tan2)(?!\w)|# *=",
    re.IGNORECASE,
)
_NESTED = r"(?:[^(),]|\((?:[^()]|\((?:[^()]|\([^()]*\))*\))*\))+"
_TAKING = re.compile(
    rf"(?<![\w.])(?:np|numpy|math)\. ?(?P<function>sin|cos|tan) ?\((?P<angle>{_NESTED})\)"
)
_IN_RADIANS = re.compile(
    rf"(?<![\w.])(?:(?:np|numpy|math)\. ?)?(?:radians|deg2rad) ?\((?P<angle>{_NESTED})\)", re.I
)
_IN_DEGREES = re.compile(
    rf"(?<![\w.])(?:(?:np|numpy|math)\. ?)?(?:degrees|rad2deg) ?\((?P<angle>{_NESTED})\)", re.I
)
_HYPOT = re.compile(
    rf"(?<![\w.])(?:(?:np|numpy|math)\. ?)?hypot ?\((?P<one>{_NESTED}),(?P<other>{_NESTED})\)", re.I
)
_ATAN2 = re.compile(
    rf"(?<![\w.])(?:(?:np|numpy|math)\. ?)?a(?:rc)?tan2 ?\((?P<up>{_NESTED}),(?P<across>{_NESTED})\)"
)
_PREFIX = re.compile(r"(?<![\w.])(?:np|numpy|math)\. ?(?=[a-z]+ ?\(|pi\b|sqrt)")
_COMES_TO = re.compile(r"(?<=[\w)]) +# *(?=[=≈] *[-+]?[0-9.])")
_NUMBER = re.compile(r" *[-+]?(?:[0-9]*\.[0-9]{3,}) *")
_PI = re.compile(r"(?<![A-Za-z])(?:np|numpy|math)\. ?pi(?![A-Za-z])|π")


def unprogrammed(source: Source) -> Source:
    """The source with functions of programs spelled as those that are read."""
    if _MAY_BE.search(source.text) is None:
        return source
    source = source.rewritten(_COMES_TO, " ")
    source = source.rewritten(_TAKING, _taking)
    for _ in range(4):
        before = source.text
        source = source.rewritten(_IN_RADIANS, lambda found: f"({found['angle']})")
        source = source.rewritten(_IN_DEGREES, lambda found: f"({found['angle']})")
        source = source.rewritten(
            _HYPOT, lambda found: f"sqrt(({found['one']})^2+({found['other']})^2)"
        )
        source = source.rewritten(_ATAN2, _atan2)
        if source.text == before:
            break
    return source.rewritten(_PREFIX, "")


def _taking(found: re.Match[str]) -> str:
    """A function of an angle that is in radians where it shows it: by π, or too small for degrees."""
    angle = found["angle"]
    number = _NUMBER.fullmatch(angle)
    radians = number is not None and abs(float(angle)) <= math.pi / 2
    if radians or _PI.search(angle) is not None:
        return f"{found['function']}(({angle}) rad)"
    return f"{found['function']}({angle})"


def _atan2(found: re.Match[str]) -> str:
    """The angle of a direction; where it points to the left, measured from +x all the same."""
    up, across = found["up"], found["across"]
    if across.strip().startswith("-"):
        return f"(180+atan(({up})/({across})))"
    return f"atan(({up})/({across}))"
