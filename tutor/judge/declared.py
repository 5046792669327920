"""Which members does a line say to have drawn pushing: 80 - 0.8 F_AE = 0 (AE in compression)?

What a line declares behind it holds for that line alone, whatever sense was drawn before.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import replace

from tutor.judge.known_values import KnownValue, KnownValues
from tutor.judge.typed import Coefficient, TypedEquation
from tutor.judge.verdict import Remark, Verdict
from tutor.judge.worked import letter_of, value_ended
from tutor.notation import Line, Names
from tutor.notation.ending import NEGATED, WORD
from tutor.notation.lexicon import folded, said
from tutor.text import listed

AS_DRAWN = (
    "Read with {names} drawn {how} the joint, as you say; give a value with its letter, T or C."
)
HOW = {"T": "pulling on", "C": "pushing on"}


def drawn_otherwise(
    line: Line, names: Names, members: Collection[str], own: KnownValues
) -> Mapping[str, str]:
    """The members of which a line says another sense than the student's own, each with T or C."""
    found: dict[str, str] = {}
    starts = [step.span.start for step in line.steps]
    ends = [step.span.end for step in line.steps]
    typed = {term.name for step in line.steps for side in step.sides for term in side.terms}
    for start, end in zip([0, *ends], [*starts, len(line.text)], strict=True):
        found |= _spoken_of(line.text[start:end], names)
    for step in line.steps:
        letter, name = step.sides[-1].letter, letter_of(step, members, own.known)
        if letter and name and not found and value_ended(step, own.known) is None:
            found[name] = letter
    return {
        name: letter
        for name, letter in found.items()
        if name in members and name in typed and own.sign(name) != (1.0 if letter == "T" else -1.0)
    }


def as_declared(own: KnownValues, senses: Mapping[str, str]) -> KnownValues:
    """The student's senses and values with the members in `senses` drawn so."""
    known = {
        name: KnownValue(-value.value, value.radius) if name in senses else value
        for name, value in own.known.items()
    }
    return KnownValues({**own.senses, **senses}, known)


def turned(line: TypedEquation, senses: Mapping[str, str]) -> TypedEquation:
    """An equation with the members in `senses` drawn the other way."""
    unknowns = {
        name: _turned(typed) if name in senses else typed for name, typed in line.unknowns.items()
    }
    return replace(line, unknowns=unknowns)


def told(verdict: Verdict, senses: Mapping[str, str]) -> Verdict:
    """A right verdict with a remark that says how the line was read."""
    names, letter = listed(list(senses)), next(iter(senses.values()))
    remark = Remark("declared", AS_DRAWN.format(names=names, how=HOW[letter]))
    return replace(verdict, remarks=(*verdict.remarks, remark))


def _spoken_of(text: str, names: Names) -> dict[str, str]:
    """The forces named in words, each with the T or C of the word behind it."""
    found: dict[str, str] = {}
    spoken: list[str] = []
    words = WORD.findall(text)
    for word in words:
        letter = said(word, "T", "C") if len(word) > 2 else None
        if letter is None:
            spoken += names.plainly(word)
            continue
        found |= dict.fromkeys(spoken, letter)
        spoken = []
    return {} if any(folded(word) in NEGATED for word in words) else found


def _turned(typed: Coefficient) -> Coefficient:
    return replace(typed, value=-typed.value, terms=tuple(-term for term in typed.terms))
