"""What does a typed text mean: an answer, a word, a line to judge, or nothing here?

A word that is also a name in this truss is never taken for either in silence.
"""

from __future__ import annotations

import re

from tutor.deeds.answers import answer
from tutor.deeds.deed import Await, Deed, Do, Go, Lost, RemarksOn, Save, Show, Tell
from tutor.deeds.equations import heading
from tutor.deeds.named_once import named_once
from tutor.deeds.names import names_like
from tutor.deeds.page import PLACES, begun, headed, passed_over, row
from tutor.deeds.runs import value_of
from tutor.deeds.words import BY_WORD, command, first_word, nearest
from tutor.deeds.zero_said import reason_alone, zero_said
from tutor.lesson import Lesson
from tutor.lesson.reply import LINES
from tutor.lesson.steps.headings import value_named
from tutor.model.naming import joint_meant
from tutor.notation import Unreadable, read_line
from tutor.notation.sentences.set_equal import value_spaced

LINE_LIKE = re.compile(r"[0-9+*/^()_√·×÷−]")
JOINT_HEADS = re.compile(r"(?:joint|node|pin|at)\s+[\w{}]+\s*[:,.]\s+\S+\s+\S", re.IGNORECASE)
BRINGS_IN = re.compile(r"\s*(?:let|call|denote)\s+\S+\s+\S+\s+\S", re.IGNORECASE)
BY_ALL_MEANS = re.compile(r"do\s+(?=\w)", re.IGNORECASE)
WHOLE = (Await, Do, Show, Save, Go, RemarksOn)


def deed_of(lesson: Lesson, text: str, awaited: str | None = None) -> Deed:
    """The deed that `text` is at the question of `lesson`; `awaited` is the unknown whose value was
    said to come next."""
    text = named_once(text, lesson.problem.names, awaited)
    ask, bare = lesson.ask, text.strip()
    if not bare:
        return Lost()
    if (stated := zero_said(lesson, bare)) is not None:
        return stated
    if "=" in bare and ask.kind not in ("count", "shares"):
        return _heading(lesson, bare) or Do("type", {"text": text}, text)
    if awaited is not None and any(char.isdigit() for char in bare):
        bare = value_spaced(bare, lesson.problem.names, awaited)
        itself = value_named(read_line(bare, lesson.problem.names)) is not None
        if not itself:
            return value_of(awaited, bare)
        return Do("type", {"text": bare if "=" in bare else text}, text)
    if meant := BY_ALL_MEANS.match(bare):
        deed = command(lesson, bare[meant.end() :])
        if deed is not None:
            return deed
    steers = ask.kind in ("reasons", "halves") and bare.lower() in BY_WORD
    deed = None if steers else answer(lesson.state, ask, bare)
    if deed is not None:
        return deed
    return (
        row(lesson, bare)
        or passed_over(lesson, bare)
        or begun(lesson, bare)
        or _heading(lesson, bare)
        or _of_joint(lesson, bare, text)
        or _worded(lesson, bare)
        or _named(lesson, bare)
        or headed(lesson, bare)
        or reason_alone(lesson, bare)
        or _line(lesson, text)
    )


def _of_joint(lesson: Lesson, bare: str, text: str) -> Deed | None:
    """The line that a sentence says behind the joint it is about: "Joint B: BD is a strut of 12 kN"."""
    if lesson.ask.kind not in PLACES or JOINT_HEADS.match(bare) is None:
        return None
    line = read_line(bare, lesson.problem.names)
    return None if isinstance(line, Unreadable) else Do("type", {"text": text}, text)


def _worded(lesson: Lesson, bare: str) -> Deed | None:
    """The deed of a word; where the word is a name here too, only if the rest tells which it is."""
    deed = command(lesson, bare)
    word = first_word(bare)
    whole = names_like(lesson.problem, bare)
    names = whole or names_like(lesson.problem, word)
    if deed is None or not names:
        return deed
    if not whole and " " in bare and isinstance(deed, WHOLE):
        return deed
    return Tell((clash(lesson, word, names[0]),))


def clash(lesson: Lesson, word: str, name: str) -> str:
    """What is said where a word is a deed and a name at once, with a way to say each."""
    deed = BY_WORD[word]
    thing = "a joint" if name in lesson.problem.joint else "a force"
    name_it = f"joint {name}" if name in lesson.problem.joint else f"value {name}"
    return (
        f'"{word}" is {thing} of this truss and also a word that {deed.does.rstrip(".")}: type '
        f"{name_it} for the one, do {word} for the other."
    )


def _heading(lesson: Lesson, bare: str) -> Deed | None:
    """The choice of the equation that a heading names, where one is asked for."""
    named = any(names_like(lesson.problem, word) for word in (bare, first_word(bare)))
    if lesson.ask.kind not in LINES or (named and first_word(bare) in BY_WORD):
        return None
    return heading(lesson, bare)


def _named(lesson: Lesson, bare: str) -> Deed | None:
    """A joint's name alone goes to it, where lines of joints are written."""
    if lesson.ask.kind != "joint-line":
        return None
    joint = joint_meant(lesson.problem, bare)
    return None if joint is None else Do("joint", {"joint": joint})


def _line(lesson: Lesson, text: str) -> Deed:
    """A line to judge where one is asked for and it looks like one; else nothing.

    A word that does something is no line, whatever stands behind it: "hint 2", "hint for AB".
    """
    word, _, rest = text.strip().partition(" ")
    steers = bool(rest) and word.lower() in BY_WORD
    line_like = lesson.ask.kind in LINES and LINE_LIKE.search(text) is not None
    if line_like and not (steers and not names_like(lesson.problem, word)):
        return Do("type", {"text": text}, text)
    if lesson.ask.kind in LINES and BRINGS_IN.match(text) is not None:
        return Do("type", {"text": text}, text)
    return _alone(word.lower()) if steers else Lost(nearest(text) or "")


def _alone(word: str) -> Tell:
    """What is said where a word that is something does has text behind it that it does not take."""
    deed, one = BY_WORD[word], BY_WORD.get(word.removesuffix("s"))
    said = f"“{word}” cannot be read with that behind it. Type {deed.typed}: {deed.does}"
    other = "" if one in (None, deed) else f" {one.typed}: {one.does}"
    return Tell((said + other,))
