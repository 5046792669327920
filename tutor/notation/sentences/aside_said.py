"""What does an aside say of the statements around it: how it joins them, T or C, that something is not so?"""

from __future__ import annotations

import re

from tutor.notation.elements.lexicon import HEDGES, folded, says
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import LETTERS
from tutor.notation.sentences.bits import bits_of
from tutor.notation.sentences.talk import BECAUSE, CONCLUDING, PREMISE, Clause, reverses
from tutor.notation.sides.heeded import NEGATED
from tutor.notation.sides.turned import denies_a_way, makes_another

_WORD = re.compile(rf"[{LETTERS}]+(?:'[{LETTERS}]+)*")
VALUE = rf"[-+]? ?(?:[0-9][0-9.,]*|\.[0-9]+)(?: ?[{LETTERS}#]{{1,4}})?(?: *[(\[]?(?:[TtCc]|[{LETTERS}]{{3,12}})[)\]]?)?"
AT_END = re.compile(rf"(?<![\w.,]){VALUE}[ .!]*$")
_NOT_SIZE = re.compile(
    rf"\b(?:{NEGATED}) *(?P<size>[-+]? ?[0-9][0-9.,]*) *(?:[{LETTERS}]{{1,4}}\b)?",
    re.IGNORECASE,
)
_LAST_SIZE = re.compile(r"(?P<size>[0-9]+(?:[.,][0-9]+)?|[.,][0-9]+)[^0-9]*$")
_TAKEN_BACK = re.compile(
    rf"\b(?:sorry|oops|wait|instead|correction)\b|(?<!\bso )\bno *$|\bno[, ]+(?!(?:[{LETTERS}]+ )*[{LETTERS}]{{3}})",
    re.IGNORECASE,
)


def joins(said: str) -> str:
    """The sign for how an aside leads on: ∴ where what follows comes out of what stands before."""
    words = [folded(word) for word in _WORD.findall(said)]
    if any(word in PREMISE for word in (*words[:2], *words[-2:])):
        return ";"
    return "∴" if any(says(word, "so") or word in CONCLUDING for word in words) else ";"


def only_leads(said: str) -> bool:
    """Whether words do nothing but lead to a number: gives about, so I get, works out at."""
    words = [folded(word) for word in _WORD.findall(said)]
    return bool(words) and all(
        word in HEDGES or word in _LINKS or says(word, "so") or word in CONCLUDING for word in words
    )


def leads_to_value(said: str) -> bool:
    """Whether words behind a statement give a value: which gives about 9 kN."""
    value = AT_END.search(said)
    return value is not None and only_leads(said[: value.start()])


_LINKS = frozenset((
    "and", "then", "now", "which", "we", "if", "equals", "us", "me", "left", "equal", "to", "both", "each", "same", "the",
))  # fmt: skip


def understood(said: str) -> bool:
    """Whether all words of an aside only lead on to what follows them."""
    return not any(map(str.isdigit, said)) and all(
        folded(word) in HEDGES | PREMISE
        or says(word, "so", "and", "lead", "filler", "because")
        or folded(word) in CONCLUDING
        for word in _WORD.findall(said)
    )


def denied(said: str, before: str, names: Names) -> bool:
    """Whether an aside takes back what stands before it. That it is not another number takes nothing back."""
    stated = _LAST_SIZE.search(before)
    for found in _NOT_SIZE.finditer(said):
        if stated is None or _size(found["size"].strip("-+ ")) == _size(stated["size"]):
            return True
    rest = _NOT_SIZE.sub(" ", said)
    if _TAKEN_BACK.search(rest) is not None or makes_another(rest, before) or denies_a_way(rest):
        return True
    bits = bits_of(rest.strip("()[]{} "), names)
    return bool(bits) and reverses(rest.strip("()[]{} "), Clause(bits)) is not None


def _size(text: str) -> float:
    try:
        return float(text.replace(",", ".").strip("."))
    except ValueError:
        return -1.0


def ways_in(said: str, before: str) -> list[tuple[int, int]]:
    """The places of T or C in an aside behind a value, or of a way where it says nothing else."""
    stated = _LAST_SIZE.search(before)
    if stated is None or _size(stated["size"]) == 0.0:
        return []
    words = list(_WORD.finditer(said))
    if not words or folded(words[0][0]) in BECAUSE or says(words[0][0], "because"):
        return []
    letters = [word for word in words if says(word[0], "T", "C")]
    ways = [word for word in words if says(word[0], "left", "right", "up", "down")]
    plain = all(
        folded(word[0]) in HEDGES or says(word[0], "filler", "so", "and", "is", "lead")
        for word in words
        if word not in ways
    )
    return [word.span() for word in letters or (ways if plain else [])]
