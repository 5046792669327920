"""What of the talk in a line takes back what it says, may hold more than was read, or cannot be read at all?"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from tutor.notation.elements.characters import plain
from tutor.notation.elements.lexicon import MEANINGS, folded, known_word, says
from tutor.notation.elements.source import Source
from tutor.notation.elements.tree import Span
from tutor.notation.elements.unreadable import Broken
from tutor.notation.lines.line import Line
from tutor.notation.naming.names import Names, spelling
from tutor.notation.naming.symbols import NAME
from tutor.notation.sentences.aside_said import leads_to_value
from tutor.notation.sentences.bits import Bit, bits_of
from tutor.notation.sentences.talk import Clause, claims, declares, is_speech, reverses
from tutor.notation.sides.turned import denies_a_way, makes_another

_FAULTED = re.compile(
    r"\b(?:which|that|this) +(?:is|was|seems|looks) +(?:wrong|incorrect|false|mistaken|untrue)\b"
)
"""That the value before it is not so, also behind its T or C."""
_WORDED = ("word", "aside")
FEWEST = 2
"""So many words of three letters or more make a sentence of a line."""


def with_talk_told(line: Line, names: Names) -> Line:
    """The line with what was passed over marked where it may be a claim: a force and what it does.

    Raises Broken where words that were passed over take back what the line says.
    """
    told = []
    if _gives_a_value(line) and (found := _FAULTED.search(line.text, line.steps[-1].span.end)):
        raise stopped_at(*found.span(), names)
    for span in line.passed:
        text = plain(line.text[span.start : span.end])
        inner = text.strip("()[]{} ")
        first = span.start + text.find(inner)
        bits = bits_of(inner, names)
        clause = Clause(bits)
        found = reverses(inner, clause) if bits else None
        sensed = _of_a_sense(inner) and not _before_value(line, span)
        harmless = not _gives_a_value(line) if sensed else _not_zero(inner, line, names)
        if found is not None and not harmless:
            raise stopped_at(first + found.start(), first + found.end(), names)
        if (bits and declares(inner, clause) is None) or makes_another(
            text, line.text[: span.start]
        ):
            raise stopped_at(span.start, span.end, names)
        if claims(inner, clause, names) or denies_a_way(inner) or leads_to_value(inner):
            told.append(span)
    return replace(line, unread=(*line.unread, *told)) if told else line


def claims_in_talk(line: Line) -> bool:
    """Whether words that were passed over may be a claim: beside a force alone, beside several zeros."""
    lone = any(len(step.sides) == 1 and not step.sides[0].numeric for step in line.steps)
    lone = lone or (len(line.steps) > 1 and len(line.steps[0].sides) == 1)
    several = "=" not in line.text and len(line.steps) > 1
    return bool(line.unread) or several or (lone and bool(line.passed))


def saying_more(line: Line | None, other: Line | None) -> Line | None:
    """The second reading where it is one, unless it only leaves out of the first one what may be a claim."""
    if line is None or other is None:
        return line or other
    return other if len(other.steps) > len(line.steps) or not line.unread else line


def with_told(line: Line, told: tuple[Span, ...]) -> Line:
    """The line with words that were taken out of it before it was read."""
    if not told:
        return line
    passed, unread = (sorted((*one, *told), key=start_of) for one in (line.passed, line.unread))
    return replace(line, passed=tuple(passed), unread=tuple(unread))


def start_of(span: Span) -> int:
    """Where a span starts."""
    return span.start


def _of_a_sense(text: str) -> bool:
    """Whether words say of a force only what it does not do: (AE not in compression)."""
    return any(says(folded(word), "T", "C") for word in NAME.findall(text))


_NOT_ZERO = re.compile(
    r"(?P<name>\w[\w{}-]*) +(?:(?:is|are) +)?(?:not|isn'?t|never|no) +(?:an? +)?(?:zero|nil|nought)(?:[- ]force)?(?: +(?:member|bar))?"
)


def _not_zero(text: str, line: Line, names: Names) -> bool:
    """Whether words only say of a force that it is not zero, and the line does not say that it is."""
    found = _NOT_ZERO.fullmatch(text)
    meant = names.meant(found["name"]) if found is not None else ()
    zeros = (
        {side.name for side in step.sides}
        for step in line.steps
        if all(not any(t.value for t in side.terms) for side in step.sides if side.numeric)
    )
    return len(meant) == 1 and not any(meant[0] in each for each in zeros)


def _gives_a_value(line: Line) -> bool:
    """Whether a statement of the line is the value of a force, whose sense such words would turn."""
    return any(
        any(side.name is not None and not side.numeric for side in step.sides)
        and any(side.numeric and any(t.value for t in side.terms) for side in step.sides)
        for step in line.steps
    )


def _before_value(line: Line, span: Span) -> bool:
    """Whether words stand before a value alone, of which they may deny anything."""
    first = line.steps[0]
    return len(first.sides) == 1 and first.sides[0].numeric and span.end <= first.span.start


def failed_in_talk(broken: Broken, source: Source, names: Names) -> Broken:
    """The complaint about a line; where it is about talk, that the sentence could not be read from there on.

    A comma of prose is no faulty number, and a word in it names no force.
    """
    bits = bits_of(source.text, names)
    key = broken.key.partition("/")[0]
    if (key not in _OF_A_FORMULA and broken.key != "value/two") or not speaks(
        source.text, bits, names
    ):
        return broken
    at = next((at for at, bit in enumerate(bits) if source.ends[bit.end - 1] > broken.start), None)
    if at is None or bits[at].kind not in ("word", "aside", "mark"):
        return broken
    word = next((bit for bit in bits[at:] if bit.kind in _WORDED), None)
    if word is None or (bits[at].kind == "word" and not _is_talk(source.text, bits, at, names)):
        return broken
    if key == "value" and _only_result(source.text, bits, at):
        return broken
    span = source.span(word.start, word.end)
    return stopped_at(span.start, span.end, names)


_OF_A_FORMULA = frozenset(
    (
        "comma",
        "unknown-name",
        "number",
        "character",
        "function",
        "unit",
        "unknown-function",
        "unknown-unit",
        "order",
        "operator",
    )
)


def _is_talk(text: str, bits: Sequence[Bit], at: int, names: Names) -> bool:
    """Whether a word is one of a language and has another one beside it, so that it is no misspelt name."""
    word = text[bits[at].start : bits[at].end]
    if word.islower() and len(word) > 3 and folded(word) in MEANINGS:
        return True
    near = [bits[i] for i in (at - 1, at, at + 1) if 0 <= i < len(bits) and bits[i].kind == "word"]
    return len(near) > 1 and all(is_speech(text[bit.start : bit.end], names) for bit in near)


def _only_result(text: str, bits: Sequence[Bit], at: int) -> bool:
    """Whether the words around one are all of the lexicon, so that they are a result and no talk."""
    words = NAME.findall(
        " ".join(text[bit.start : bit.end] for bit in bits[max(0, at - 3) : at + 4])
    )
    return all(known_word(word) for word in words)


def speaks(text: str, bits: Sequence[Bit], names: Names) -> bool:
    """Whether there are words enough for a sentence."""
    said = " ".join(text[bit.start : bit.end] for bit in bits if bit.kind in _WORDED)
    words = NAME.findall(said)
    return sum(len(word) > 2 and is_speech(word, names) for word in words) >= FEWEST


def stopped_at(start: int, end: int, names: Names) -> Broken:
    """That a sentence could not be read from there on."""
    example = spelling(names.unknowns[-1]) if names.unknowns else "F_AB"
    return Broken("unknown-name/sentence", start, end, example=example)
