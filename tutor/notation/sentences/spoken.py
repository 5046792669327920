"""What does a clause of words say: a value, a zero, T or C of the value before it, a sum, a place, a reason?

A clause is what stands between two marks or formulas of a sentence. What it says is kept in formulas or in
the words that headings and results are read from; all else of it is talk.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from tutor.notation.elements import units
from tutor.notation.elements.lexicon import WAYS, Meaning, folded, says
from tutor.notation.elements.unreadable import Broken
from tutor.notation.headings.heading import heading_in
from tutor.notation.naming.names import Names
from tutor.notation.sentences.bits import Bit
from tutor.notation.sentences.talk import BECAUSE, Clause, words_of
from tutor.notation.sides.zero_words import says_zero

_LINKS = frozenset((
    "and", "carries", "carry", "carrying", "takes", "take", "taking", "has", "having", "bears", "with", "so", "hence", "thus",
    "therefore", "then", "that", "meaning", "ie", "must", "will", "therefor", "whence", "consequently", "which", "also",
    "means", "now", "again", "both", "strength", "magnitude", "size", "amounting", "equal", "total",
))  # fmt: skip
"""Words between a force, what it does and how large it is, besides those of the lexicon."""
_SUMMING = re.compile(r"resol|sum|equilib|balanc|equat|project|gleich|moment|direction|richtung")
_ADVERBS = frozenset(("horizontally", "vertically", "sideways", "horiz", "vert", "hor", "ver"))
_HEADING: tuple[Meaning, ...] = ("sum", "force", "moment", "about", "resolve", "joint", "x", "y", "along", "across", "whole", "turn")  # fmt: skip
_LEADS_TO_JOINT: tuple[Meaning, ...] = ("joint", "about")
_PLACING = frozenset(("at", "for", "zu", "am"))
_SENSES: tuple[Meaning, ...] = (*WAYS, "against")
_WORD = re.compile(r"[^\W\d_][\w'-]*")


def zero_in(text: str, clause: Clause, names: Names) -> bool:
    """Takes the member that a clause says to be zero: "the force in CG is zero", "BF carries nothing"."""
    named = _named(text, clause, names)
    said = text[clause.start : clause.end]
    if len(named) != 1 or not says_zero(said) or _numbers(text, clause):
        return False
    name, behind = named[0], [bit for bit in clause.bits if bit.start > named[0].start]
    zero = next((bit for bit in behind if says_zero(text[bit.start : bit.end])), None)
    if len(behind) < 2 or (zero is None and not says_zero(text[name.end : clause.end])):
        return False
    clause.keep(name.start, name.end, text[name.start : name.end])
    clause.keep(behind[0].start, behind[0].end, "=")
    clause.keep(behind[-1].start, behind[-1].end, "0")
    return True


def takes_value(text: str, clause: Clause, names: Names) -> bool:
    """Takes a value that a clause says in words: "CE is in compression and carries 21 kip"."""
    bits = _behind_that(text, clause)
    inner = Clause(bits)
    named, numbers, ways = _named(text, inner, names), _numbers(text, inner), _ways(text, bits)
    if len(named) != 1 or len(numbers) != 1 or len(ways) > 1 or named[0].start > numbers[0].start:
        return False
    if not _only_links(text, bits, names):
        return False
    link = next((bit for bit in bits if bit.kind == "word" and bit.start > named[0].start), None)
    if link is None or link.start > numbers[0].start:
        return False
    does, behind = "=", [way for way in ways if way.start > link.start]
    for way in ways:
        word = text[way.start : way.end]
        if way.start < named[0].start:
            does = "=tens" if says(word, "T") else "=comp" if says(word, "C") else "="
    taken = len(behind) + len(does) // len("=tens") == len(ways)
    if not taken or len(does) > link.end - link.start:
        return False
    clause.keep(named[0].start, named[0].end, text[named[0].start : named[0].end])
    clause.keep(link.start, link.end, does)
    for bit in (*behind, numbers[0]):
        clause.keep(bit.start, bit.end, text[bit.start : bit.end])
    return True


def ending_in(text: str, clause: Clause, names: Names, given: str | None) -> bool:
    """Takes T or C, or a way, said of the value before: "a tie", "hence AF is a compression member".

    `given` is the force whose value stands before; where another one is named, nothing is taken.
    """
    bits = _behind_that(text, clause)
    inner = Clause(bits)
    named, ways = _named(text, inner, names), _ways(text, bits)
    if (
        given is None
        or len(ways) != 1
        or _numbers(text, inner)
        or not _only_links(text, bits, names)
    ):
        return False
    if any(names.meant(text[bit.start : bit.end]) != (given,) for bit in named):
        return False
    clause.keep(ways[0].start, ways[0].end, text[ways[0].start : ways[0].end])
    return True


def heading_of(text: str, clause: Clause, names: Names) -> bool:
    """Takes the sum that a clause names in words: "resolving vertically at H", "moments about C"."""
    if _names_a_sum(text, clause, names):
        clause.keep(clause.start, clause.end, text[clause.start : clause.end])
        return True
    if not _sums(words_of(text, clause)):
        return False
    kept = [bit for index, bit in enumerate(clause.bits) if _heads(text, clause.bits, index, names)]
    cleaned = [" "] * len(text)
    for bit in kept:
        cleaned[bit.start : bit.end] = text[bit.start : bit.end]
    head = heading_in("".join(cleaned), clause.start, clause.end, names) if kept else None
    if head is None or head.label is None or (head.label.kind is None and not head.label.whole):
        return False
    for bit in kept:
        clause.keep(bit.start, bit.end, text[bit.start : bit.end])
    return True


def _names_a_sum(text: str, clause: Clause, names: Names) -> bool:
    """Whether a clause is a heading as it stands: A ↑."""
    try:
        head = heading_in(text, clause.start, clause.end, names)
    except Broken:
        return False
    return head is not None and not head.passed and head.label is not None and bool(head.label.kind)


def takes_joint(text: str, clause: Clause, names: Names) -> bool:
    """Takes the joint that a clause begins by naming: "At E only DE ...", "Now for D"."""
    bits = clause.bits
    if folded(text[bits[0].start : bits[0].end]) in BECAUSE - {"for", "from"}:
        return False
    for index, bit in enumerate(bits[:6]):
        if names.joint(text[bit.start : bit.end]) is None or bit.kind not in ("word", "formula"):
            continue
        before = bits[max(0, index - 1)]
        word = text[before.start : before.end].lower()
        if len(bits) == 1 or (bit.kind == "word" and (says(word, "joint") or word in _PLACING)):
            clause.keep(before.start, bit.end, text[before.start : bit.end])
            return True
    return False


def only_ways(text: str, bit: Bit) -> bool:
    """Whether a word or an aside says nothing but T or C, or which way, with small words around it."""
    words = _WORD.findall(text, bit.start, bit.end)
    return bool(words) and all(
        says(word, *_SENSES, "filler") or word in ("acting", "i", "e") for word in words
    )


def says_way(text: str, bit: Bit) -> bool:
    """Whether a word or an aside has T or C, or a way, in it."""
    return any(says(word, *_SENSES) for word in _WORD.findall(text, bit.start, bit.end))


def _sums(words: Sequence[str]) -> bool:
    """Whether words speak of a sum: "resolving", "in vertical direction", "horizontally" alone."""
    if any(_SUMMING.match(word) for word in words):
        return True
    if words[:1] and words[0] in BECAUSE:
        return False
    short = len([word for word in words if not says(word, "filler", "lead", "so")]) < 3
    return any(says(word, "resolve") or (word in _ADVERBS and short) for word in words)


def _named(text: str, clause: Clause, names: Names) -> list[Bit]:
    """The bits that are a force alone."""
    return [
        bit
        for bit in clause.bits
        if bit.kind == "formula" and names.meant(text[bit.start : bit.end])
    ]


_NUMBER = re.compile(r"[-+]? ?[0-9][0-9.,]*(?: ?([^\W\d_]{1,4}))?")


def _numbers(text: str, clause: Clause) -> list[Bit]:
    """The bits that hold a figure, apart from names with one."""
    return [
        bit
        for bit in clause.bits
        if bit.kind == "formula" and re.search(r"(?<![\w}])[0-9]", text[bit.start : bit.end])
    ]


def _ways(text: str, bits: Sequence[Bit]) -> list[Bit]:
    found = [bit for bit in bits if bit.kind in ("word", "aside") and says_way(text, bit)]
    return [bit for bit in found if bit.kind == "aside" or says(text[bit.start : bit.end], *WAYS)]


def _only_links(text: str, bits: Sequence[Bit], names: Names) -> bool:
    """Whether all between a force, its number and its way only joins them."""
    for bit in bits:
        said = text[bit.start : bit.end]
        if bit.kind == "aside" and only_ways(text, bit):
            continue
        if bit.kind == "formula":
            number = _NUMBER.fullmatch(said)
            if not names.meant(said) and (
                number is None or (number[1] and number[1] not in units.SPELLED)
            ):
                return False
        elif bit.kind != "word" or not _links(said):
            return False
    return True


def _links(word: str) -> bool:
    return (
        folded(word) in _LINKS
        or word in ("i", "e")
        or says(word, *WAYS, "filler", "is", "so")
        or word == "."
    )


def _behind_that(text: str, clause: Clause) -> Sequence[Bit]:
    """The bits behind the word that leads to what is said: "the sign indicates that CE is ..."."""
    for index, bit in enumerate(clause.bits[:-1]):
        if folded(text[bit.start : bit.end]) in ("that", "meaning", "dass"):
            return clause.bits[index + 1 :]
    return clause.bits


def _heads(text: str, bits: Sequence[Bit], index: int, names: Names) -> bool:
    """Whether a word belongs to a heading: of the lexicon, or the joint that one before it calls for."""
    bit = bits[index]
    word = text[bit.start : bit.end]
    before = text[bits[index - 1].start : bits[index - 1].end] if index else ""
    if names.joint(word) is not None and bit.kind in ("word", "formula"):
        return says(before, *_LEADS_TO_JOINT) or before.lower() in ("at", "um")
    if names.meant(word) and says(before, "along", "across"):
        return True
    if bit.kind != "word" or len(word) < 2:
        return False
    if word.lower() == "to":
        return says(before, "across", "along")
    return word.lower() == "at" or (says(word, *_HEADING) and not says(word, "so"))
