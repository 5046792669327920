"""What does a remark on the signs say, "(tension positive)", "Zug +"? That the signs are as here, and no T.

Words for the opposite, "compression positive", are left for the reader of results.
"""

from __future__ import annotations

import re

from tutor.notation.source import Source

_TENSION = (
    r"(?:tensions?|tensile(?: forces?)?|T|ties?|pull|zug(?:kraft|kr[äa]fte)?|traction|tracci[oó]n)"
)
_PUSH = r"(?:compressions?|compressive(?: forces?)?|C|struts?|push|druck(?:kraft|kr[äa]fte)?|compresi[oó]n)"
_IS = r"(?: +(?:is|are|as|being|taken|reckoned|counts?|assumed|ist|wird|est|es))*(?: *[:=])? *"
_POSITIVE = r"(?:positive|positiv[oe]?|pos\b\.?|\+ ?ve\b|\+(?= *(?:[),;.]|$)))"
_NEGATIVE = r"(?:negative|negativ[oe]?|neg\b\.?|- ?ve\b|-(?= *(?:[),;.]|$)))"
_SAYS = (
    rf"(?:{_TENSION}{_IS}{_POSITIVE}|{_POSITIVE}(?: *= *| +(?:is|in|for|means) +| +){_TENSION}\b)"
)
_OTHER = rf"(?:[,;/]? *(?:and +)?{_PUSH}{_IS}{_NEGATIVE})?"
_LEAD = (
    r"(?:(?:with|taking|using|by|in) +)?(?:(?:the +|my +)?(?:sign )?convention *(?:is|:|=|,|-)? *)?"
)
_CONVENTION = re.compile(
    rf"^ *{_LEAD}{_SAYS}{_OTHER} *[,:;]|(?P<open>[(\[]) *{_LEAD}{_SAYS}{_OTHER} *[)\]]|(?:[,;] *|\b){_LEAD}(?<![\w=+-])(?<![0-9] ){_SAYS}{_OTHER}(?= *(?:[,;:.]|$))",
    re.IGNORECASE,
)


_UPWARD = r"(?:up(?:wards?)?|(?:to the )?right(?:wards?)?|(?:(?:anti-?|counter-?)?clock(?:wise)?|a?cw|ccw)\b)"
_AXES = re.compile(
    rf"^ *(?:taking|with|reckoning|counting|assuming|considering) +{_UPWARD}(?:(?: and|,) +{_UPWARD})*"
    rf"(?: +(?:is|are|as|being|to be|taken))* +{_POSITIVE} *[,:;]",
    re.IGNORECASE,
)
_AXES_BEHIND = re.compile(
    rf"(?<=[\w)\]}}°])(?: *[,;] *| +)(?:(?:taking|with) +)?{_UPWARD}{_IS}{_POSITIVE}(?= *(?:[,;]|$))",
    re.IGNORECASE,
)
_MEASURED = re.compile(
    r"(?<![\w.])(?P<size>[0-9]+(?:\.[0-9]+)?)-(?P<unit>kips?|kN|N|lb|k|ft|foot|m|mm)(?= [a-z]{3})"
)


def without_convention(source: Source) -> Source:
    """The source without words that say which senses are positive, where they are so here; 6-kip load as 6 kip load."""
    source = source.rewritten(_MEASURED, lambda found: f"{found['size']} {found['unit']}")
    return source.rewritten(_CONVENTION, " ").rewritten(_AXES, " ").rewritten(_AXES_BEHIND, " ")
