"""What does a line of a program or a calculator say? np.sin(np.radians(30)), sind(30), atan2(y, x).

Rewritten as one types it into a formula, column by column. A function with np. or math. before it
takes radians, and a number there that can only be in radians is read so; π always is.
sp.Eq(left, right) sets its two sides equal, and a number behind # is what a line came to.
"""

from __future__ import annotations

import math
import re

from tutor.notation.elements.source import Source

_FROM = r"(?:(?:np|numpy|c?math|Math|sp|sympy|sym)\. ?|std::)"
_MAY_BE = re.compile(
    rf"(?<!\w)(?:{_FROM}|radians|deg2rad|degrees|rad2deg|hypot|a(?:rc)?tan2(?!\w)|a?(?:sin|cos|tan)d ?\(|Eq(?:uality)? ?\(|frac ?\(|over\b|\w\['|syms?\b|matrix ?\(|array ?\(|sum ?\()"
    r"|<- ?[-0-9.(]|[*.] ?deg|\^@"
    r"|(?:#|//|%) *[-+=≈.0-9]|pi\b|π|^ *[{'\[]|' *:|[:=] *[\[{]",
    re.IGNORECASE,
)
_NESTED = r"(?:[^(),]|\((?:[^()]|\((?:[^()]|\([^()]*\))*\))*\))+"
_TAKING = re.compile(rf"(?<![\w.]){_FROM}(?P<function>sin|cos|tan) ?\((?P<angle>{_NESTED})\)")
_IN_RADIANS = re.compile(rf"(?<![\w.]){_FROM}?(?:radians|deg2rad) ?\((?P<angle>{_NESTED})\)", re.I)
_IN_DEGREES = re.compile(rf"(?<![\w.]){_FROM}?(?:degrees|rad2deg) ?\((?P<angle>{_NESTED})\)", re.I)
_HYPOT = re.compile(rf"(?<![\w.]){_FROM}?hypot ?\((?P<one>{_NESTED}),(?P<other>{_NESTED})\)", re.I)
_ATAN2 = re.compile(rf"(?<![\w.]){_FROM}?a(?:rc)?tan2 ?\((?P<up>{_NESTED}),(?P<across>{_NESTED})\)")
_OF_DEGREES = re.compile(r"(?<![\w.])(a?(?:sin|cos|tan))d ?(?=\()", re.IGNORECASE)
_TURNED_TO_RADIANS = re.compile(
    rf"(?<=\()(?P<angle> *[0-9.]+ *)\* *(?:{_FROM}?pi(?: ?\( ?\))?|π) */ *180(?:\.0*)? *(?=\))",
    re.I,
)
_RATIO = re.compile(rf"(?<![\w.]){_FROM}?Rational ?\( *([0-9]+) *, *([0-9]+) *\)")
_AS_NUMBER = re.compile(
    rf"(?<![\w.]){_FROM}?(?:float(?:32|64)?|mpf|vpa|double|array|matrix) ?\([\[ ]*(?P<number>[-+]?[0-9.e+-]+)[\] ]*\)",
    re.I,
)
_DEGREES = re.compile(r"(?<=[0-9]) ?\* ?(?:u\.|ureg\.)?deg(?:ree)?(?![\w])|(?<=[0-9])\^@")
_DECLARED = re.compile(r"^ *(?:syms?|var) [A-Za-z_0-9, ]+; *|%(?=pi\b)")
_INDEXED = re.compile(r"(?<=[A-Za-z])\['(?P<name>[\w-]{1,9})'\]")
"""An entry that goes by its name: F['AC']."""
_SET_EQUAL = re.compile(
    rf"^ *(?:\w{{1,12}} *= *)?{_FROM}?Eq(?:uality)? ?\( *(?P<left>.+), *(?P<right>[^,]+?) *\) *[;,]?$"
)
_ADDED_UP = re.compile(
    rf"(?<![\w.])(?:{_FROM}|f)?sum ?\([\[ ]*(?P<terms>{_NESTED}(?:[,;]{_NESTED})+?)[\] ]*\)", re.I
)
_BETWEEN_TERMS = re.compile(r"[,;](?![^()]*\))")
"""Terms that a sheet or a program adds up: SUM(-8/17*GK, -HK, -3400)."""
_CALLED = re.compile(r"(?<=pi) ?\( ?\)", re.IGNORECASE)
"""What stands behind π in the cell of a sheet: PI()."""
_PREFIX = re.compile(rf"(?<![\w.]){_FROM}(?=[a-z]+ ?\(|pi\b|sqrt)")
_COMES_TO = re.compile(
    r"(?<=[\w)])(?<!= 0)(?<!=0) +(?:#|//|%) *(?:[=≈] *(?=[-+]?[0-9.])|(?=[-+]?[0-9]+\.[0-9]+(?![\w.])))"
)
_SOLUTION = re.compile(r"^ *[A-Za-z]{3,10} *[:=] *(?=[\[{]{1,2} *['\"]?\w+['\"]? *:)")
_ENTRY = re.compile(
    r"^ *(?:\{ *)?(?:'(?P<name>\w{1,12})'|(?<=\{)(?P<bare>\w{1,12})) *: *(?P<value>[-+]?[0-9][^{}',:]*?) *\}? *,?$"
)
_NUMBER = re.compile(r" *[-+]?(?:[0-9]*\.[0-9]{3,}) *")
_OF_TWO = re.compile(rf"(?<![\w.\\])frac ?\((?P<top>{_NESTED}),(?P<bottom>{_NESTED})\)")
_OPERAND = r"(?:\{(?:[^{}]|\{[^{}]*\})*\}|\((?:[^()]|\([^()]*\))*\)|[\w.]+(?:_?\{[^{}]*\})?)"
_OVER = re.compile(
    rf"(?P<all>\{{ *)?(?P<top>{_OPERAND}) *\bover\b *(?P<bottom>[0-9.]+/[0-9.]+(?![\w.(/^])|{_OPERAND})(?(all) *\}})"
)
"""A fraction in the words of a formula editor, or as it is said: {8 over 17}, {F_AB} over {2}, 12 over 3/5."""
_ASSIGNED = re.compile(r"^(?P<name> *(?:[FSNT]_?)?[A-Z][0-9]?[A-Z][0-9]?) *<- *(?=[-0-9.(])")
_LISTED = re.compile(
    r"^(?P<said> *(?:[A-Za-z]{3,10} *[:=] *)?)[\[{]{1,2}(?P<inner>[^\[\]{}=<>]+=[^\[\]{}]*)[\]}]{1,2} *[;.]?$"
)
"""Equations in the brackets of a list: [AD = 32.0, AC = -30.0]."""
_PI = re.compile(rf"(?<![A-Za-z]){_FROM}pi(?![A-Za-z])|π")


