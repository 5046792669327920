"""What does one statement say: e1 = e2 = e3, its heading, the letters and remarks in it?"""

from __future__ import annotations

import itertools
import re
from dataclasses import dataclass, replace
from fractions import Fraction

from tutor.notation.elements.label import Label
from tutor.notation.elements.lexicon import says
from tutor.notation.elements.tree import Name, Number, Span
from tutor.notation.elements.unreadable import Broken
from tutor.notation.formulas.evaluate import Term
from tutor.notation.formulas.words import ANGLES
from tutor.notation.headings.heading import heading_before, heading_in
from tutor.notation.lines.found import Found, trimmed
from tutor.notation.lines.head_end import behind_heading, behind_long_dash
from tutor.notation.lines.line import Side
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import LETTERS, NAME
from tutor.notation.sides.ending import WORD, wordy
from tutor.notation.sides.formula import sides_of, unclosed
from tutor.notation.sides.heeded import Said
from tutor.notation.sides.side_ending import ending_of, unpushed


@dataclass(frozen=True)
class Statement:
    """The sides of a chain without its headings, and the heading."""

    sides: tuple[Side, ...]
    label: Label | None


def statement(text: str, start: int, end: int, found: Found) -> Statement:
    """What stands in plain `text` from `start` to `end`; raises Broken."""
    if (renamed := _RENAMED.match(text, start, end)) is not None and not found.names.meanings(
        renamed["name"]
    ):
        raise Broken("renamed", *renamed.span("name"), force=renamed["force"])
    end, label = _headed_behind(text, start, end, found.names)
    start = _led(text, start, end, found)
    head = heading_before(text, start, end, found.names)
    if (
        head is not None
        and head.label is not None
        and not text[head.end : end].lstrip().startswith("=")
    ):
        label = joined(label, head.label)
        whole, start = start, behind_heading(text, start, head.end, end, found)
        if not text[start:end].strip():
            raise Broken("label/alone", *trimmed(text, whole, end))
    cuts = _sides(text, start, end)
    kept: list[tuple[int, int]] = []
    for one, other in cuts:
        heading = _heading(text, one, other, found.names, len(cuts) > 1)
        if heading is None:
            kept.append((one, other))
        else:
            label = joined(label, heading)
    if len(cuts) > 1 and not kept:
        raise Broken("label/alone", start, max(start + 1, end))
    if len(kept) == 1 and len(cuts) == 2:
        one, other = kept[0]
        if text[one:other].strip(" 0.") == "":
            raise Broken("label/alone", *trimmed(text, start, end))
        raise Broken("label/no-zero", *trimmed(text, start, end))
    return Statement(_read(text, kept, found), label)


_RENAMED = re.compile(
    rf" *(?:(?:let|put|call|say|set) +)(?P<name>[{LETTERS}]\w*) *(?:=|be|for) *(?P<force>[{LETTERS}][\w{{}}-]*) *$"
)
_BEHIND = re.compile(
    r"[(\[] *(?P<inner>(?:Σ|sum|moment|resolv|vert|hor|joint|at |node)[^()\[\]=]*(?:\([^()]*\))?(?:= *0 *)?)[)\]] *$",
    re.IGNORECASE,
)


def _headed_behind(text: str, start: int, end: int, names: Names) -> tuple[int, Label | None]:
    """Where a statement ends before its heading, where that stands in brackets behind it: (sum y)."""
    found = _BEHIND.search(text, start, end)
    if found is None or "=" not in text[start : found.start()]:
        return end, None
    head = heading_in(text, *found.span("inner"), names)
    if head is None or head.label is None or head.passed or not head.summed:
        return end, None
    return found.start(), head.label


def _led(text: str, start: int, end: int, found: Found) -> int:
    """Where the formula starts behind words that only lead to it: "by inspection", "we have"."""
    at = start
    if "=" not in text[start:end]:
        return start
    while (word := _LEAD.match(text, at, end)) is not None:
        said_here, following = word["word"], WORD.match(text, word.end(), end)
        named = found.names.meanings(said_here)
        remark = following is not None and says(following.group(), "remark", "filler")
        if not says(said_here, "lead", "because", "remark", "so", "where") or (
            named and not remark
        ):
            break
        at = word.end()
    if at > start:
        found.passed.append(Span(*trimmed(text, start, at)))
        return behind_long_dash(text, start, at, end, found)
    return at


_LEAD = re.compile(rf" *(?P<word>{WORD.pattern})\.?,? +")


def _sides(text: str, start: int, end: int) -> list[tuple[int, int]]:
    """The places of the sides, cut at every = outside brackets."""
    cuts, depth, at = [], 0, start
    for index in range(start, end):
        char = text[index]
        if char in "([{":
            depth += 1
        elif char in ")]}":
            depth = max(0, depth - 1)
        elif char == "=" and depth == 0:
            cuts.append((at, index))
            at = index + 1
    return [*cuts, (at, end)]


_SUMMED = re.compile(
    r"[ +(←→↑↓↺↻>-]*(?:[a-z]+[+ )]+)*(?:Σ|sum|M|moment|F_?[xyhv]\b|joint|@|R ?\(|→|↑)",
    re.IGNORECASE,
)


def _heading(text: str, start: int, end: int, names: Names, chained: bool) -> Label | None:
    if not chained or _SUMMED.match(text[start:end]) is None:
        return None
    head = heading_in(text, start, end, names)
    return head.label if head is not None and head.summed and not head.passed else None


