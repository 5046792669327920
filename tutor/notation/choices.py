"""What does a line say that is laid out, the usual choices taken, or one of them the other way?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import fields, replace

from tutor.notation.elements.source import Source
from tutor.notation.elements.tree import Span
from tutor.notation.elements.unreadable import Broken
from tutor.notation.lines.found import Choice, Found, trimmed
from tutor.notation.lines.head_end import behind_list_dash, without_list_dashes
from tutor.notation.lines.layout import numbers_apart
from tutor.notation.lines.line import Line
from tutor.notation.pages.figured import thousands
from tutor.notation.pages.line_said import with_line_said
from tutor.notation.pages.raised_points import with_raised_points
from tutor.notation.pages.respelled import respelled
from tutor.notation.sentences.part_words import parted, with_part
from tutor.notation.sentences.talked import start_of
from tutor.notation.statements import Statements

_LONG_DASHES = "—―"


def other_choices(usual: Found) -> list[Found]:
    """The same line to be read with one of the choices that were met taken the other way."""
    met = [field.name for field in fields(Choice) if field.name in usual.open]
    return [Found(usual.names, usual.frame, replace(usual.choice, **{name: True})) for name in met]


def alternatives(
    text: str, source: Source, said: Mapping[str, float], usual: Found
) -> tuple[Line, ...]:
    found = []
    for other in other_choices(usual):
        try:
            found.append(read_as(text, source, said, other))
        except Broken:
            continue
    return tuple(found)


def read_as(text: str, source: Source, said: Mapping[str, float], found: Found) -> Line:
    """One reading of the line; raises Broken with columns of the text as typed."""
    try:
        numbers = numbers_apart(source.text, source.typed(text), found.choice.numbered)
        if numbers.unsure:
            found.open.add("numbered")
        begin = behind_list_dash(source, text, numbers.start, found)
        for start, end in ((0, numbers.start), (numbers.end, len(source.text))):
            if source.text[start:end].strip(" .,;"):
                found.passed.append(source.place(Span(*trimmed(source.text, start, end))))
        blanked = " " * begin + source.text[begin : numbers.end]
        blanked += " " * (len(source.text) - len(blanked))
        listed = found.choice.listed and begin > numbers.start
        source = replace(source, text=without_list_dashes(blanked) if listed else blanked)
    except Broken as broken:
        raise broken.placed(source.place) from None
    before = list(found.passed)
    found.passed.clear()
    source, part = parted(source, found.names)
    spelled = respelled(thousands(with_raised_points(source, text, found), found), found.names)
    taken, found.taken = found.taken, []
    found.long_dashes = frozenset(
        column
        for column, typed in enumerate(spelled.typed(text))
        if typed in _LONG_DASHES and spelled.text[column] == "-"
    )
    try:
        reader = Statements(text, spelled, found, said)
        line = reader.line()
    except Broken as broken:
        raise broken.placed(spelled.place) from None
    unread = tuple(spelled.place(span) for span in found.unread)
    passed = (*before, *(spelled.place(span) for span in found.passed), *unread)
    passed, unread = (*line.passed, *passed), (*line.unread, *unread)
    taken += [(kind, spelled.place(span)) for kind, span in found.taken]
    line = replace(line, passed=tuple(sorted(passed, key=start_of)), unread=unread)
    line = replace(line, taken=tuple(taken)) if taken else line
    return with_line_said(with_part(line, part))
