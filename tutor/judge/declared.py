"""Which forces does a line say to have drawn otherwise: 80 - 0.8 F_AE = 0 (AE in compression), (A_x drawn to the left)?

What a line declares behind it holds for that line alone, whatever sense was drawn before.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Mapping
from dataclasses import replace

from tutor.judge.known_values import KnownValue, KnownValues
from tutor.judge.spoken import forces_named
from tutor.judge.typed import TypedEquation
from tutor.judge.verdict import Remark, Verdict
from tutor.judge.worked import member_lettered, side_value, value_ended
from tutor.notation import Line, Names, Step
from tutor.notation.elements.lexicon import folded, said
from tutor.notation.sides.ending import WORD
from tutor.notation.sides.heeded import denies
from tutor.text import listed

AS_DRAWN = "Read with {names} drawn {how} the joint, as you say; give a value with {what}."
HOW = {
    "T": "pulling on",
    "C": "pushing on",
    "left": "acting to the left on",
    "right": "acting to the right on",
    "up": "acting up on",
    "down": "acting down on",
}
OTHERWISE = (
    "You say that {name} {does}, but then its part in this sum has the other sign; as it stands, the line "
    "takes {name} as {other} the joint. Turn that sign, or leave out the words."
)
DOES = {
    "T": "pulls",
    "C": "pushes",
    "left": "acts to the left",
    "right": "acts to the right",
    "up": "acts up",
    "down": "acts down",
}
OTHER = {"T": "C", "C": "T", "left": "right", "right": "left", "up": "down", "down": "up"}
SHORTEST = 3
"""Characters of the shortest word that says a sense."""
ASSUMES = frozenset(
    ["with", "taking", "taken", "assuming", "assumed", "assume", "drawn", "if", "let", "as"]
)


_CALLED = re.compile(
    r"\b(?:the +)?(?:thrust|push|pull|tension|compression) +(?:of|in) +(?:the +)?(?:strut|tie|member|bar)s? +[A-Z]\w*"
)
_REACTION_DRAWN = re.compile(
    r"(?<![\w}])(?P<name>[A-Za-z][\w{}]*),? +(?:(?:is|was) +)?(?:drawn|taken|assumed)(?: +(?:as|positive|acting|pointing|to|the|be|towards))* +(?P<way>left|right|up|down)(?:wards?)?\b",
    re.IGNORECASE,
)
"""A reaction that a line says to be drawn one way: A_x drawn to the left."""
_DRAWS = re.compile(r"\b(?:drawn|drawing|assumed|assuming|taking|taken)\b", re.IGNORECASE)
_EXPECTED = re.compile(
    r"\b(?:has|have|had|needs?|ought|is bound|are bound) +to +(?:push|pull|press|be|act|carry|work|go|hold|take|lift|bear|point)\w*"
    r"|\b(?:must|should|will|can only|would) +(?:\w+ +)?(?:push|pull|press|be|act|carry|work|hold|take|lift|bear|point)\w*",
    re.IGNORECASE,
)
"""Words by which the way of a force is expected, and not drawn: the post has to push up."""
_REACTION_ACTS = re.compile(
    r"(?<![\w}])(?P<name>[A-Z]_\{?[a-z]\}?|[A-Z][a-z]),?(?: +[a-z]+){0,3}? +(?:pull|push|act|point|go|press|shove|hold|hang|bear)(?:e?s)?(?: +(?:back|to|the|on|hard|straight))* +(?P<way>left|right|up|down)(?:wards?)?\b"
)
"""What a line says a reaction to do: A_x pulls left, A_y hangs on and pulls down."""
_AXES = {"left": "_x", "right": "_x", "up": "_y", "down": "_y"}


def drawn_otherwise(
    line: Line, names: Names, members: Collection[str], own: KnownValues
) -> Mapping[str, str]:
    """The forces of which a line says another sense than the student's own, each with T or C or its way."""
    if _stands_alone(line):
        return {}
    found: dict[str, str] = {}
    starts = [step.span.start for step in line.steps]
    ends = [step.span.end for step in line.steps]
    typed = {term.name for step in line.steps for side in step.sides for term in side.terms}
    for start, end in zip([0, *ends], [*starts, len(line.text)], strict=True):
        acting = _reactions_acting(line.text[start:end], names)
        found |= _spoken_of(line, start, end, names) | acting
    for step in line.steps:
        letter, name = step.sides[-1].letter, member_lettered(step, members, own.known)
        if letter and name and not found and _says_the_way(line, step, own.known):
            found[name] = letter
            found |= _as_sizes(step, name, own)
    return {
        name: letter
        for name, letter in found.items()
        if (name in members or letter in _AXES)
        and name in typed
        and own.sign(name) != KnownValues({name: letter}, {}).sign(name)
    }


def _says_the_way(line: Line, step: Step, known: Collection[str]) -> bool:
    """Whether a T or C behind a statement is the sense that the line has its member drawn in.

    So it is behind an equation; behind a value where its number is positive and the equation that it
    comes from stands before it, with letters: 3/5 AB = A_y => AB = 15.83 C.
    """
    name = value_ended(step, known)
    if name is None:
        return True
    worked = [side for other in line.steps for side in other.sides if side.name != name]
    by_letters = any(term.name is not None for side in worked for term in side.terms)
    return by_letters and side_value(step.sides[-1]) > 0.0