def unprogrammed(source: Source) -> Source:
    """The source with functions of programs spelled as those that are read."""
    if _MAY_BE.search(source.text) is None:
        return source
    source = source.rewritten(_COMES_TO, " = ").rewritten(
        _ASSIGNED, lambda found: f"{found['name']} = "
    )
    source = source.rewritten(_DEGREES, "°").rewritten(_DECLARED, "")
    source = source.rewritten(_INDEXED, lambda found: f"_{{{found['name']}}}")
    source = source.rewritten(_LISTED, lambda found: found["inner"])
    for pattern in (_OF_TWO, _OVER):
        source = source.rewritten(
            pattern, lambda found: f"(({_bare(found['top'])})/({_bare(found['bottom'])}))"
        )
    source = source.rewritten(_SOLUTION, "").rewritten(_ENTRY, _entry)
    source = source.rewritten(_TURNED_TO_RADIANS, lambda found: found["angle"])
    source = source.rewritten(_CALLED, "")
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
    source = source.rewritten(_AS_NUMBER, lambda found: found["number"])
    source = source.rewritten(_RATIO, lambda found: f"({found[1]}/{found[2]})")
    source = source.rewritten(_OF_DEGREES, lambda found: found[1]).rewritten(_PREFIX, "")
    source = source.rewritten(_ADDED_UP, _added_up)
    return source.rewritten(_SET_EQUAL, lambda found: f"{found['left']} = {found['right']}")


def _bare(part: str) -> str:
    part = part.strip()
    return part[1:-1] if part[:1] == "{" else part


def _entry(found: re.Match[str]) -> str:
    """An entry of what a program printed: {F_AD: -25.0}."""
    return f"{found['name'] or found['bare']} = {found['value']}"


def _taking(found: re.Match[str]) -> str:
    """A function of an angle that is in radians where it shows it: by π, or too small for degrees."""
    angle = found["angle"]
    number = _NUMBER.fullmatch(angle)
    radians = number is not None and abs(float(angle)) <= math.pi / 2
    if radians or _PI.search(angle) is not None:
        return f"{found['function']}(({angle}) rad)"
    return f"{found['function']}({angle})"


def _added_up(found: re.Match[str]) -> str:
    return f"(({_BETWEEN_TERMS.sub(')+(', found['terms'].strip('[] '))}))"


def _atan2(found: re.Match[str]) -> str:
    """The angle of a direction; where it points to the left, measured from +x all the same."""
    up, across = found["up"], found["across"]
    if across.strip().startswith("-"):
        return f"(180+atan(({up})/({across})))"
    return f"atan(({up})/({across}))"
