"""What does a typed line enter? Its statements one by one: whole-truss commands, else phrases."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import get_args

from tutor.drafting.entries import EMPTY, Drop, Entry, Kind, Rename, Title, Units, Whole, applied
from tutor.drafting.laid import laid, laid_in_passing
from tutor.drafting.measured import Measured, is_measured
from tutor.drafting.moving import copy, flip, mirror, move
from tutor.drafting.names import joint_meant, needed, new_name, path_of
from tutor.drafting.pasted import statement_of
from tutor.drafting.phrases import Phrases
from tutor.drafting.shapes import SHAPES, Shape, shaped
from tutor.drafting.spoken import short
from tutor.drafting.unfit import unfit
from tutor.drafting.words import FORCES, UNITS, Bad, Word, number_of, words_of
from tutor.model import Problem
from tutor.model.read_words import LONGEST_TITLE
from tutor.notation import Exact
from tutor.text import one_line

LONGEST = 4000
MOST_WORDS = 800
MOST_JOINTS = 200
STATEMENT = re.compile(r"[^;\n]+")
KINDS: tuple[Kind, ...] = get_args(Kind)
DROP = frozenset({"drop", "delete", "remove", "del", "no", "without"})


@dataclass(frozen=True)
class LineRefused:
    """Why a line was not taken: `what` was read, what is wrong and what would be right.

    `span` is where in the line, if it is one place.
    """

    what: str
    span: tuple[int, int] | None = None

    @property
    def sentence(self) -> str:
        """The same as a sentence."""
        return f"Read {self.what}"


def read(problem: Problem, text: str) -> tuple[Entry, ...] | LineRefused:
    """The entries of a line typed beside this truss. All of it is taken, or nothing; never raises."""
    if len(text) > LONGEST:
        return LineRefused(f"{len(text)} characters: too long for one line; enter it in parts.")
    entries: list[Entry] = []
    text = statement_of(text)
    try:
        for found in STATEMENT.finditer(text):
            words = words_of(found.group(), found.start())
            if len(words) > MOST_WORDS:
                raise Bad("this", f"there are more than {MOST_WORDS} words", "enter it in parts")
            for entry in _statement(problem, found.group(), words):
                entries.append(entry)
                problem = applied(problem, entry)
        if len(problem.joints) > MOST_JOINTS:
            message = f"this would be more than {MOST_JOINTS} joints"
            raise Bad(text, message, "draw a part of the truss")
    except Bad as bad:
        place = bad.word
        return LineRefused(bad.what, None if place is None else (place.start, place.end))
    if not entries:
        return LineRefused("nothing: no joint, member, support or load; type one like A 0 0.")
    return tuple(entries)


def _statement(problem: Problem, text: str, words: list[Word]) -> list[Entry]:
    if not words:
        return []
    first = words[0]
    command = COMMANDS.get(first.lower)
    if command is not None and not _is_joint_phrase(problem, words):
        return command(problem, text, words)
    if shape := _shape(words):
        return _shaped(problem, words, shape)
    if _all_units(problem, words):
        return _units(problem, text, words)
    if (lying := laid_in_passing(problem, words)) is not None:
        return lying
    if is_measured(problem, words):
        return Measured(problem, words).read()
    if refused := unfit(problem, text, words):
        raise refused
    return Phrases(problem, short(problem, words)).read()


def _is_joint_phrase(problem: Problem, words: list[Word]) -> bool:
    """Whether a joint has a command's name and the line goes on as one about it."""
    return joint_meant(problem, words[0].text) is not None and len(words) > 1 and words[1].is_number


def _title(problem: Problem, text: str, words: list[Word]) -> list[Entry]:
    title = one_line(text.strip()[len(words[0].text) :]).strip(" \"'=:")
    if not title:
        raise Bad(
            words[0].text, "a title is missing", "write it behind, like title Lamp arm", words[0]
        )
    if len(title) > LONGEST_TITLE:
        message = f"a title has at most {LONGEST_TITLE} characters"
        raise Bad(title, message, "shorten it", words[0])
    return [Title(title)]