def _as_sizes(step: Step, name: str, own: KnownValues) -> dict[str, str]:
    """The known forces that a chain to a value takes as sizes: AF = 0.8 AB = 12.67 T, AB being in C."""
    sides = [side for side in step.sides if side.name != name]
    if len(sides) == len(step.sides) or any(len(side.terms) > 1 for side in sides):
        return {}
    used = {term.name for side in sides for term in side.terms if term.name in own.known}
    against = [other for other in used if other and own.known[other].value < 0.0]
    return {other: "C" if own.sign(other) > 0.0 else "T" for other in against}


def _stands_alone(line: Line) -> bool:
    """Whether a line is one statement without T or C, and no word has room beside it."""
    first, last = line.steps[0], line.steps[-1]
    beside = max(first.span.start, len(line.text) - last.span.end)
    return first is last and beside < SHORTEST and last.sides[-1].letter is None


def assumed_otherwise(
    line: Line, names: Names, members: Collection[str], own: KnownValues
) -> Mapping[str, str]:
    """Those of `drawn_otherwise` that a line says before its equation, or to be assumed.

    What is said behind an equation may also be what it comes to, and what a force has to do is what it
    is expected to come to.
    """
    said = drawn_otherwise(line, names, members, own)
    if not said:
        return said
    before = line.steps[0].span.start
    drawn = any(folded(word) in ASSUMES for word in WORD.findall(line.text, 0, before))
    expected = not drawn and _EXPECTED.search(line.text, 0, before) is not None
    front = {} if expected else dict(_spoken_of(line, 0, before, names))
    behind = line.steps[-1].span.end
    if any(folded(word) in ASSUMES for word in WORD.findall(line.text, behind)):
        front |= _spoken_of(line, behind, len(line.text), names)
    return {name: letter for name, letter in said.items() if front.get(name) == letter}


def draws_first(line: Line, senses: Mapping[str, str], names: Names) -> bool:
    """Whether a line says before its equation that it draws all of these so: with AF drawn in compression, ..."""
    before = line.steps[0].span.start
    front = _spoken_of(line, 0, before, names)
    return _DRAWS.search(line.text, 0, before) is not None and senses.items() <= front.items()


def as_declared(own: KnownValues, senses: Mapping[str, str]) -> KnownValues:
    """The student's senses and values with the members in `senses` drawn so."""
    known = {
        name: KnownValue(-value.value, value.radius) if name in senses else value
        for name, value in own.known.items()
    }
    return KnownValues({**own.senses, **senses}, known)


def senses_turned(line: TypedEquation, senses: Mapping[str, str]) -> TypedEquation:
    """An equation with the members in `senses` drawn the other way."""
    unknowns = {
        name: typed.times(-1.0) if name in senses else typed
        for name, typed in line.unknowns.items()
    }
    return replace(line, unknowns=unknowns)


def told(verdict: Verdict, senses: Mapping[str, str]) -> Verdict:
    """A right verdict with a remark that says how the line was read."""
    names, letter = listed(list(senses)), next(iter(senses.values()))
    what = "its way" if letter in _AXES else "its letter, T or C"
    remark = Remark("declared", AS_DRAWN.format(names=names, how=HOW[letter], what=what))
    return replace(verdict, remarks=(*verdict.remarks, remark))


def in_own_sense(verdict: Verdict) -> Verdict:
    """A verdict on a value under the other sense that a line says, with the value under the student's own."""
    return verdict if verdict.value is None else replace(verdict, value=0.0 - verdict.value)


def contradicted(verdict: Verdict, senses: Mapping[str, str]) -> Verdict:
    """That a line is right only against what it says of a member itself: it is asked about."""
    name, letter = next(iter(senses.items()))
    text = OTHERWISE.format(name=name, does=DOES[letter], other=HOW[OTHER[letter]])
    return Verdict("undecided", text, about=verdict.about, reading=verdict.reading)


def _spoken_of(line: Line, start: int, end: int, names: Names) -> dict[str, str]:
    """The forces named in words of a line, each with the T or C of the word behind it.

    A member that is only called by what it does, the thrust of the strut AB, is said nothing of.
    """
    text = _CALLED.sub(" ", line.text[start:end])
    found = _reactions_drawn(text, names)
    spoken: list[str] = []
    words = WORD.findall(text)
    for word in words:
        letter = said(word, "T", "C") if len(word) >= SHORTEST else None
        if letter is None:
            spoken += forces_named(word, names, line)
            continue
        found |= dict.fromkeys(spoken, letter)
        spoken = []
    return {} if any(map(denies, words)) else found


def _reactions_acting(text: str, names: Names) -> dict[str, str]:
    """The reactions that a text says to act along their axis, each with the way; none where it denies anything."""
    denied = any(map(denies, WORD.findall(text)))
    return {} if denied else _reactions_drawn(text, names, _REACTION_ACTS)


def _reactions_drawn(
    text: str, names: Names, pattern: re.Pattern[str] = _REACTION_DRAWN
) -> dict[str, str]:
    """The reactions that a text says to be drawn along their axis, each with the way."""
    drawn: dict[str, str] = {}
    for found in pattern.finditer(text):
        meant, way = names.meant(found["name"]), found["way"].lower()
        if len(meant) == 1 and meant[0].endswith(_AXES[way]):
            drawn[meant[0]] = way
    return drawn
