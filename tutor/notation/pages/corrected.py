"""What does a writer take back in the same breath: "= 10.4 t, no 10.4 c", "12 kN C, sorry, T"?

What is said last holds. Where "no" may also deny, T no C, it is asked which of both is meant.
"""

from __future__ import annotations

import re

from tutor.notation.elements.source import Source
from tutor.notation.elements.unreadable import Broken
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import LETTERS
from tutor.notation.pages.amended import SORRY, amended
from tutor.notation.pages.terms_amended import terms_amended

_WAY = r"(?:[TCtc]|tens(?:ion)?|comp(?:r(?:ession)?)?|ties?|struts?)"
_VALUE = rf"[-+]? ?[0-9][0-9.,]*(?: ?(?:kN|MN|N|lbs?|kips?|k))?(?: *[(\[]?\b{_WAY}\b[)\]]?)?"
_WORK = r"(?:[-+]? ?[0-9][0-9.,]*(?: *[-+*/] *[0-9][0-9.,]*)+ *= *)?"
_DENIED = re.compile(
    rf"(?<=[0-9NbpskK:|;] )(?P<first>{_WAY}),? +no,? +(?P<second>{_WAY}) *$", re.IGNORECASE
)


def corrected(source: Source, names: Names) -> Source:
    """The source with only what is said last. Raises Broken where it may be a denial as well."""
    if _MAY.search(source.text) is None:
        return source
    source = terms_amended(source.rewritten(_VALUE_ANEW, _alone), names)
    source = amended(source, names)
    source = source.rewritten(_BROKEN_OFF, lambda found: _begun_anew(found, names))
    source = source.rewritten(_TAKEN_BACK, _from_anew)
    if (found := _DENIED.search(source.text)) is not None:
        span = source.span(*found.span("second"))
        raise Broken("value/two", span.start, span.end)
    return source


_ALONE = r"(?:no,? +wait|wait,? +no|oops|sorry(?! +for\b)|correction|i meant?|make that|should (?:be|have been)|scrap that)"
"""Behind it a line may go on at once."""
_OPENS = (
    rf"(?:{_ALONE}|(?:wait|hang on|hold on)(?! +for\b)|scrap|(?:that'?s +)?wrong\b|(?:i +)?forgot\b|(?:actually|no),? +(?=[0-9])"
    r"|(?:oh +)?no,? +(?:they|it|its|it's|that|this|the|there|both|i)\b|no,? +(?:the +)?(?:arm|lever|load|force|angle|slope|distance|width|height|span)s? +(?:is|are|was) +-?(?=[0-9.]+ *[:,;])|nope|no(?= *(?:[:,;.!]|-))|(?<=(?:hm|oh|ah) )no +(?=[A-Z]\w* +(?:is|has|was|lies|sits)\b)|(?<=hmm )no +(?=[A-Z]\w* +(?:is|has|was|lies|sits)\b)|(?:plus|minus|times|over|sine?|cos(?:ine)?|tan)\b,? +(?:of course|obviously)(?=[:,]))"
)
"""It begins what is said of a slip. No before anything else, no load at C, takes nothing back."""
_VALUE_ANEW = re.compile(
    rf"(?<![\w}}])(?P<name>[A-Za-z][\w{{}}]*) *= *(?:{_WORK})?{_VALUE}(?: *(?:[,;.]|-+|\.{{2,3}}))? +(?:{_OPENS}|i +mean|rather)\b[^=:+*/^<>0-9]*?(?::|[,;.]|-+)? +(?=(?P=name) *=)",
    re.IGNORECASE,
)
"""A value that is taken back before it is given anew: B_x = 28, no wait, B_x = 29.3."""
_TAKEN_BACK = re.compile(
    r"^[^;]*?(?:=|(?<![a-z])[-+] ?[\w.(]).*?[\w)\]}](?: *[,;.]| +-+| *\.{2,3})? +(?:(?:oh|ah|hmm?),? +)?\(?"
    rf"(?:{_OPENS}(?:[^=:+*/^<>]|\+(?= ?[0-9.]+ *:))*?(?::|[,;.](?= )|\)| --+(?= )|(?<=(?-i:[a-z]{{3}})) -(?= )|\.{{2,3}}|\bso\b(?! *\+)| (?:[-=]+>|[→⇒])) *|{_ALONE}[,:]? +)"
    r"(?! *[+*/^=])(?! *[A-Za-z]\w* +(?:is|are|was|has|goes|turns|should|must)\b)(?=(?:(?:Σ|sum|joint|node|moments?|at )[^=:]*:)?[^=:]*[A-Za-z][^=:]*=)",
    re.IGNORECASE,
)
"""A whole equation, or its beginning, that is taken back before it is written anew: "... = 357 no wait, ...: 12 E_y = ..."."""


_BROKEN_OFF = re.compile(
    rf"^(?P<head>[^=:;]*: *)?[^=:;]*?[-+][^=:;]*?[\w)\]}}](?: *\.{{2,3}}| *…| -+) +no,? +(?P<name>[{LETTERS}][\w{{}}]*) +(?:is|has|was|goes|acts|points|pulls|pushes|lies|sits|comes|leans|slopes)\b[^=:;+*/^<>]*?[.,;:] +"
    r"(?=[^=:;]*[A-Za-z][^=:;]*=)",
    re.IGNORECASE,
)
"""A sum that is broken off and written anew: x: AB + BC .. no BC pulls left. AB - BC + 4 = 0."""
_BEGINS = re.compile(r"(?:^|[,;:∴⇒→>]|\b(?:so|hence|thus|then|gives|get))\s*$", re.IGNORECASE)


def _alone(found: re.Match[str]) -> str | None:
    """Nothing for a value that is a statement by itself; what a sum comes to stays."""
    return "" if _BEGINS.search(found.string[: found.start()]) else None


def _begun_anew(found: re.Match[str], names: Names) -> str | None:
    """The heading alone of a sum that is broken off for what is said of a force or a load of it."""
    named = names.meanings(found["name"]) or names.joint(found["name"])
    return found["head"] or "" if named else None


def _from_anew(found: re.Match[str]) -> str | None:
    """Nothing for an equation that is taken back before it is written anew: "AB + AC = 0, no wait: AB - AC = 0".

    Behind a bracket within a sum it goes on: "12·4 (should be minus) + 18·8 = 0".
    """
    behind = found.string[found.end() :].partition("=")[0]
    goes_on = found[0].rstrip().endswith(")") and behind.lstrip()[:1] in ("+", "-", "*", "/")
    return None if goes_on or _VALUE_ALONE.fullmatch(behind) else ""


_VALUE_ALONE = re.compile(
    r" *[,;]? *(?!(?:arm|lever|distance)\b)(?:(?:so|hence|then|thus|and)\b,? *)?[A-Za-z][\w{}]* *"
)
_MAY = re.compile(
    rf"\b(?:rather|of course|obviously|no|nope|scrap|should|hang|hold|wrong|forgot|actually|of course|{SORRY})\b",
    re.IGNORECASE,
)
