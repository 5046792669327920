"""Which letters does a line bring in beside its equation?

"call CE x. 0.8x = 150", "write s for 3/5: ...", "P_1 = 9 kN, P_2 = 6 kN: ...", "P = AB, Q = BC: ...",
"..., th = atan(8/15)". Asked only where a line cannot be read otherwise: each letter is spelled as what it is said
to be.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from tutor.notation.elements.source import Source
from tutor.notation.elements.tree import Span
from tutor.notation.elements.unreadable import Broken
from tutor.notation.headings.heading import heading_in
from tutor.notation.letters.letter_said import force_found, is_so, letter_replaced, letter_said
from tutor.notation.naming.names import Names

_END = re.compile(
    r"[:;⇒∴](?!=)|[,.](?![0-9])|(?<=[0-9])[,](?= )|&|\b(?:and|then|so|we (?:get|have|find|write)|gives)\b|$"
)
_CLAUSE = re.compile(
    r"(?<=[;,]) *(?P<said>(?:[^;,=]|,(?=[0-9]))+=(?:[^;,=]|,(?=[0-9]))+)(?:[;,](?![0-9]))"
)
_BEHIND = re.compile(
    r"(?:[;(]|,(?![0-9])| (?=where |with |for |if |when |and ))(?P<said>[^;,()]*(?:\([^()]*\)[^;,()]*)*)\)? *\.?$"
)
_LETTER = r"(?:[a-z]{1,3}|[A-Z])"
_WITHIN = re.compile(
    rf"(?P<open>\()?(?(open)|(?:[;,]|(?= (?:where|with|mit|wobei|avec|con) ))) *(?P<said>(?:(?:where|with|and|mit|wobei|avec|con) +)?"
    rf"(?:(?:sin|cos|tan)(?: +{_LETTER}| *\( *{_LETTER} *\)) *= *[0-9.√(](?:[-+*/^√²().0-9 ]|sqrt)*(?:= *[0-9.]+ *)?"
    rf"|{_LETTER} *= *(?:[0-9.]+ *(?:°|deg(?:rees?)?\b)|(?:a|arc)(?:sin|cos|tan) *\(?[0-9./ ]+\)?) *))"
    r"(?(open)\))(?= *(?:[;,:(.]|[⇒∴→]|[-=]+>|(?:so|hence|thus|and|where|with)\b|$))"
)
"""A clause anywhere in a line that says of an angle how large it is, or what a function of it is."""
_MAY = re.compile(r"=.*=|\b(?:call|write|denote|let|where|being|name|for)\b", re.DOTALL)
_THEN = re.compile(
    r"^(?P<let> *(?:let|with|put|say|set|take|taking|if|where|name)\b[^=:;]*=[^=:;]*?[0-9)°\w])(?:,? +|\. +)(?:then|we (?:get|have))\b",
    re.IGNORECASE,
)
_CALLED = re.compile(
    r" *(?:let|say|call|name|put|set|write|denote) +[A-Za-z][\w{}-]+ *= *[a-z] *[,:;.]",
    re.IGNORECASE,
)
_RATIO = r"[0-9.]+(?: */ *[0-9.]+)?"
_BESIDE = re.compile(
    rf"^(?P<one> *[a-z] *= *{_RATIO}) +(?=[a-z] *= *{_RATIO} *(?:\([^()=]*\) *)?(?:[:;]|\.{{1,3}} ))"
)
"""Two letters that are brought in with a blank between them: s=3/5 c=4/5: ..."""
_SUMMED = re.compile(r"Σ ?(?P<letter>[PWQG])(?![\w(])")
_SUMMED_AS = re.compile(r"(?:^|[,;:(]|\b(?:where|with|and)\b) *Σ ?[PWQG] *=(?! *0[ ,;]*$)")
"""A sum of loads that a line gives: ΣP = 50 + 30 + 100."""
MOST = 6
"""So many letters are brought in by a line at the most."""


def let_be(source: Source, names: Names) -> Source:
    """The source with what is let be so set apart from what follows, or put in where a force is called by a letter."""
    if _SUMMED_AS.search(source.text) and len(_SUMMED.findall(source.text)) > 1:
        source = source.rewritten(_SUMMED, lambda found: found["letter"])
    source = source.rewritten(_BESIDE, lambda found: f"{found['one']},")
    if _CALLED.match(source.text) is not None:
        return brought_in(source, names)
    if "then" not in source.text and " we " not in source.text:
        return source
    return source.rewritten(_THEN, lambda found: f"{found['let']};")


def brought_in(source: Source, names: Names) -> Source:
    """The source with the letters that it brings in replaced, without the words that do so."""
    if _MAY.search(source.text) is None:
        return source
    if (given := force_found(source.text, names)) is not None:
        letter, force, place = given
        whole = Span(0, place.start), Span(place.end, len(source.text))
        return letter_replaced(source.made_of(whole), letter, force)
    head, behind = _headed(source.text, names)
    said, start = _in_front(source.text, behind, names)
    end = len(source.text)
    while len(said) < MOST and (found := _BEHIND.search(source.text, start, end)) is not None:
        made = letter_said(found["said"], names, said)
        if made is None or not _stands(made[0], source.text[start : found.start()]):
            break
        said, end = {**said, **dict([made])}, found.start()
    angles, within = _angles(source.text, start, end, said, names)
    said = {**said, **angles}
    if not said or len(said) > MOST or "=" not in source.text[start:end]:
        return source
    idle = within or [Span(*span) for span in _idle(source.text[:end], start, said, names)]
    edges = [start, *(edge for span in idle for edge in (span.start, span.end)), end]
    kept: list[Span | str] = [Span(*pair) for pair in zip(edges[::2], edges[1::2], strict=True)]
    source = source.made_of(
        [Span(0, head), ": ", *kept] if head and start > behind else [Span(0, behind), *kept]
    )
    for letter, what in said.items():
        source = letter_replaced(source, letter, what)
    return source


def _headed(text: str, names: Names) -> tuple[int, int]:
    """Where a heading before the clauses that bring in letters ends, and where they begin; twice 0 without one."""
    found = _END.search(text)
    if found is None or found[0] not in (",", ":", ";") or "=" in text[: found.start()]:
        return 0, 0
    try:
        head = heading_in(text, 0, found.start(), names)
    except Broken:
        return 0, 0
    return (
        found.span() if head is not None and head.label is not None and not head.passed else (0, 0)
    )


def _in_front(text: str, first: int, names: Names) -> tuple[dict[str, str], int]:
    """The letters that clauses in front of a line bring in, and where the line itself begins."""
    said, at = dict[str, str](), first
    for start, end, behind in _clauses(text, first):
        if start != at:
            break
        clause = text[start:end]
        made = letter_said(clause, names, said)
        if made is not None:
            said = {**said, **dict([made])}
        elif not (said and is_so(clause, said, names)):
            break
        at = behind
    return said, at


def _angles(
    text: str, start: int, end: int, before: dict[str, str], names: Names
) -> tuple[dict[str, str], list[Span]]:
    """The angles that clauses within a line bring in, and the places of those clauses and of others that say the same."""
    said, places = dict[str, str](), list[Span]()
    for found in _WITHIN.finditer(text, start, end):
        made = letter_said(found["said"], names, {**before, **said})
        of_an_angle = made is not None and _of_a_function(made[0], text[start : found.start()])
        if made is not None and of_an_angle:
            said |= dict([made])
        elif not (said and is_so(found["said"], said, names)):
            continue
        places.append(Span(*found.span()))
    return said, places


def _of_a_function(letter: str, text: str) -> bool:
    """Whether a text takes the sine, cosine or tangent of a letter."""
    taken = rf"(?:sin|cos|tan) *\(? *{re.escape(letter)}(?!\w)"
    return re.search(taken, text) is not None


def _stands(letter: str, text: str) -> bool:
    """Whether a letter stands in a text as a word, or behind a number."""
    return re.search(rf"(?<![^\W\d]){re.escape(letter)}(?!\w)", text) is not None


def _clauses(text: str, at: int) -> Iterator[tuple[int, int, int]]:
    """(start, end, where the next one starts) of the clauses from a column on, one behind the other."""
    for found in _END.finditer(text, at):
        if found.end() >= len(text):
            return
        if not text[at : found.start()].strip():
            continue
        yield at, found.start(), found.end()
        at = found.end()


def _idle(text: str, at: int, said: dict[str, str], names: Names) -> Iterator[tuple[int, int]]:
    """The places of clauses further on that only work out a number from the letters, with the mark behind."""
    for found in _CLAUSE.finditer(text, at):
        if any(_stands(letter, found[0]) for letter in said) and is_so(found["said"], said, names):
            yield found.span()
