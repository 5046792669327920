"""Which part does a line speak of: "section through DE, BD and AB, left part", "left of a cut through …"?

What says so is taken out of the text, so that the heading of the sum stands alone.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace

from tutor.notation.elements.label import Label, PartSaid, Side
from tutor.notation.elements.lexicon import folded
from tutor.notation.elements.source import Source
from tutor.notation.elements.tree import Span
from tutor.notation.lines.line import Line
from tutor.notation.naming.names import Names

_SIDES: dict[str, Side] = {
    **dict.fromkeys(("left", "left-hand", "lefthand", "lh"), "left"),
    **dict.fromkeys(("right", "right-hand", "righthand", "rh"), "right"),
    **dict.fromkeys(("upper", "top", "above"), "upper"),
    **dict.fromkeys(("lower", "bottom", "below"), "lower"),
    **dict.fromkeys(("outer", "outside", "overhanging", "free-end", "outboard"), "outer"),
    **dict.fromkeys(("inner", "inside", "inboard"), "inner"),
}
_PARTS = frozenset(["part", "portion", "piece", "half", "segment", "bit"])
_CUTS = frozenset(["section", "sections", "cut", "cuts", "cutting", "sectioning", "through"])
_BESIDE = frozenset(
    [
        "the",
        "a",
        "an",
        "to",
        "of",
        "for",
        "on",
        "at",
        "with",
        "by",
        "and",
        "in",
        "is",
        "hand",
        "side",
        "keep",
        "keeping",
        "kept",
        "consider",
        "considering",
        "considered",
        "looking",
        "look",
        "passing",
        "made",
        "taken",
        "beyond",
        "taking",
        "using",
        "use",
        "free",
        "body",
        "method",
        "members",
        "member",
        "bars",
        "equilibrium",
        "from",
        "lies",
        "lying",
        "we",
        "only",
    ]
)
_MARKS = frozenset(",;()")
_LEADING = frozenset(["(", "for", "of", "on", "the", "at", "to", "by"])
"""What belongs to the words behind it."""
_STEP = re.compile(r"\w+|\s+|.")
_TOKEN = re.compile(
    r" *(?P<token>[a-z]-[a-z](?![\w-])|[A-Z][0-9]*-?[A-Z][0-9]*(?![\w-])|[A-Za-z]+(?:-hand)?(?![\w{])|[0-9](?:-[0-9])?(?![\w.*/(])|[,;()])"
)
_FORMULA_AHEAD = re.compile(r" *[-=+*/^_0-9({]")
_CUTTING = re.compile(r"\b(?:section|cut|cutting|through|cuts)\b[^=;:]*$", re.IGNORECASE)
_MARK = re.compile(r" *[:;,.](?= )")


_DASHED = re.compile(r"(?<![\w-])[A-Z]\w{1,3}(?:-[A-Z]\w{1,3}){1,7}(?![\w-])")
"""Members that are cut, with dashes between them: BC-BF-EF."""


@dataclass(frozen=True)
class _Said:
    """Words side by side that speak of a part, and what they say."""

    start: int
    end: int
    part: PartSaid


def parted(source: Source, names: Names) -> tuple[Source, PartSaid | None]:
    """The source without the words that say which part is looked at, and what they say; else None."""
    source = source.rewritten(_DASHED, lambda found: _each_apart(found, names))
    end = _heads_until(source.text)
    found = list(_phrases(source.text, end, names))
    if not found:
        return source, None
    chars = list(source.text)
    for said in found:
        chars[said.start : said.end] = " " * (said.end - said.start)
    cut = tuple(dict.fromkeys(name for said in found for name in said.part.cut))
    sides = {said.part.side for said in found if said.part.side}
    if len(sides) > 1:
        return source, None
    side = sides.pop() if sides else None
    return replace(source, text="".join(chars)), PartSaid(cut, side)


def _each_apart(found: re.Match[str], names: Names) -> str | None:
    """Members with dashes between them as a list; None where one is no member, or the dash may be a minus."""
    parts = found[0].split("-")
    members = all(len(names.meant(part)) == 1 and names.two_joints(part) for part in parts)
    cuts = len(parts) > 2 and _CUTTING.search(found.string[: found.start()]) is not None
    return ", ".join(parts) if members and cuts else None


def with_part(line: Line, part: PartSaid | None) -> Line:
    """The line with the part that it speaks of in its heading."""
    if part is None:
        return line
    label = line.label or Label(None, None, None, Span(0, 0))
    return replace(line, label=replace(label, part=part))


def _heads_until(text: str) -> int:
    """Where the last heading can end: at the last colon, or at the equation behind it."""
    colon = text.rfind(":")
    return len(text) if colon < 0 else max(colon, text.find("=", colon))


def _phrases(text: str, end: int, names: Names) -> list[_Said]:
    """Each longest run of words of a section that names members that are cut, or a side of a part."""
    found: list[_Said] = []
    at = 0
    while at < end:
        run = _run(text, at, end, names)
        if run:
            said = _meant(run, names)
            if said is not None:
                found.append(said)
            at = run[-1].end()
        else:
            following = _STEP.match(text, at)
            at = following.end() if following else end
    return found


def _run(text: str, at: int, end: int, names: Names) -> list[re.Match[str]]:
    """The words of a section that follow each other from `at`."""
    run: list[re.Match[str]] = []
    while (token := _TOKEN.match(text, at, end)) is not None and _fits(token, text, names, run):
        run.append(token)
        at = token.end()
    while run and folded(run[-1]["token"]) in _LEADING:
        run.pop()
    return run


def _fits(token: re.Match[str], text: str, names: Names, run: Sequence[re.Match[str]]) -> bool:
    word = token["token"]
    if word in _MARKS:
        return bool(run)
    if word[0].isdigit() or word[1:2] == "-":
        return bool(run) and folded(run[-1]["token"]) in _CUTS
    if _member(word, names) is not None:
        cutting = any(folded(each["token"]) in _CUTS for each in run)
        return cutting and _FORMULA_AHEAD.match(text, token.end()) is None
    plain = folded(word)
    return plain in _CUTS or plain in _PARTS or plain in _SIDES or plain in _BESIDE


def _member(word: str, names: Names) -> str | None:
    """The member that two joints side by side name; "the" is none, also where T stands for a force."""
    if word.lower() in _BESIDE:
        return None
    found = names.meant(word) if names.two_joints(word) is not None else ()
    return found[0] if len(found) == 1 else None


def _meant(run: Sequence[re.Match[str]], names: Names) -> _Said | None:
    """What a run of words says of a part; None where it speaks of none."""
    words = [folded(each["token"]) for each in run]
    cut = tuple(name for each in run if (name := _member(each["token"], names)) is not None)
    sides = {_SIDES[word] for word in words if word in _SIDES}
    speaks = any(word in _PARTS for word in words) or any(word in _CUTS for word in words)
    if not speaks or len(sides) > 1 or not (cut or sides):
        return None
    side = sides.pop() if sides else None
    start, end = _with_marks(run[0].string, run[0].start("token"), run[-1].end())
    return _Said(start, end, PartSaid(cut, side))


def _with_marks(text: str, start: int, end: int) -> tuple[int, int]:
    """The place of a phrase with the brackets around it, or with the mark that sets it apart in front."""
    if text.count(")", start, end) > text.count("(", start, end):
        before = text[:start].rstrip()
        if before.endswith("("):
            return len(before) - 1, end
        return start, text.rindex(")", start, end)
    if not text[:start].strip() and (mark := _MARK.match(text, end)) is not None:
        return start, mark.end()
    return start, end
