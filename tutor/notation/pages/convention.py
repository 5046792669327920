"""What does a remark on the signs say, "(tension positive)", "Zug +"? That the signs are as here, and no T.

Words for the opposite, "compression positive", are left for the reader of results.
"""

from __future__ import annotations

import re

from tutor.notation.elements.source import Source

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
_FORCE_IN = (
    r"(?:the +|an? +|all +)?(?:(?:(?:axial|bar|member|normal|tensile) +)?(?:forces?|tensions?|pulls?)(?: +(?:in|of) +(?:the|an?|each|any|every|all))?(?: +(?:in +)?(?:bars?|members?|rods?))?"
    r"|stabkr[äa]ft(?:e)?|effort(?: normal)?|fuerza axial|normalkr[äa]ft(?:e)?)"
)
_LETTER_OF_ALL = re.compile(
    rf"(?:^|(?P<behind>[,;] *)) *(?:(?:let|with|where|and|mit|avec|con) +)?(?-i:(?P<letter>[A-Z])) *(?:=| is\b| are\b| be\b| being\b| stands? for\b| denotes?\b| for\b) *{_FORCE_IN}(?(behind)(?= *(?:[,;.]|$))| *[,:;])",
    re.IGNORECASE,
)
"""A letter that the forces of all members go by: let S = force in bar."""
_MEASURED = re.compile(
    r"(?<![\w.])(?P<size>[0-9]+(?:\.[0-9]+)?)-(?P<unit>kips?|kN|N|lb|k|ft|foot|m|mm)(?= [a-z]{3})"
)


def without_convention(source: Source) -> Source:
    """The source without words that say which senses are positive, where they are so here; 6-kip load as 6 kip load."""
    source = source.rewritten(_MEASURED, lambda found: f"{found['size']} {found['unit']}")
    source = _with_one_letter(source)
    return source.rewritten(_CONVENTION, " ").rewritten(_AXES, " ").rewritten(_AXES_BEHIND, " ")


def letter_of_all(text: str) -> str | None:
    """The letter that a text says the forces of all members go by, where it says nothing else."""
    found = _LETTER_OF_ALL.fullmatch(f"{text.strip(' .')},")
    return found["letter"] if found is not None and found["letter"] in _USUAL else None


_USUAL = "FSNTP"
"""Letters that the force in a member goes by anyway."""


def _with_one_letter(source: Source) -> Source:
    """The source without words for the letter of all members, and with that letter as one that they go by."""
    found = _LETTER_OF_ALL.search(source.text)
    if found is None:
        return source
    source = source.rewritten(_LETTER_OF_ALL, " ")
    if found["letter"] in _USUAL:
        return source
    own = re.compile(rf"(?<![\w}}]){found['letter']}_?(?=\{{?[A-Z][0-9]?-?[A-Z])")
    return source.rewritten(own, "F_")
