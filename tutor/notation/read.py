"""What does a typed line say? The one reader of lines, and of headings alone."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace
from functools import lru_cache
from typing import Literal

from tutor.notation.choices import alternatives, other_choices, read_as
from tutor.notation.commas_meant import adding_up
from tutor.notation.elements.label import Label
from tutor.notation.elements.source import Source
from tutor.notation.elements.tree import Span
from tutor.notation.elements.unreadable import Broken, Unreadable
from tutor.notation.formulas.evaluate import Frame
from tutor.notation.headings.heading import heading_in
from tutor.notation.letters.explained import explained_by
from tutor.notation.lines.found import Choice, Found
from tutor.notation.lines.head_end import may_be_listed
from tutor.notation.lines.layout import numbers_apart
from tutor.notation.lines.line import Line, Step
from tutor.notation.lines.reading import checked
from tutor.notation.naming.names import Names
from tutor.notation.pages.bared import SPEAKS, bared
from tutor.notation.pages.block import in_a_row
from tutor.notation.pages.copied import as_meant, figures_asked
from tutor.notation.pages.keyed import is_keyed
from tutor.notation.pages.line_said import line_said
from tutor.notation.pages.prose import unit_apart
from tutor.notation.pages.reasons import without_reasons
from tutor.notation.pages.referred import referred
from tutor.notation.pages.row import rowed, sentenced
from tutor.notation.sentences.aside_spelled import reasoned
from tutor.notation.sentences.asides import asides_apart
from tutor.notation.sentences.part_words import parted, with_part
from tutor.notation.sentences.sentence import in_clauses
from tutor.notation.sentences.tail_talk import without_talk
from tutor.notation.sentences.talked import (
    claims_in_talk,
    failed_in_talk,
    saying_more,
    with_talk_told,
    with_told,
)
from tutor.notation.sides.formula import sides_of
from tutor.notation.taken_down import read_or_dictated
from tutor.notation.value_told import value_spelled

Angles = Literal["degrees", "radians"]
_NOTHING: Mapping[str, float] = {}
_NO_TALK = frozenset(
    ("proportion", "renamed", "letters", "too-deep", "too-many", "two-sizes", "value/not-zero")
)
"""Complaints about what a formula says, however the words around it are read."""
_HEAD_END = re.compile("[:=]")
MOST_KEPT = 256
"""Characters of a line that is remembered as read; those that people write are shorter."""


def read_line(
    text: str,
    names: Names,
    *,
    angles: Angles = "degrees",
    said: Mapping[str, float] = _NOTHING,
    mixed: bool = False,
) -> Line | Unreadable:
    """What `text` says as a line on paper; what cannot be read comes back as `Unreadable`.

    `said` are the angles in degrees and the lengths that earlier lines gave a letter
    ({"θ": 33.69, "a": 4.8}). With
    `angles="radians"` bare angles are in radians, as on a calculator left in that mode; with `mixed`
    forces may stand beside moments.
    """
    frame = Frame(names.force, names.length, angles == "degrees", mixed)
    if len(text) > MOST_KEPT:
        return _line_or_not(text, names, frame, said)
    return _read_before(text, names, frame, tuple(said.items()))


@lru_cache(maxsize=1024)
def _read_before(
    text: str, names: Names, frame: Frame, said: tuple[tuple[str, float], ...]
) -> Line | Unreadable:
    """A line is asked for again and again: as a heading, as an equation, among earlier lines."""
    return _line_or_not(text, names, frame, dict(said))


def _line_or_not(
    text: str, names: Names, frame: Frame, said: Mapping[str, float]
) -> Line | Unreadable:
    row = text
    try:
        row = in_a_row(text)
        line = line_typed(row, names, frame, said)
        return line if row is text else replace(line, text=text)
    except Broken as broken:
        meant = adding_up(broken, row, lambda each: line_typed(each, names, frame, said))
        return replace(meant, text=text) if meant else figures_asked(broken, text).about(text)


def line_typed(text: str, names: Names, frame: Frame, said: Mapping[str, float] = _NOTHING) -> Line:
    """The line as `read_line` gives it; raises Broken."""
    typed = checked(text, "empty")
    if is_keyed(text, typed) and not any(map(names.meanings, said)):
        try:
            return _plainly(text, typed, names, frame)
        except Broken:
            pass
    return _laid_out(text, names, frame, said)


def read_heading(text: str, names: Names) -> Label | Unreadable:
    """The equation that a heading alone names: "ΣM_A", "moments about A", "x", "along 30"."""
    try:
        typed = checked(text, "empty/heading")
        source, part = parted(unit_apart(bared(f"{text}:"), names), names)
        end = len(source.text.rstrip(" :;,."))
        found = heading_in(source.text, 0, end, names)
        if found is None or found.label is None or found.passed:
            raise Broken("heading", 0, len(typed.rstrip()))
        if part is not None:
            return replace(found.label, span=Span(0, len(typed.rstrip())), part=part)
        return line_said(replace(found.label, span=source.place(found.label.span)), typed)
    except Broken as broken:
        return broken.about(text)


def heading_begun(text: str, names: Names) -> Label | None:
    """What a heading names up to its colon or equals sign, whatever stands behind it; else None."""
    label = read_heading(_HEAD_END.split(text, maxsplit=1)[0], names)
    return None if isinstance(label, Unreadable) else label


def without_marks(text: str) -> str:
    """A line of a page in plain characters: no markup, no LaTeX, no bullet, no number it goes by."""
    source = bared(text)
    numbers = numbers_apart(source.text, source.typed(text), factors=False)
    return source.text[numbers.start : numbers.end].strip()


def _plainly(text: str, typed: str, names: Names, frame: Frame) -> Line:
    """A line that is a formula and nothing else."""
    sides, backward = sides_of(typed, names, frame)
    if backward:
        raise Broken("order", 0, 0)
    span = Span(sides[0].span.start, sides[-1].span.end)
    return Line(text, None, (Step(text, sides, None, False, span, frame),))


def readings_beside(line: Line, names: Names) -> tuple[Line, ...]:
    """Other readings of a line that are as good as its usual one.

    One that is keyed in may have another only where it begins with a dash, and that is looked for here.
    """
    if line.alternatives or not may_be_listed(line.text):
        return line.alternatives
    try:
        return _laid_out(line.text, names, line.steps[0].frame, {}).alternatives
    except Broken:
        return ()


def _laid_out(text: str, names: Names, frame: Frame, said: Mapping[str, float]) -> Line:
    """A line as it stands, or as it was dictated."""
    return read_or_dictated(text, names, lambda made: _written(text, made, names, frame, said))


def _written(
    text: str, source: Source, names: Names, frame: Frame, said: Mapping[str, float]
) -> Line:
    """A line as it stands, or where that cannot be read, without what in it and behind it only talks."""
    source, told = explained_by(reasoned(source, names), names)
    try:
        return with_told(_in_ways(text, source, names, frame, said), told)
    except Broken as broken:
        if broken.key in _NO_TALK:
            raise
        for made, talk in without_talk(source, names):
            try:
                return with_told(_in_ways(text, made, names, frame, said), (*told, *talk))
            except Broken:
                continue
        raise


def _in_ways(
    text: str, source: Source, names: Names, frame: Frame, said: Mapping[str, float]
) -> Line:
    """A line as it stands, or where that cannot be read or leaves out a formula, in another way."""
    line: Line | None = None
    try:
        line = with_talk_told(_as_it_stands(text, source, names, frame, said), names)
        failed = None
    except Broken as broken:
        failed = broken
    if line is not None and not claims_in_talk(line):
        return line
    if failed is None or failed.key not in _NO_TALK:
        ways = [_as_sentence, _without_asides]
        for way in ways[: 1 if failed is not None and failed.key == "value/two" else None]:
            try:
                line = saying_more(line, way(text, source, names, frame, said))
            except Broken as broken:
                if failed is not None and failed.key == "no-equals" and way is _as_sentence:
                    failed = broken
            if line is not None and not claims_in_talk(line):
                break
    if line is None:
        assert failed is not None
        raise failed_in_talk(failed, source, names)
    return _with_value_told(line, source, names, frame, said)


def _with_value_told(
    line: Line, source: Source, names: Names, frame: Frame, said: Mapping[str, float]
) -> Line:
    """The line, or what it says with the value that its last clause tells in words, where that was passed over."""
    made = value_spelled(source.text, names) if line.unread else None
    if made is None or not made.stated:
        return line
    try:
        other = _in_ways(line.text, replace(source, text=made.text), names, frame, said)
    except Broken:
        return line
    taken = tuple((kind, source.place(span)) for kind, span in made.taken)
    more = sum(len(step.sides) for step in other.steps)
    return (
        replace(other, taken=(*other.taken, *taken))
        if more > sum(len(step.sides) for step in line.steps)
        else line
    )


def _as_it_stands(
    text: str, source: Source, names: Names, frame: Frame, said: Mapping[str, float]
) -> Line:
    """A line with a heading, remarks or several statements; every way that is as good."""
    source = as_meant(source, names)
    numbers: tuple[str, ...] = ()
    if SPEAKS.search(source.text):
        source, numbers = referred(without_reasons(source, names))
    source = sentenced(rowed(source, source.typed(text), names), names)
    usual = Found(names, frame, Choice())
    try:
        line = read_as(text, source, said, usual)
    except Broken as broken:
        for other in other_choices(usual):
            try:
                return replace(read_as(text, source, said, other), referred=numbers)
            except Broken:
                continue
        raise broken from None
    others = alternatives(text, source, said, usual)
    return replace(line, alternatives=others, referred=numbers)


def _as_sentence(
    text: str, source: Source, names: Names, frame: Frame, said: Mapping[str, float]
) -> Line | None:
    """The line as a sentence of which the talk is left out; None where it is none. Raises Broken."""
    source, part = parted(source, names)
    source, numbers = referred(source)
    made = in_clauses(source, names)
    if made is None:
        return None
    source, unread = made
    line = with_part(read_as(text, source, said, Found(names, frame, Choice())), part)
    return replace(with_told(line, unread), referred=numbers)


def _without_asides(
    text: str, source: Source, names: Names, frame: Frame, said: Mapping[str, float]
) -> Line | None:
    """The line without what is said beside its whole statements; None where nothing is. Raises Broken."""
    made = asides_apart(source, names)
    if made is None:
        return None
    line = _as_it_stands(text, made[0], names, frame, said)
    return with_told(with_talk_told(line, names), made[1])
