"""What do people write shorter than a formula? ad3/5, bar 1-3, 10 (-), 10 kN (D): each is spelled as one types it."""

from __future__ import annotations

import re

from tutor.notation.elements.source import Source
from tutor.notation.elements.tree import Span
from tutor.notation.elements.units import FORCES
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import LETTERS

_MAY = re.compile(
    r"(?:^|[;,]) *Kn\b|[0-9] ?'|[#bk]-?'|\([^()]*$|[^\W\d_][0-9]|[(\[] ?[-+DZ] ?[)\]][ .]*$|[,;] *(?:[a-zA-Z.]{2,9},? +){0,2}(?:\([TC]\)|[0-9])|\b(?:bar|member|rod|stab|barre|barra) +[0-9]|(?:sin|cos|tan) ?\( ?[0-9.]+ ?°? *(?:=|$)|\broot\b|\b(?:really|actually|in fact)\b|\bas (?:a )?(?:pu|st|ti|te|co)|[0-9] +of +|[TCntpsd↑↓←→]\)? +[(\[](?:[^()]*[0-9] ?[-+*/]|[^()]*\bof +[0-9])",
    re.IGNORECASE,
)
_WITH_FACTOR = re.compile(
    rf"(?<![\w}}.])(?P<word>[{LETTERS}][{LETTERS}0-9_]*[{LETTERS}0-9](?:/[0-9]+(?:\.[0-9]+)?)?)(?![\w{{(.,°])"
)
_FACTOR = re.compile(r"[0-9]{1,2}(?:/[0-9]+(?:\.[0-9]+)?)?$|[0-9]+/[0-9]+(?:\.[0-9]+)?$")
_BY_FIGURES = re.compile(
    r"\b(?:bar|member|rod|stab|barre|barra) +(?P<one>[0-9]{1,2}) ?[-,/] ?(?P<other>[0-9]{1,2})(?![\w.,/])",
    re.IGNORECASE,
)
_MARKED = re.compile(
    rf"(?P<minus>(?:- ?)?)(?P<value>(?<![\w.,])[0-9][0-9.,]*(?: ?(?:{FORCES}))?) ?[(\[] ?(?P<mark>[-+DZ]) ?[)\]](?=[ .]*$)"
)


_NOT_CLOSED = re.compile(
    r"(?P<function>\b(?:sin|cos|tan)) ?\((?P<angle> ?[0-9.]+ ?°?)(?= *(?:=|$))"
)
_ASIDE_NOT_CLOSED = re.compile(
    rf"(?:(?<=[\w)\]] )|(?<=[\w)\]][,;] ))\([^()=]*[{LETTERS}]{{2}}[^()=]* [{LETTERS}]{{2,}} [^()=]*$"
)
_FOOT_POUNDS = re.compile(
    r"(?<=[0-9]) ?(?:'[- ]?(?:(?P<pounds>#|lbs?)|k(?:ips?)?)|(?:(?P<first>#|lbs?)|k(?:ips?)?)-?')(?![\w(])"
)
"""A moment in feet and pounds or kips: 10,920'#, 255'k."""
_ROOT = re.compile(r"(?<![A-Za-z])(?:square +)?root *(?:of +)?(?=[0-9(])", re.IGNORECASE)
_SET_OFF = re.compile(
    r"(?<=[0-9A-Za-z])(?:,|;) *(?:(?:neg(?:ative)?|minus|pos(?:itive)?),? +)?(?:(?:hence|so|thus|therefore|i\.e\.|ie),? +)?(?P<letter>\([TC]\))(?=[ .]*$)"
)
_SIZE_SAID = re.compile(
    rf"(?P<value>- ?(?P<size>[0-9][0-9.,]*[0-9]|[0-9])(?: ?(?:{FORCES}))?), *(?=(?P=size)(?: ?(?:{FORCES}))? *(?:\([TC]\)|[TC]\b|(?:in )?(?:tension|compression)\b)[ .]*$)"
)


_KNOT = re.compile(r"(?P<before>^ *|[;,] *)Kn\.? ?(?=(?P<joint>[A-Z]\w{0,2})\b)")
"""A Knoten cut short, which else reads as a unit."""
_REALLY = re.compile(
    r"\b(?P<so>(?:so|hence|i\.e\.|ie|thus|that is),? +)?(?:really|actually|in fact),? +(?=[0-9])",
    re.IGNORECASE,
)
_DRAWN_AS = re.compile(
    rf"(?P<name>(?<![\w}}])[{LETTERS}][\w{{}}-]*) +as +(?:a +)?(?P<way>push|pull|strut|tie|compression|tension)\b",
    re.IGNORECASE,
)


