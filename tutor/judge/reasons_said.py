"""Is it so what a right line says beside its equations: since BF is in tension, because the load is 30?

A reason is held against what is given and what the student has found; it makes a right line wrong nowhere.
Of a force without a value yet it is only said that it was not looked at, whatever the truth.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator
from dataclasses import dataclass
from math import hypot

from tutor.judge.about import Asked, Value
from tutor.judge.desk import Desk
from tutor.judge.known_values import can_act, positive_sense, senses_for
from tutor.judge.spoken import forces_named
from tutor.judge.values import is_nothing
from tutor.judge.worked import value_given
from tutor.notation import Line
from tutor.notation.elements.lexicon import Meaning, folded, said, says
from tutor.notation.elements.tree import Span
from tutor.notation.sides.ending import WORD
from tutor.notation.sides.heeded import DRAWN, denies

NOT_SO = "“{words}” is not so: {truth}."
UNFOUND = "“{words}” was not looked at: {name} is not found yet."
NO_LOAD = "no load {where}of that size is given"
DOES = {"T": "is in tension", "C": "is in compression", "zero": "is zero"}
WAYS: tuple[Meaning, ...] = ("left", "right", "up", "down")
SHOWN = 0.006
"""How far, as a share, a number in words may lie from the one it stands for."""
SHORTEST = 3
"""Characters of the shortest word that says a sense."""
_SUPPOSES = frozenset((
    "with", "taking", "taken", "take", "assuming", "let", "suppose", "supposing", "would", "should", "were", "unless",
    "until", "whether", "when", "if", "angenommen", "like", "than", "positive", "negative", "called", "call",
))  # fmt: skip
_CLAUSE = re.compile(r"[^,;:()\[\].∴⇒→]+(?:\.(?=[0-9])[^,;:()\[\].∴⇒→]*)*")
_LEFT_OUT = re.compile(r"\bleft +(?:out|over|alone|behind)\b")
_MAY = re.compile(r"[^\W\d_]{3}")
_LOAD = re.compile(
    r"\b(?:load|weight|last|force applied)\b(?: +(?:here|there))?(?: +(?:at|on|an|in)(?: +(?:joint|pin|node))? +(?P<joint>[A-Z]\w?))?"
    r" +(?:is|are|being|was|of|=|beträgt|ist) *(?:only|just|about)? *(?P<size>[0-9]+(?:[.,][0-9]+)?)(?! *[0-9*/+^-])",
    re.IGNORECASE,
)
_PART = re.compile(r"[0-9)/*·×](?: *of)? *$")
"""Behind it a force stands with a factor: 0.6 CD is 12 says nothing of CD itself."""
_NUMBER = re.compile(
    r" *(?:is|=|equals|being|was) *(?P<sign>[-−]?) *(?P<size>[0-9]+(?:[.,][0-9]+)?)(?! *[0-9*/+^-])"
)
_OF_SIZE = re.compile(
    r"(?: +(?:force|member))? *(?:of|at|with|:)? *(?P<sign>[-−]?)(?P<size>[0-9]+(?:[.,][0-9]+)?)(?! *[0-9*/+^-])"
)


_OF_LENGTH = re.compile(
    r"\b(?:arms?|lever|distances?|lengths?|long|offset|span|rise|height|hebelarm|bras|brazo)\b|[0-9] *(?:mm|cm|m|ft|in)\b"
)
"""Words of a clause whose numbers are lengths: the arm of the wind is AB = 2√3 says nothing of the force in AB."""


@dataclass(frozen=True)
class Checked:
    """What was looked at in a line: sentences on what is not so, and the places that need no word more."""

    told: tuple[str, ...] = ()
    places: tuple[Span, ...] = ()


@dataclass(frozen=True)
class _Held:
    """What a reason is held against: what the student has of the truss, and values of the line itself."""

    desk: Desk
    here: Collection[str]
    line: Line

    def named(self, word: str) -> tuple[str, ...]:
        """The forces that a word means."""
        return forces_named(word, self.desk.names, self.line)

    def value(self, name: str) -> float | None:
        """The value that the student has of a force, in its positive sense."""
        own = self.desk.own
        if name in own.known:
            return own.known[name].value * own.sign(name)
        return self.desk.values()[name] if name in self.here else None


def reasons_checked(desk: Desk, about: Asked, line: Line) -> Checked:
    """What the words beside the statements of a right line say of forces and loads, held against them."""
    clauses = [found for span in _beside(line) for found in _clauses(line.text, span)]
    if not clauses:
        return Checked()
    told: list[str] = []
    places: list[Span] = []
    found_here = {name for step in line.steps if (name := value_given(step)) is not None}
    found_here |= {about.unknown} if isinstance(about, Value) else set()
    held = _Held(desk, found_here, line)
    for found in clauses:
        words = found[0].strip()
        answers = [] if _supposes(words) else list(_answers(held, words))
        told += [answer for answer in answers if answer]
        if answers or _as_drawn(held, words):
            places.append(Span(*found.span()))
    return Checked(tuple(dict.fromkeys(told)), tuple(places))


def _beside(line: Line) -> Iterator[Span]:
    """The stretches of a line before, between and behind its statements."""
    starts = [step.span.start for step in line.steps]
    ends = [step.span.end for step in line.steps]
    for start, end in zip([0, *ends], [*starts, len(line.text)], strict=True):
        if end - start > SHORTEST:
            yield Span(start, end)


def _clauses(text: str, span: Span) -> Iterator[re.Match[str]]:
    """The clauses of a stretch that say something in words."""
    for found in _CLAUSE.finditer(text, span.start, span.end):
        if _MAY.search(found[0]) is not None:
            yield found


def _supposes(words: str) -> bool:
    """Whether a clause says how something is drawn or taken, or denies what it speaks of."""
    each = [folded(word) for word in WORD.findall(words)]
    return any(word in _SUPPOSES or word in DRAWN or denies(word) for word in each) or (
        "?" in words or _LEFT_OUT.search(words) is not None
    )


def _as_drawn(held: _Held, words: str) -> bool:
    """Whether a clause only says of forces that their arrows are drawn as the student has drawn them."""
    each = [word for word in WORD.findall(words) if len(word) > 1]
    if not any(folded(word) in DRAWN for word in each) or any(map(denies, each)):
        return False
    desk = held.desk
    spoken = [name for word in each for name in held.named(word)]
    for name in spoken:
        own = desk.own.senses.get(name)
        ways: tuple[Meaning, ...] = ("T", "C") if name in desk.problem.member else WAYS
        told = {way for word in each if len(word) >= SHORTEST and (way := said(word, *ways))}
        first = senses_for(desk.problem, name)[0]
        if (told and told != {own or first}) or not (told or own):
            return False
    return bool(spoken)


def _answers(held: _Held, words: str) -> Iterator[str]:
    """What is to be said of each thing that a clause says; empty where it is so."""
    desk = held.desk
    if (load := _LOAD.search(words)) is not None:
        if not desk.problem.spreads:
            yield _of_load(desk, words, load)
        return
    of_forces = _OF_LENGTH.search(words) is None
    spoken: list[str] = []
    for found in WORD.finditer(words):
        word = found[0]
        way = said(word, "T", "C", "zero", "left", "right", "up", "down")
        if len(word) < SHORTEST or way is None:
            names = held.named(word) if not word.islower() or len(word) > 1 else ()
            if len(names) == 1 and _PART.search(words, 0, found.start()) is None:
                spoken.append(names[0])
                number = _NUMBER.match(words, found.end())
                if number is not None and of_forces:
                    yield _of_number(held, words, names[0], number)
                    spoken = []
            elif not says(word, "is", "filler", "and", "so") and word not in ("both", "all"):
                spoken = spoken if folded(word) in _LINKING else []
            continue
        number = _OF_SIZE.match(words, found.end())
        for name in spoken:
            yield _of_way(held, words, name, way)
            if number is not None and of_forces:
                yield _of_number(held, words, name, number)
        spoken = []


_LINKING = frozenset(("also", "itself", "must", "has", "have", "under", "purely", "only", "surely", "clearly", "indeed", "carries", "carry", "therefore", "a", "an", "pure", "as"))  # fmt: skip


def _of_way(held: _Held, words: str, name: str, way: str) -> str:
    problem, value = held.desk.problem, held.value(name)
    member = name in problem.member
    if member != (way in ("T", "C", "zero")) and way != "zero":
        return ""
    if not member and way != "zero" and not can_act(problem, name, way):
        return ""
    if value is None:
        drawn = held.desk.own.senses.get(name) == way
        return "" if drawn else UNFOUND.format(words=words, name=name)
    nothing = is_nothing(problem, value)
    if member:
        is_so = "zero" if nothing else "T" if value > 0 else "C"
        return "" if is_so == way else NOT_SO.format(words=words, truth=f"{name} {DOES[is_so]}")
    if way == "zero" or nothing:
        truth = f"{name} is {'' if nothing else 'not '}zero"
        return "" if nothing == (way == "zero") else NOT_SO.format(words=words, truth=truth)
    along = positive_sense(problem, name, way, 1.0) * value > 0
    truth = f"{name} acts the other way"
    return "" if along else NOT_SO.format(words=words, truth=truth)


def _of_number(held: _Held, words: str, name: str, number: re.Match[str]) -> str:
    desk, value = held.desk, held.value(name)
    if value is None:
        return UNFOUND.format(words=words, name=name)
    size = float(number["size"].replace(",", "."))
    if abs(size - abs(value)) <= SHOWN * abs(value) + 10.0 ** -_places(number["size"]):
        return ""
    truth = f"{name} is {value * desk.own.sign(name):.4g} {desk.problem.force}"
    return NOT_SO.format(words=words, truth=truth)


def _of_load(desk: Desk, words: str, found: re.Match[str]) -> str:
    """What is to be said of the size of a load, which may be meant by a component or by their sum."""
    joint = desk.names.joint(found["joint"]) if found["joint"] else None
    size = float(found["size"].replace(",", "."))
    vectors = [load.vector for load in desk.problem.loads if joint in (None, load.joint)]
    across, up = (sum(vector[axis] for vector in vectors) for axis in (0, 1))
    parts = [part for x, y in (*vectors, (across, up)) for part in (x, y, hypot(x, y))]
    if any(abs(abs(part) - size) <= SHOWN * size for part in parts):
        return ""
    where = f"at {joint} " if joint else ""
    return NOT_SO.format(words=words, truth=NO_LOAD.format(where=where))


def _places(number: str) -> int:
    """How many decimals a number shows, for one unit of the last."""
    return len(number.replace(",", ".").partition(".")[2]) or 1
