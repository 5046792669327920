"""Which words of a line only speak of its truss: "slope 3:4, so", "45 deg both ways", "A pulls down on the mast"?

What is summed is judged with the numbers that stand in it. The words are taken out, and told.
"""

from __future__ import annotations

import re
from dataclasses import replace

from tutor.notation.elements.source import Source
from tutor.notation.elements.tree import Span
from tutor.notation.lines.found import trimmed
from tutor.notation.lines.layout import ANGLE
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import LETTERS, NAME
from tutor.notation.sides.heeded import denies

_SLOPE = r"(?:slopes?|gradients?|pitch(?:es)?|inclines?|inclinations?|steigung|neigung|pente|pendiente|triangles?|dreieck|ratios?(?: of (?:the )?(?:components?|sides|legs))?)"
_FIGURE = r"[0-9]+(?:\.[0-9]+)?"
_RATIO = rf"{_FIGURE}(?: ?(?:[:/]|-) ?{_FIGURE}){{1,2}}|{_FIGURE} +(?:in|to|on|up,?|rise|zu|over|across,?) +{_FIGURE}(?: +(?:over|across|run|along))?"
_LEADS = r"(?:where|with|since|because|as|for|and|by|using|from|note|here|given|mit|da)"
_OF = r"(?:the|a|an|its|their|of|all|each|this|it|they|[A-Z]\w{1,4}|members?|bars?|diagonals?|is|are|has|have|being|it's|der|die|das)"
_STEEP = re.compile(
    rf"(?:(?<=^)|(?<=[,;:.(] )|(?<=\()|(?<=[\w)\]}}] ))(?:{_LEADS}\b,? +)*+(?:(?!{_SLOPE}\b){_OF} +)*+(?:{_SLOPE} +(?={_SLOPE}\b))?"
    rf"(?:{_SLOPE}(?: +of)?(?: +[A-Z]\w{{1,4}})?(?: +(?:is|are|being|=|ist|was)| *=)?(?: +an?| +of)* +(?:{_RATIO})(?!\w)|(?:{_RATIO}) +{_SLOPE}\b)"
    r"(?=(?P<mark> *(?:[,;:)]|∴|⇒|→|$| so\b| hence\b| thus\b| therefore\b)| +-+ +(?=[A-Z][\w{}]* *[/:=])))",
    re.IGNORECASE,
)
_SIDES_AT = re.compile(
    rf"^ *{_FIGURE}(?: ?[-:] ?{_FIGURE}){{2}},?(?= +(?:at|for|from|in|bei|en|an) +(?:joint +)?(?P<joint>[A-Z]\w*) *[:,])(?P<mark>)"
)
"""The sides of a triangle before the joint that is looked at: 5-12-13 at A: ..."""
_ANGLE_NAMED = re.compile(
    rf"(?:(?<=^)|(?<=[,;(→←↑↓])) *(?:{_LEADS} +)?{ANGLE},? +(?:(?:is|being|as|for) +)?(?:(?:the|its) +)?(?:slope|angle|inclination|pitch|steigung|winkel|pente|[áa]ngulo) +(?:of|between|von|de) +"
    rf"(?:the +)?[A-Z][\w{{}}-]*(?: +(?:to|from|with|above|below|and|off|against) +(?:the +)?(?:horizontal|vertical|level|ground|floor|[A-Z]\w+))?(?P<mark> *(?:,|;|\)|\b(?:with|where|so|and|for which|mit|avec|con)\b)(?=[^:;]*(?:sin|cos|tan)))",
    re.IGNORECASE,
)
"""What an angle is of, before its size: β the slope of AD, with sin β = 3/5."""
_AT_ANGLE = re.compile(
    rf"(?<=[,;(])(?: *{_LEADS})? *{_FIGURE} ?(?:°|deg(?:rees)?)(?: +slope)? +(?:so|both|each|everywhere|again|all)\b[^=0-9+*/()]*(?P<mark>\)|$)"
)
_RISES = re.compile(
    rf"(?:(?<=^)|(?<=[,;:.] ))(?:{_LEADS}\b,? +)*(?P<force>[A-Z][\w{{}}-]*) +(?:falls|rises|drops|climbs|runs) +{_FIGURE}(?: ?(?:mm|cm|m|ft|in))? +(?:in|for|per|on|over|to|:) +(?:every +)?{_FIGURE}(?: ?(?:mm|cm|m|ft|in))?(?P<mark> *(?:[,;:]|\. |∴|⇒|→| so\b))"
)
"""How steep a member is: AB falls 6 in 12."""
_ITS_PART = re.compile(
    rf"(?:(?<=^)|(?<=[,;:.] ))(?:(?:{_LEADS}|so|hence|thus)\b,? +)*(?:its|the) +(?:vertical|horizontal|vert|hor|[xy])[.-]? *(?:part|component|comp|share)"
    rf"(?: +of +[A-Z][\w{{}}-]*)? +is +(?P<share>[^=,;:]*?)(?P<mark> *(?:[,;:]|\. |∴|⇒|→))"
)
"""What share of a member goes into a sum: its vertical part is AB/√5."""
_ACTS = re.compile(
    rf"(?<=[,;]) +(?P<joint>[A-Z]\w*) +(?:pulls|pushes|acts|points|lifts|holds|presses|bears|leans)\b(?P<rest>[ {LETTERS}',.-]*)(?P<mark>$)"
)
_PULLS_WITH = re.compile(
    r"(?:^|(?<=[:;,])) *(?P<force>[A-Z][\w{}]*) +(?:pulls|pushes|acts|lifts|holds|presses|bears)(?: +(?:up|down|left|right|to the|and))+ +with +(?P<mark>)(?=[HVXYa-z] *=[^=,;]*[/*(][^=,;]*=)"
)
"""What a force does, before the letter that its share goes by: BC pulls up with V = 21."""
_OF_FORCES = re.compile(r"\b(?:triangle of forces|force triangle)\b", re.IGNORECASE)
"""A triangle whose sides are forces, of which a proportion speaks."""
_TERMS = r"[^=:;,←→↑↓]*[\w)\]}][^=:;,←→↑↓]*?"
_SORTED = re.compile(
    rf"(?:(?<=^)|(?<=[:;,])) *(?:→ *{_TERMS} ←|← *{_TERMS} →|↑ *{_TERMS} ↓|↓ *{_TERMS} ↑) *{_TERMS}(?P<mark> *[,;:∴⇒]| +(?:so|hence|thus|therefore)\b)(?=[^=]*=)"
)
"""Forces sorted by the way they act before the equation of both: → A_x + 2 ← B_x so A_x + 2 = B_x."""
_CANCELS = re.compile(
    rf"(?<=[,;]) *(?:the +)?{_FIGURE}(?: ?/ ?{_FIGURE})? +(?:all +|just +)?(?:cancels?|drops? out|divides? out|falls? out|goes out)(?: +(?:out|everywhere|on both sides|throughout|of it|of all))*(?P<mark> *(?:[,;]|∴|⇒|→| so\b| hence\b| thus\b))"
)
"""A factor that all terms have: 12/13 cancels."""
_MAY = re.compile(
    rf"\b{_SLOPE}\b|\b(?:angle|winkel|ángulo|angulo)\b|^ *{_FIGURE} ?[-:] ?[0-9]|[→←↑↓][^=]*[→←↑↓][^=]*=|[0-9] +(?:(?:all|just) +)?(?:cancel|drop|divide|fall|goes)|\b(?:falls|rises|drops|climbs|runs) +[0-9]|\b(?:part|comp|component|share) +(?:of +[A-Z][\w{{}}-]* +)?is\b|[,;(][ a-z]*[0-9.]+ ?(?:°|deg)|(?:^|[,;:]) *[A-Z]\w* +[a-z]{{4}}",
    re.IGNORECASE,
)