_LETTER_OF_ANGLE = re.compile(
    r"(?:(?<=[\w)\]*·] )|(?<=[*·]))(?P<letter>[sc])(?P<angle>[0-9]{2}(?:\.[0-9]+)?)(?![\w(])"
)
_SHARE_OF = re.compile(
    rf"(?P<share>(?<![\w.,/])(?:[0-9]+/[0-9]+|0?\.[0-9]+)) +of +(?:the +)?(?P<name>[{LETTERS}][\w{{}}]*)(?![\w'-])"
)
_SAID = (
    r"[TC]\b|tension\b|compression\b|(?:acting |to the )?(?:up|down|left|right)(?:wards?)?\b|[←→↑↓]"
)
_NUMBER = r"[0-9]+(?:[.,][0-9]+)?"
_SHARES_OF = r"(?P<share>half|a third|a quarter|(?<=/[0-9])) +of +(?:the +)?(?=[0-9])"
_WORKED = re.compile(
    rf"(?P<value>-? ?(?<![\w.,])[0-9][0-9.,]*(?: ?(?:{FORCES}))?(?: ?(?:{_SAID})| ?\((?:{_SAID})\))) +[(\[]"
    rf"(?P<work>[-+*/0-9.,() ]*[0-9)] ?[-+*/][-+*/0-9.,() ]*|(?:[0-9]+/[0-9])?{_SHARES_OF}{_NUMBER}(?: ?(?:{FORCES}))?)"
    r"[)\]](?=[ .]*$)"
)
"""A value of which is said which way it acts, and its working behind it: 12 T (3 + 9), 37.5 kN up (half of 75)."""
_SHARE = re.compile(_SHARES_OF)
_SHARES = {"half": "1/2*", "a third": "1/3*", "a quarter": "1/4*", "": "*"}


def unabridged(source: Source, names: Names) -> Source:
    """The source with a factor behind its force, a bar by its figures and a mark behind a value written out."""
    if _MAY.search(source.text) is None:
        return source
    source = source.rewritten(
        _KNOT, lambda found: f"{found['before']}Knoten " if names.joint(found["joint"]) else None
    )
    source = source.rewritten(_BY_FIGURES, lambda found: _bar(found, names))
    source = source.rewritten(_WITH_FACTOR, lambda found: _times(found, names))
    if source.text.count("(") > source.text.count(")"):
        source = source.rewritten(_ASIDE_NOT_CLOSED, lambda found: f"{found[0]})")
        source = source.rewritten(
            _NOT_CLOSED, lambda found: f"{found['function']}({found['angle']})"
        )
    source = source.rewritten(_LETTER_OF_ANGLE, lambda found: _sine_or_cosine(found, names))
    source = source.rewritten(_ROOT, "√").rewritten(_FOOT_POUNDS, _moment)
    source = source.rewritten(_SHARE_OF, lambda found: _share(found, names))
    source = _work_first(source, names)
    source = source.rewritten(_REALLY, lambda found: found["so"] or "so ")
    source = source.rewritten(_DRAWN_AS, lambda found: _drawn(found, names))
    source = source.rewritten(_SIZE_SAID, lambda found: f"{found['value']} = ")
    source = source.rewritten(_SET_OFF, lambda found: f" {found['letter']}")
    return source.rewritten(_MARKED, _signed)


def _sine_or_cosine(found: re.Match[str], names: Names) -> str | None:
    """The sine or cosine that one letter stands for right before its angle: AC s45."""
    if names.meanings(found[0]):
        return None
    return f"{'sin' if found['letter'] == 's' else 'cos'} {found['angle']}"


def _moment(found: re.Match[str]) -> str:
    return f" ft*{'lb' if found['pounds'] or found['first'] else 'kip'}"


def _times(found: re.Match[str], names: Names) -> str | None:
    """A force and the number that stands right behind it, where no name ends in that: ad3/5 is ad*3/5."""
    word = found["word"]
    if names.meanings(word.partition("/")[0]) or "=" not in found.string:
        return None
    for cut in range(len(word) - 1, 1, -1):
        if _FACTOR.match(word, cut) is not None and names.meanings(word[:cut]):
            return f"{word[:cut]}*{word[cut:]}"
    return None


def _share(found: re.Match[str], names: Names) -> str | None:
    """A part of a force in words, 3/5 of cd, as a product."""
    return f"{found['share']} {found['name']}" if names.meanings(found["name"]) else None


def _work_first(source: Source, names: Names) -> Source:
    """The working of a value, behind it in brackets, set equal to the value."""
    worked = _WORKED.search(source.text)
    if worked is None:
        return source
    start = worked.start("value")
    before = source.text[:start].rstrip(" =")
    named = len(names.meant(before.strip())) == 1
    if before == source.text[:start].rstrip() and before.strip() and not named:
        return source
    lead = (Span(0, len(before)), " = ") if named else (Span(0, start),)
    work, value = Span(*worked.span("work")), Span(*worked.span("value"))
    swapped = source.made_of([*lead, work, " = ", value])
    at = source.text[:start].rfind("=")
    return swapped.rewritten(
        _SHARE, lambda found: _SHARES[found["share"]] if found.start() > at else None
    )


def _bar(found: re.Match[str], names: Names) -> str | None:
    """A member by the figures of its two joints, where all joints go by one letter and a figure."""
    word = f"F_{{{found['one']}{found['other']}}}"
    return word if len(names.meanings(word)) == 1 else None


def _drawn(found: re.Match[str], names: Names) -> str | None:
    """A force as a push, said to be drawn so."""
    named = names.meanings(found["name"])
    return f"{found['name']} drawn as a {found['way']}" if named else None


def _signed(found: re.Match[str]) -> str:
    """A value with its sign or its letter behind it as one types it: 10 (-) is -10, 10 (D) is 10 C."""
    if found["mark"] in "DZ":
        return f"{found['minus']}{found['value']} {'C' if found['mark'] == 'D' else 'T'}"
    sign = "-" if found["mark"] == "-" else ""
    return f"{found['minus'] or sign}{found['value']}"