def _all_units(problem: Problem, words: list[Word]) -> bool:
    units = [word for word in words if word.lower in UNITS]
    if len(units) < len(words) or len(words) > 2:
        return False
    return not all(joint_meant(problem, word.text) for word in words) or len(words) == 1


def _units(problem: Problem, text: str, words: list[Word]) -> list[Entry]:
    force, length = problem.force, problem.length
    named = [word for word in words if word.lower not in ("unit", "units")]
    for word in named:
        unit = UNITS.get(word.lower)
        if unit is None:
            cure = "write a unit of force and one of length, like kN m or lb ft"
            raise Bad(word.text, "this is no unit known here", cure, word)
        if unit in FORCES:
            force = unit
        else:
            length = unit
    if not named:
        raise Bad(words[0].text, "no unit is named", "write kN m, or lb ft", words[0])
    return [Units(force, length)]


def _drop(problem: Problem, text: str, words: list[Word]) -> list[Entry]:
    first, *rest = words
    if rest and rest[0].lower == "the":
        rest = rest[1:]
    kind: Kind | None = None
    if rest and (named := [k for k in KINDS if rest[0].lower in (k, f"{k}s")]):
        kind, rest = named[0], rest[1:]
    rest = [word for word in rest if word.lower not in ("at", "on", "of", "the")]
    if not rest:
        cure = "write drop C, drop AB, drop support A or drop load C"
        raise Bad(first.text, "nothing is named to take away", cure, first)
    if len(rest) == 1 and kind is None and rest[0].lower in ("all", "everything"):
        return [Whole(EMPTY)]
    entries: list[Entry] = []
    for word in rest:
        entries += _dropped(problem, kind, word)
    return entries


def _dropped(problem: Problem, kind: Kind | None, word: Word) -> list[Entry]:
    joint = joint_meant(problem, word.text)
    if kind in ("member", "spread") or (kind is None and joint is None):
        entries: list[Entry] = []
        for start, end in path_of(problem, word):
            member = problem.between(start, end)
            if member is None:
                message = f"there is no member from {start} to {end}"
                raise Bad(word.text, message, "name one that is there", word)
            if kind == "spread" and not any(member.name in s.on for s in problem.spreads):
                message = f"no load lies on {member.name}"
                raise Bad(word.text, message, "name a member with one", word)
            entries.append(Drop(kind or "member", member.name))
        return entries
    joint = needed(problem, word)
    here = {
        "joint": True,
        "support": any(s.joint == joint for s in problem.supports),
        "load": any(load.joint == joint for load in problem.given_loads),
    }
    kind = kind or "joint"
    if not here[kind]:
        raise Bad(word.text, f"there is no {kind} at {joint}", "name a joint that has one", word)
    return [Drop(kind, joint)]


def _rename(problem: Problem, text: str, words: list[Word]) -> list[Entry]:
    named = [word for word in words[1:] if word.lower not in ("joint", "to", "as")]
    if len(named) != 2:
        cure = "write rename A U1"
        raise Bad(words[0].text, "a joint and its new name are wanted", cure, words[0])
    old, new = needed(problem, named[0]), new_name(named[1])
    if new in problem.joint:
        raise Bad(named[1].text, f"there is a joint {new} already", "choose another name", named[1])
    return [Rename(old, new)]


def _clear(problem: Problem, text: str, words: list[Word]) -> list[Entry]:
    if len(words) > 1:
        raise Bad(
            words[1].text,
            "this stands behind a word that clears everything",
            "write clear alone, or drop C for one joint",
            words[1],
        )
    return [Whole(EMPTY)]


