"""What does a student do who takes a hint at its word? Reads the forces in it and writes those anew.

Nothing but the text of the hint is looked at. A student who is told that a term is wrong writes that
term so that it goes with the others, which the hint has left alone.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import replace
from itertools import pairwise, product

from lines import Piece

SAME = 0.02
NAMED = re.compile(
    r"the force in (?P<member>[\w-]+)|the reaction (?P<reaction>\w+)"
    r"|(?:the|one of the) (?P<part>horizontal |vertical )?loads? at (?P<joint>\w+)",
    re.IGNORECASE,
)
FITS = re.compile(r"What you wrote for (.*) fits")
WHOLE_LINE = (
    "Begin again",
    "Go to each angle",
    "All the members",
    "Give each number of this line",
    "The numbers of this line",
    "One number stands for no force",
    "Write the one that was asked for",
    "Measure every arm",
)
NUMBERS = "The terms with an unknown fit"
KEEP = "Keep this line under its own name"


def alternatives(hint: str) -> list[str]:
    """What a hint points at, one thing after the other where it leaves a choice."""
    found = []
    for each in re.split(r" Or neither is so: | There may be more: ", hint):
        sentences = re.split(r"(?<=[.?]) (?=[A-Z])", each)
        found += [" ".join(chosen) for chosen in product(*map(_choices, sentences))]
    return [text[:1].upper() + text[1:] for text in found]


def _choices(sentence: str) -> list[str]:
    """A sentence, or each of the forces that it names as those of which one is meant."""
    if sentence.startswith("Either "):
        each = sentence.removeprefix("Either ").rstrip(".").split("; or ")
        return [c for one in each for c in _choices(one[:1].upper() + one[1:])]
    named = list(NAMED.finditer(sentence))
    between = (sentence[a.end() : b.start()] for a, b in pairwise(named))
    if any(re.search(r"\bor\b", text) for text in between):
        return [match[0] for match in named]
    return [sentence]


def forces_in(hint: str) -> frozenset[str]:
    """The forces that a hint names, called as the free body calls them."""
    found = set()
    for match in NAMED.finditer(hint):
        if match["joint"]:
            axis = {"horizontal ": " x", "vertical ": " y"}.get((match["part"] or "").lower(), "")
            found.add(f"load {match['joint']}{axis}")
        else:
            found.add(match["member"] or match["reaction"])
    return frozenset(found)


def mended(hint: str, line: Sequence[Piece], true: Sequence[Piece]) -> tuple[Piece, ...] | None:
    """The line after one thing the hint points at was put right, or None where it names nothing.

    Where the hint is about the line as a whole, or says only what fits, the rest is written anew.
    """
    if match := FITS.search(hint):
        return _with_right(line, true, {p.force for p in line} - forces_in(match[1]))
    if hint.startswith(WHOLE_LINE):
        return tuple(true)
    if hint.startswith(NUMBERS) or "another force of the same size" in hint:
        return _with_right(line, true, {p.force for p in (*line, *true) if p.symbol is None})
    named = forces_in(hint)
    if not named:
        return None
    if hint.endswith("a part here."):
        return tuple(piece for piece in true if piece.force in named)
    anew = _with_right(line, true, named)
    return anew if values(anew) != values(line) else _with_right(line, true, _alike(line, named))


def _alike(line: Sequence[Piece], named: frozenset[str]) -> frozenset[str]:
    """These forces, and those whose number in the line cannot be told from theirs."""
    sizes = {round(abs(p.value), 9) for p in line if p.force in named and p.symbol is None}
    alike = {p.force for p in line if p.symbol is None and round(abs(p.value), 9) in sizes}
    return named | alike


def _with_right(
    line: Sequence[Piece], true: Sequence[Piece], named: set[str] | frozenset[str]
) -> tuple[Piece, ...]:
    """The terms of the forces named written so that they go with the others."""
    rest = tuple(p for p in line if p.force not in named)
    scale = _scale(values(rest), values(true))
    anew = (replace(p, coefficient=scale * p.coefficient) for p in true if p.force in named)
    return (*rest, *anew)


def values(line: Sequence[Piece]) -> dict[str, float]:
    """What stands beside or for each force."""
    found: dict[str, float] = {}
    for piece in line:
        found[piece.force] = found.get(piece.force, 0.0) + piece.value
    return found


def _scale(rest: Mapping[str, float], true: Mapping[str, float]) -> float:
    """By what the terms left alone are multiplied, as most of them have it; as written in a draw."""
    ratios = [value / true[name] for name, value in rest.items() if true.get(name) and value]

    def agreeing(ratio: float) -> tuple[int, float]:
        return sum(abs(ratio - other) <= SAME * abs(ratio) for other in ratios), -abs(ratio - 1)

    return max(ratios, key=agreeing, default=1.0)
