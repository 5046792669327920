"""Which part of a value is put right in the same breath: "16.7 T oops I mean C", "61.7 kN, sorry, 16.7",
"12 (typo, minus)", "16.7 T, no, C"?

A value is a sign, a number, a unit and a way; what is said again behind words that take something back stands in the
place of what was said of its kind, and the rest of the value stays.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from tutor.notation.elements.lexicon import WAYS, says
from tutor.notation.elements.source import Source
from tutor.notation.elements.tree import Span
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import LETTERS
from tutor.notation.sides.heeded import ARROWS, arrow

SORRY = (
    r"(?:oops|whoops|sorry|pardon|nope|wait|hang on|hold on|i mean|i meant(?: to (?:write|say|put|type))?|make (?:that|it)"
    r"|correct(?:ion|ed)(?: to)?|typo|(?:scratch|scrap|strike|cross) (?:that|it)(?: out)?|(?:or )?rather|actually|edit(?=:)"
    r"|my (?:bad|mistake)|wrong(?: (?:way|sign|letter))?)"
)
"""Words that take back what stands right before them."""
_EXPECTS = r"(?:that )?should (?:be|have been|say|read)"
"""What takes back a value by itself; with a number or a sign behind a sum it may be said of a term there."""
_LINKS = r"(?:no|its|it's|it is|that's|thats|that is|this is|of course|obviously|in fact|(?:that )?should (?:be|have been|read))"
_DENIES = (
    r"no,? +(?:(?:it|its|it's|they|that|this|push(?:es|ing)?|pull(?:s|ing)?)\b[a-z' ]*+[,:;] +)?"
)
_BETWEEN = r"(?:[ ,.:;!…]|-+(?= ))*"
_RUN = re.compile(
    rf"(?<![\w}}])(?:(?:no,? +|oh,? +|ah,? +)*{SORRY}(?![\w'])(?:{_BETWEEN}(?:{SORRY}|{_LINKS})(?![\w']))*|(?P<expects>{_EXPECTS}\b)|(?P<denies>{_DENIES}))",
    re.IGNORECASE,
)
_SIZE = r"[0-9](?:[0-9.,]*[0-9])?|\.[0-9]+"
_UNIT = r"(?:kN|MN|N|lbs?|kips?|k|#)(?!\w)"
_WAY = (
    rf"[(\[]? *(?:(?:in|to the|to|acting|acts|pointing|under|a) +)*"
    rf"(?P<word>[{LETTERS}]+|[←→↑↓]|<[-=]+|[-=]+>)(?![\w}}]) *[)\]]?"
)
_BEFORE = re.compile(
    rf"(?:^|[=:]|(?<![\w}}])(?P<name>[{LETTERS}][\w{{}}'-]*)(?: *[|;])? )(?P<value> *(?P<sign>[-+] ?)?(?P<size>{_SIZE})"
    rf"(?P<unit> ?{_UNIT})?(?P<way>(?:,| *[|;])? *{_WAY})?){_BETWEEN}(?P<open>[(\[*] *)?$"
)
_WORK = r"[-+]? ?[0-9][0-9.,]*(?: *[-+*/] *[0-9][0-9.,]*)+ *= *"
_BEHIND = re.compile(
    rf"{_BETWEEN}(?:= *)?(?P<work>{_WORK})?(?P<sign>[-+](?![>=])|(?:minus|plus|negative|positive|neg|pos)\b)? *"
    rf"(?P<size>{_SIZE})?(?P<unit> ?{_UNIT})?(?P<way>,? *{_WAY})?",
    re.IGNORECASE,
)
_ENDS = re.compile(
    r" *(?:[.! ]*$|[,;(\[∴⇒→]|(?:because|since|bc|cos|as|so|hence|thus)\b)", re.IGNORECASE
)
MOST = 4
"""So many times a value is put right in one line at the most."""
Pieces = list[Span | str]
Parts = dict[str, Span]


def amended(source: Source, names: Names) -> Source:
    """The source with each value as it is said last."""
    for _ in range(MOST):
        made = next(_amended(source, names), None)
        if made is None:
            break
        source = made
    return source


def _amended(source: Source, names: Names) -> Iterator[Source]:
    """The source with one value put right, for each that is."""
    text = source.text
    for run in _RUN.finditer(text):
        said = _BEFORE.search(text[: run.start()])
        anew = _BEHIND.match(text, run.end())
        if said is None or anew is None or (said["name"] and len(names.meant(said["name"])) != 1):
            continue
        old, new = _parts(said), _parts(anew)
        end = max((span.end for span in new.values()), default=run.end())
        if said["open"] and "way" in new and text[end - 1] in ")]":
            new["way"] = Span(new["way"].start, end - 1)
        elif said["open"] and (closed := _CLOSES.match(text, end)) is not None:
            end = closed.end()
        if ("way" in old) != bool(said["way"]) or _ENDS.match(text, end) is None:
            continue
        if not new or _of_something_else(text, run, said, new):
            continue
        value = _put_right(text, old, new)
        if value is not None:
            yield source.made_of([Span(0, said.start("value")), " ", *value, Span(end, len(text))])


def _of_something_else(text: str, run: re.Match[str], said: re.Match[str], new: Parts) -> bool:
    """Whether words may deny more than the part of a value behind them, or speak of a term of the sum before it."""
    if run["denies"] and "size" not in new:
        other_way = said["way"] and set(new) == {"way"} and run["denies"].lower().startswith("no,")
        return not other_way
    of_a_name = _OF_A_NAME.search(text[: said.start("value")]) is not None
    nothing = not said["size"].strip("0.,")
    return not of_a_name and (nothing or bool(run["expects"] and set(new) != {"way"}))


_OF_A_NAME = re.compile(rf"(?:^|[:;,∴⇒→]|\b(?:so|hence|thus)\b) *[{LETTERS}][\w{{}}'-]* *=?$")
_CLOSES = re.compile(r" *[)\]]")


def _parts(found: re.Match[str]) -> Parts:
    """What is said of a value, and where; a word that is no way is none of it."""
    groups = (
        name for name in ("work", "sign", "size", "unit", "way") if name in found.re.groupindex
    )
    parts = {name: Span(*found.span(name)) for name in groups if found[name]}
    if "way" in parts and not _is_way(found["word"]):
        del parts["way"]
    return parts


def _is_way(word: str) -> bool:
    return word in ARROWS or arrow(word) is not None or says(word, *WAYS)


def _put_right(text: str, old: Parts, new: Parts) -> Pieces | None:
    """The value with what is said anew in its place; None where it is not clear whether its minus stays."""
    if "work" in new:
        return [Span(new["work"].start, max(span.end for span in new.values()))]
    sign = _sign(text, new.get("sign"))
    if sign is None:
        sign = _sign(text, old.get("sign")) or ""
        if "size" in new and sign == "-":
            if "way" not in new and _said(text, old["size"]) != _said(text, new["size"]):
                return None
            sign = ""
    size, unit = new.get("size", old["size"]), new.get("unit", old.get("unit"))
    way = new.get("way") or (None if {"sign", "size"} <= new.keys() else old.get("way"))
    pieces: Pieces = [sign, size]
    for part in (unit, way):
        pieces += [" ", part] if part is not None else []
    return pieces


def _said(text: str, span: Span) -> str:
    return text[span.start : span.end].strip().replace(",", ".")


def _sign(text: str, span: Span | None) -> str | None:
    """The sign that a sign or a word for one says; None where there is none."""
    if span is None:
        return None
    return "-" if _said(text, span).lower() in ("-", "minus", "negative", "neg") else ""
