"""Which event does a typed line answer the present question with? None where it is no answer."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence

from tutor.deeds.deed import Deed, Do, Tell
from tutor.deeds.words import BY_WORD, first_word
from tutor.lesson import Ask, Option, State
from tutor.model.naming import joint_meant
from tutor.text import listed

NUMBER = re.compile(r"\d{1,6}")
COUNTED = re.compile(r"(?:(?:\bm|\br|\b2j)\b\s*[=:]?\s*)?\b(\d{1,6})\b", re.IGNORECASE)
BETWEEN = re.compile(r"[\s,;+&]+")
FILLERS = frozenset({"and", "to", "the", "it", "number", "numbers", "option", "options", ""})
NOTHING = frozenset({"none", "nothing", "no"})
TURNINGS = {
    "ccw": "counter-clockwise",
    "anticlockwise": "counter-clockwise",
    "anti-clockwise": "counter-clockwise",
    "counterclockwise": "counter-clockwise",
    "cw": "clockwise",
}


def answer(state: State, ask: Ask, text: str) -> Deed | None:
    """The deed that `text` is as an answer to `ask`; None where it must mean something else."""
    take = ANSWERS.get(ask.kind)
    if take is None:
        return None
    try:
        return take(state, ask, text.strip())
    except NoSuchOption:
        return Tell((_no_such(ask),))


def _no_such(ask: Ask) -> str:
    """What is said of a number that no option has; the ways of an arrow are shown without theirs."""
    if ask.kind == "sense":
        ways = listed([option.words for option in ask.options], last="or")
        return f"Cannot read: type the direction, {ways}, or its number, 1 to {len(ask.options)}."
    return f"Cannot read: the options are 1 to {len(ask.options)}."


class NoSuchOption(Exception):  # noqa: N818 - never leaves this module: it becomes a sentence
    """There is no option of the number typed."""


def _reasons(state: State, ask: Ask, text: str) -> Deed | None:
    keys = several(ask.options, text)
    return None if keys is None else Do("reasons", {"chosen": keys})


def _support(state: State, ask: Ask, text: str) -> Deed | None:
    keys = several(ask.options, text)
    return None if keys is None else Do("support", {"joint": ask.subject, "acts": keys})


def _count(state: State, ask: Ask, text: str) -> Deed | None:
    numbers = [int(found) for found in COUNTED.findall(text)]
    rest = BETWEEN.split(COUNTED.sub(" ", text).lower())
    if not numbers or any(word not in FILLERS for word in rest):
        return None
    if len(numbers) != 3:
        read = "one number" if len(numbers) == 1 else f"{len(numbers)} numbers"
        return Tell((f"Cannot read: this is {read}, not three; type m, r and 2j in this order.",))
    return Do("count", dict(zip(("m", "r", "2j"), numbers, strict=True)))


def _sense(state: State, ask: Ask, text: str) -> Deed | None:
    key = single(ask.options, text)
    return None if key is None else Do("sense", {"unknown": ask.subject, "sense": key})


def _turning(state: State, ask: Ask, text: str) -> Deed | None:
    key = single(ask.options, TURNINGS.get(text.lower(), text))
    return None if key is None else Do("turning", {"positive": key})


def _soundness(state: State, ask: Ask, text: str) -> Deed | None:
    key = single(ask.options, text)
    return None if key is None else Do("soundness", {"is": key})


def _loose(state: State, ask: Ask, text: str) -> Deed | None:
    """Joints by their numbers or their names; a name goes first, where joints are called 1, 2, 3."""
    words = [word for word in BETWEEN.split(text) if word.lower() not in FILLERS]
    named = [joint_meant(state.problem, word) for word in words]
    if words and None not in named:
        return Do("loose", {"joints": named})
    keys = several(ask.options, text)
    return None if keys is None else Do("loose", {"joints": keys})


def _equation(state: State, ask: Ask, text: str) -> Deed | None:
    """A number that none of the options has is a value."""
    if not NUMBER.fullmatch(text) or not 1 <= int(text) <= len(ask.options):
        return None
    return Do("choose", {"about": single(ask.options, text)})


def _joint(state: State, ask: Ask, text: str) -> Deed | None:
    key = joint_meant(state.problem, text)
    if key is None and NUMBER.fullmatch(text):
        key = single(ask.options, text)
    return None if key is None else Do("joint", {"joint": key})


def _halves(state: State, ask: Ask, text: str) -> Deed | None:
    keys = several(ask.options, text)
    return None if keys is None else Do("halves", {"chosen": keys})


def _shares(state: State, ask: Ask, text: str) -> Deed | None:
    """Joints with what they take, or numbers alone: whatever has a number and begins with no word
    that does something."""
    word = first_word(text)
    steers = word in BY_WORD and joint_meant(state.problem, word) is None
    if steers or not any(char.isdigit() or char in "½√" for char in text):
        return None
    return Do("shares", {"text": text}, text)


ANSWERS: Mapping[str, Callable[[State, Ask, str], Deed | None]] = {
    "reasons": _reasons,
    "count": _count,
    "support": _support,
    "sense": _sense,
    "turning": _turning,
    "soundness": _soundness,
    "loose": _loose,
    "halves": _halves,
    "shares": _shares,
    "line": _equation,
    "joint": _joint,
    "joint-line": _equation,
    "close": _equation,
}


def several(options: Sequence[Option], text: str) -> list[str] | None:
    """The keys of the options named by numbers or keys; None where another word is among them.

    "none" is no option, []. May raise NoSuchOption.
    """
    words = [word for word in BETWEEN.split(text.lower()) if word not in FILLERS]
    words = [each for word in words for each in _apart(options, word)]
    if words and all(word in NOTHING for word in words):
        return []
    keys = [single(options, word) for word in words if not NUMBER.fullmatch(word)]
    if None in keys:
        return None
    keys = [single(options, word) for word in words]
    found = [key for key in dict.fromkeys(keys) if key is not None]
    return found or None


def _apart(options: Sequence[Option], word: str) -> Sequence[str]:
    """The digits of "246", where there are so few options that this is three of their numbers."""
    few = len(options) <= 9 and NUMBER.fullmatch(word) and int(word) > len(options)
    return word if few and all(1 <= int(digit) <= len(options) for digit in word) else (word,)


def single(options: Sequence[Option], text: str) -> str | None:
    """The key of the option with this number, this key, or alone with these words; or None.

    May raise NoSuchOption.
    """
    if NUMBER.fullmatch(text):
        if not 1 <= int(text) <= len(options):
            raise NoSuchOption
        return options[int(text) - 1].key
    said = [word for word in BETWEEN.split(text.lower()) if word not in FILLERS]
    for option in options:
        if option.key.lower() == " ".join(said):
            return option.key
    fitting = [
        option.key
        for option in options
        if said and set(said) <= set(BETWEEN.split(option.words.lower()))
    ]
    return fitting[0] if len(fitting) == 1 else None
