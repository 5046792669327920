"""Is a line keyed in as a formula and nothing else, so that it need not be laid out first?"""

from __future__ import annotations

import re

from tutor.notation.pages.raised_points import RAISED_POINT

_SIGNS = str.maketrans("", "", "°√π⁰¹²³⁴⁵⁶⁷⁸⁹⁻")
"""What a plain formula may hold besides ASCII; with it, the text goes straight to the scanner."""
_GIVEN_OTHERWISE = frozenset("\t•÷")
"""What looks like a blank or a sign for times and may set statements apart, or divides by a whole fraction."""
_LAID_OUT = re.compile(
    r"= *0 +[*] |^ *[Ee](?:[Ff]_?[xyXY]|[Mm][ _]?[A-Za-z])|[^-+*/^=()\[\]{}.\w °√⁻]|(?<![A-Za-z_0-9])[TtCc](?![A-Za-z_0-9])|(?:[0-9]|kN|lb|kip|k)[TtCc](?![A-Za-z_0-9])"
    r"|[0-9]\.\([0-9]|=[^=]*[0-9)\]](?: ?[A-Za-z]{1,4}(?:[ .*-][A-Za-z]{1,4})?)? +[A-Za-z][\w{}]* *=|= *[0-9.]+[A-Za-z]\w*_[^=]*=|(?:ft|feet|foot)[ -]*[0-9]|(?<![\w.])[1-9][0-9]{0,2}\.(?:[0-9]00|[0-9]{3} *(?:N|mm|lbs?)?\)? *$|[0-9]{3} *(?:N|mm|lbs?)(?!\w))(?![0-9])|^ *[(\[]?[0-9a-z]{1,3}(?:\.[0-9]{1,2})?[)\].] |^ *(?:0[0-9]|[0-9]+   )|[ .-][(\[][0-9a-z]{1,3}(?:\.[0-9]{1,2})?[)\]] *$"
)


def is_keyed(text: str, typed: str) -> bool:
    """Whether a text, `typed` with its look-alikes replaced, may go straight to the scanner."""
    plain = text.isascii() or typed.translate(_SIGNS).isascii()
    laid_out = _LAID_OUT.search(typed) is not None
    plain = plain and (text.isascii() or RAISED_POINT.search(text) is None)
    return plain and _GIVEN_OTHERWISE.isdisjoint(text) and not laid_out