def without_talk_of_truss(source: Source, names: Names) -> tuple[Source, tuple[Span, ...]]:
    """The source without what says how steep a member is or how a support acts, and its places as typed."""
    text = source.text
    if "=" not in text or _OF_FORCES.search(text) is not None or _MAY.search(text) is None:
        return source, ()
    told: list[Span] = []
    patterns = (
        _STEEP,
        _SIDES_AT,
        _ANGLE_NAMED,
        _AT_ANGLE,
        _ITS_PART,
        _RISES,
        _SORTED,
        _CANCELS,
        _ACTS,
        _PULLS_WITH,
    )
    for pattern in patterns:
        for found in list(pattern.finditer(text)):
            if pattern is _ACTS and not _of_a_joint(found, names):
                continue
            if pattern is _SIDES_AT and names.joint(found["joint"]) is None:
                continue
            if pattern is _ITS_PART and not _of_one_force(found, names):
                continue
            if pattern in (_RISES, _PULLS_WITH) and len(names.meant(found["force"])) != 1:
                continue
            start, end = found.start(), found.start("mark")
            told.append(source.span(*trimmed(text, start, end)))
            start, end = _with_marks(text, start, end)
            text = f"{text[:start]}{' ' * (end - start)}{text[end:]}"
    return replace(source, text=text), tuple(told)


def _of_a_joint(found: re.Match[str], names: Names) -> bool:
    """Whether a clause says of a joint, and of no force, what it does."""
    word = found["joint"]
    joint = names.joint(word) == word and not names.plainly(word)
    return joint and not any(map(denies, found["rest"].split()))


def _of_one_force(found: re.Match[str], names: Names) -> bool:
    """Whether a share is a force with its factor, before the sum that it goes into."""
    words = [word for word in NAME.findall(found["share"]) if names.meanings(word)]
    return len(words) == 1 and "=" in found.string[found.end() :]


def _with_marks(text: str, start: int, end: int) -> tuple[int, int]:
    """The place of words with the brackets around them, or with one of the marks that set them off."""
    if text[:start].endswith("(") and text[end : end + 1] == ")":
        return start - 1, end + 1
    mark = re.match(r" *(?:[,;:]| -+(?= ))", text[end:])
    before = text[:start].rstrip()
    if mark is None:
        return start, end
    if not before or (mark[0].endswith("-") and before[-1] in ",;:"):
        return start, end + mark.end()
    return (len(before) - 1, end) if before[-1] == "," and mark[0].endswith(":") else (start, end)
