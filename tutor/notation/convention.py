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


def without_convention(source: Source) -> Source:
    """The source without words that say tension is the positive sense."""
    return source.rewritten(_CONVENTION, " ")