def joined(one: Label | None, other: Label | None) -> Label | None:
    """Two headings of one line as one: the joint of the first, the sum of the second; a point of moments stays."""
    if one is None or other is None:
        return one or other
    first, second = (one, other) if one.span.start <= other.span.start else (other, one)
    span = Span(first.span.start, second.span.end)
    kind = second.kind or first.kind
    point = second.point if second.point is not None else first.point
    stays = first.kind is None or (first.kind == "moment" and second.kind is None)
    if second.kind != "moment" and stays and first.point is not None:
        point = first.point
    degrees = second.degrees if second.degrees is not None else first.degrees
    between = second.between or first.between
    return Label(kind, point, degrees, span, one.whole or other.whole, between)


def _read(text: str, places: list[tuple[int, int]], found: Found) -> tuple[Side, ...]:
    """The sides at `places`, with the letters and remarks behind them."""
    chars, places = list(text), list(places)
    endings: list[Said] = []
    turned: list[int] = []
    end = places[-1][1]
    for index, (start, stop) in enumerate(tuple(places)):
        last = index == len(places) - 1
        stop, said, closed = ending_of(chars, start, stop, index, last, found, turned, end)
        endings.append(said)
        places[index] = start, stop
        if closed:
            del places[index + 1 :]
            break
    for start, stop in _gaps(places, len(chars)):
        chars[start:stop] = " " * (stop - start)
    for (_, stop), (start, _) in itertools.pairwise(places):
        chars[text.index("=", stop, start) if "=" in text[stop:start] else stop] = "="
    formula = "".join(chars)
    return _sided(formula, places, endings, found, turned)


def _gaps(places: list[tuple[int, int]], size: int) -> list[tuple[int, int]]:
    edges = [0, *(edge for place in places for edge in place), size]
    return list(zip(edges[::2], edges[1::2], strict=True))


def _sided(
    formula: str,
    places: list[tuple[int, int]],
    endings: list[Said],
    found: Found,
    turned: list[int],
) -> tuple[Side, ...]:
    """The sides read, with what stood behind them; a side of a letter alone lends it to the last."""
    lent: Said | None = None
    kept = []
    for place, said in zip(places, endings, strict=True):
        if not formula[place[0] : place[1]].strip() and (said.letter or said.zero or said.sense):
            if said.zero is not None:
                formula = (
                    f"{formula[: place[0]]}0{formula[place[0] + 1 :]}"
                    if place[0] < place[1]
                    else formula
                )
                kept.append((place, said))
            else:
                lent = said
                at = formula.find("=", place[1])
                at = formula.rfind("=", 0, place[0]) if at < 0 else at
                formula = formula[:at] + " " + formula[at + 1 :] if at >= 0 else formula
            continue
        kept.append((place, said))
    if lent is not None and not kept:
        raise Broken("value/number", *lent.places[0])
    formula, kept = _without_idle_sides(formula, kept, found)
    sides, backward = sides_of(
        formula, found.names, found.frame, found.letters, turned, found.choice.signed
    )
    if backward:
        found.open.add("signed")
    if len(sides) != len(kept):
        raise unclosed(formula)
    if lent is not None and not any(side.numeric for side in sides):
        raise Broken("value/number", *lent.places[0])
    return _lent(_told(sides, [said for _, said in kept], found), lent)


_SPOKEN = re.compile(r" *(?:the +)?[a-z]{4,}(?: +[a-z]{2,})? *")


def _without_idle_sides(
    formula: str, kept: list[tuple[tuple[int, int], Said]], found: Found
) -> tuple[str, list[tuple[tuple[int, int], Said]]]:
    """A chain without the sides in it that are a word, or only wait for the size of an angle; they are told.

    The first side and the last stay: F_AB = 18/sin θ = 30 and F_AB = load = 30 say no less without them.
    """
    kept = list(kept)
    for (start, stop), said in kept[1:-1]:
        side = formula[start:stop]
        words = NAME.findall(side)
        letters = {word for word in words if word.lower() in ANGLES} - set(found.letters)
        spoken = _SPOKEN.fullmatch(side) is not None and all(wordy(w, found.names) for w in words)
        if not (letters or spoken) or any(map(found.names.meanings, words)):
            continue
        at = formula.rfind("=", 0, start)
        formula = formula[:at] + " " * (stop - at) + formula[stop:]
        found.unread.append(Span(start, stop))
        kept.remove(((start, stop), said))
    return formula, kept


def _told(sides: tuple[Side, ...], endings: list[Said], found: Found) -> tuple[Side, ...]:
    """The sides with what is said behind each."""
    pairs = zip(sides, endings, strict=True)
    return tuple(_with(side, unpushed(said, side, sides[0].name, found)) for side, said in pairs)


def _with(side: Side, said: Said) -> Side:
    if said.zero is not None and side.numeric and any(term.value for term in side.terms):
        raise Broken("value/not-zero", *said.zero)
    return (
        replace(side, letter=said.letter, sense=said.sense) if said.letter or said.sense else side
    )


def _lent(sides: tuple[Side, ...], lent: Said | None) -> tuple[Side, ...]:
    """The last side with the letter of a side that was nothing else, or of the name before it."""
    last = sides[-1]
    if last.letter or last.sense or not last.numeric:
        return sides
    if lent is None:
        named = [side for side in sides[:-1] if side.name and (side.letter or side.sense)]
        if not named:
            return sides
        return (*sides[:-1], replace(last, letter=named[-1].letter, sense=named[-1].sense))
    return (*sides[:-1], replace(last, letter=lent.letter, sense=lent.sense))


def zeroed(name: str, span: Span) -> tuple[Side, Side]:
    """An unknown and the value 0 that words say of it."""
    zero = Number(Fraction(0), Fraction(0), span)
    node = Name(name, span)
    return (
        Side(node, (Term(name, 1.0, 0.0, span),), span),
        Side(zero, (Term(None, 0.0, 0.0, span),), span, 1),
    )