COMMANDS: Mapping[str, Callable[[Problem, str, list[Word]], list[Entry]]] = {
    "title": _title,
    "name": _title,
    "unit": _units,
    "units": _units,
    "rename": _rename,
    "clear": _clear,
    "spread": lambda problem, _, words: laid(problem, words),
    "move": lambda problem, _, words: move(problem, words),
    "shift": lambda problem, _, words: move(problem, words),
    "copy": lambda problem, _, words: copy(problem, words),
    "mirror": lambda problem, _, words: mirror(problem, words),
    "flip": lambda problem, _, words: flip(problem, words),
    **dict.fromkeys(DROP, _drop),
}


def _shape(words: list[Word]) -> Shape | None:
    """The common shape that the first words name."""
    first = words[0].lower.replace("-", " ")
    joined = f"{first} {words[1].lower}" if len(words) > 1 else first
    for name, shape in SHAPES.items():
        if first == name or first == name.replace(" ", "") or joined == name:
            return shape
    return None


def _shaped(problem: Problem, words: list[Word], shape: Shape) -> list[Entry]:
    given = _sizes(problem, words, shape)
    lacking = [key for key in ("span", "height") if key not in given]
    if isinstance(shape.panels, range) and "panels" not in given:
        lacking.append("panels")
    if lacking:
        wanted = "" if shape.fixed else f" panels {shape.usual}"
        cure = f"write {shape.name} span 12 height 3{wanted}"
        message = f"a {shape.name} truss lacks its {' and '.join(lacking)}"
        raise Bad(words[0].text, message, cure, words[0])
    panels = given.get("panels", Exact.of(shape.usual))
    count = panels.value
    if panels.fraction is None or count not in shape.panels:
        message = f"a {shape.name} truss here has {shape.counts} panels"
        cure = "leave the panels out" if shape.fixed else f"write panels {shape.usual}"
        raise Bad(panels.text, message, cure, words[0])
    try:
        made = shaped(shape, given["span"], given["height"], int(count), given.get("load"), problem)
    except ValueError as fault:
        raise Bad(words[0].text, f"a place {fault}", "choose other sizes", words[0]) from None
    return [Whole(made)]


SIZES = {"span": "span", "height": "height", "rise": "height", "depth": "height", "high": "height",
         "panels": "panels", "panel": "panels", "load": "load", "loads": "load"}  # fmt: skip


def _sizes(problem: Problem, words: list[Word], shape: Shape) -> dict[str, Exact]:
    """The sizes written behind a shape's name, each by its word, or in their order."""
    given: dict[str, Exact] = {}
    order = ["span", "height", *([] if shape.fixed else ["panels"]), "load"]
    key = ""
    for word in words[1:]:
        if word.lower in SIZES:
            if key and key not in given:
                raise Bad(word.text, f"the {key} is missing before this", f"write {key} 12", word)
            key = SIZES[word.lower]
        elif word.is_number:
            name = key or next((k for k in order if k not in given), "")
            if not name:
                raise Bad(
                    word.text, "there is one number too many", "name the sizes by words", word
                )
            given[name], unit = number_of(word, f"the {name}")
            _check_size(problem, word, name, given[name], unit)
            key = ""
        elif word.lower in UNITS or word.lower in ("down", "truss", "post", "with", "on", "each"):
            continue
        else:
            cure = f"write {shape.name} span 12 height 3 panels 4"
            raise Bad(word.text, "this is no size of a truss", cure, word)
    if key:
        raise Bad(words[-1].text, f"the {key} is missing", f"write {key} 12", words[-1])
    return given


def _check_size(problem: Problem, word: Word, name: str, size: Exact, unit: str) -> None:
    own = problem.force if name == "load" else problem.length
    if unit and unit != own:
        cure = f"write it in {own}, or type {unit} alone first"
        raise Bad(word.text, f"this truss is in {own}, not {unit}", cure, word)
    if size.value <= 1e-6:
        raise Bad(word.text, f"the {name} has to be more than nothing", f"write {name} 12", word)
