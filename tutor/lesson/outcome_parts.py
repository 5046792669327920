"""How is each part of a lesson's state written as plain JSON values, and read back?

Each kind of part takes several changes of it as one, in their order; what a later one puts something
else in place of is not read. Every reader raises TypeError, KeyError, IndexError or ValueError for what
is not as it was written.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from tutor.judge import Equation, Mistake, Value
from tutor.judge.about import as_text, from_text
from tutor.lesson.place import place_key, place_of
from tutor.lesson.state import HintsGiven, Result, StandingLine, Try
from tutor.lesson.steps import STEPS
from tutor.notation import Span

Record = dict[str, Any]


@dataclass(frozen=True)
class WholePart:
    """A part that is kept whole whenever it changes."""

    write: Callable[[Any], Any]
    read: Callable[[Any], Any]

    def difference(self, old: Any, new: Any) -> Any:
        return self.write(new)

    def changed(self, old: Any, *found: Any) -> Any:
        return self.read(found[-1])


@dataclass(frozen=True)
class RowPart:
    """A sequence, of which is kept from where on it differs, and how it goes on there."""

    write: Callable[[Any], Any]
    read: Callable[[Any], Any]

    def difference(self, old: Any, new: Any) -> Any:
        start = 0
        for one, other in zip(old, new, strict=False):
            if one is not other and one != other:
                break
            start += 1
        return {"from": start, "add": [self.write(each) for each in new[start:]]}

    def changed(self, old: Any, *found: Any) -> Any:
        items = list(old)
        for each in found:
            items[_count(each["from"]) :] = map(self.read, each["add"])
        return tuple(items)


@dataclass(frozen=True)
class TablePart:
    """A mapping, of which the new and changed entries are kept, and the names of those gone.

    `name` writes what an entry is found by as text, `named` reads that back.
    """

    write: Callable[[Any], Any]
    read: Callable[[Any], Any]
    name: Callable[[Any], str] = str
    named: Callable[[str], Any] = str

    def difference(self, old: Any, new: Any) -> Any:
        changed = {key: value for key, value in new.items() if old.get(key) != value}
        put = {self.name(key): self.write(value) for key, value in changed.items()}
        return {"put": put, "gone": [self.name(key) for key in old if key not in new]}

    def changed(self, old: Any, *found: Any) -> Any:
        items = dict(old)
        unread: set[Any] = set()
        for each in found:
            for key in map(self._named, each["gone"]):
                items.pop(key, None)
                unread.discard(key)
            for text, value in each["put"].items():
                key = self._named(text)
                items[key] = value
                unread.add(key)
        return {key: self.read(items[key]) if key in unread else items[key] for key in items}

    def _named(self, text: Any) -> Any:
        return self.named(_text(text))


def _same(value: Any) -> Any:
    return value


def _text(value: Any) -> str:
    if not isinstance(value, str):
        raise TypeError(value)
    return value


def _maybe_text(value: Any) -> str | None:
    return None if value is None else _text(value)


def _truth(value: Any) -> bool:
    if not isinstance(value, bool):
        raise TypeError(value)
    return value


def _count(value: Any) -> int:
    if type(value) is not int or value < 0:
        raise TypeError(value)
    return value


def _number(value: Any) -> float:
    if isinstance(value, bool) or not isinstance(value, int | float) or not math.isfinite(value):
        raise TypeError(value)
    return float(value)


def _time(value: Any) -> float | None:
    return None if value is None else _number(value)


def _about(text: Any) -> Equation:
    about = from_text(_text(text))
    if isinstance(about, Value):
        raise TypeError(text)
    return about


def _write_about(about: Equation | None) -> str | None:
    return None if about is None else as_text(about)


def _write_line(line: StandingLine) -> Record:
    return {
        "about": as_text(line.about),
        "text": line.text,
        "adds": line.adds,
        "closing": line.closing,
    } | ({"without": list(line.without)} if line.without else {})


def _line(kept: Any) -> StandingLine:
    adds, closing = _truth(kept["adds"]), _truth(kept["closing"])
    without = tuple(map(_text, kept.get("without", ())))
    return StandingLine(_about(kept["about"]), _text(kept["text"]), adds, closing, without)


def _write_result(result: Result) -> Record:
    return dict(vars(result))


def _result(kept: Any) -> Result:
    how = kept["how"]
    if how not in ("solved", "zero-force", "given"):
        raise TypeError(how)
    value, radius = _number(kept["value"]), _number(kept["radius"])
    return Result(_text(kept["unknown"]), _text(kept["text"]), value, radius, how)


def _write_try(made: Try) -> Record:
    return {
        "step": made.step,
        "place": made.place,
        "text": made.text,
        "verdict": made.verdict,
        "codes": list(made.codes),
        "time": made.time,
    } | ({"others": list(made.others)} if made.others else {})


def _try(kept: Any) -> Try:
    if kept["step"] not in STEPS:
        raise TypeError(kept["step"])
    words = [_text(kept[key]) for key in ("place", "text", "verdict")]
    codes = tuple(_text(code) for code in kept["codes"])
    others = tuple(map(_text, kept.get("others", ())))
    at, time = place_of(words[0]), _number(kept["time"])
    return Try(kept["step"], at, words[1], words[2], codes, time, others)


def _write_mistake(mistake: Mistake) -> Record:
    span = mistake.span
    return {
        "code": mistake.code,
        "force": mistake.force,
        "text": mistake.text,
        "reason": mistake.reason,
        "place": mistake.place,
        "span": None if span is None else [span.start, span.end],
        "alike": list(mistake.alike),
    }


def _mistake(kept: Any) -> Mistake:
    text, reason, place = (_text(kept[key]) for key in ("text", "reason", "place"))
    span = kept["span"]
    where = None if span is None else Span(_count(span[0]), _count(span[1]))
    alike = tuple(_text(force) for force in kept["alike"])
    code, force = _text(kept["code"]), _maybe_text(kept["force"])
    return Mistake(code, force, text, reason, place, where, alike)


def _write_hints(given: HintsGiven) -> Record:
    mistakes = [_write_mistake(mistake) for mistake in given.mistakes]
    return {**vars(given), "mistakes": mistakes}


def _hints(kept: Any) -> HintsGiven:
    mistakes = tuple(_mistake(each) for each in kept["mistakes"])
    level, time = _count(kept["level"]), _number(kept["time"])
    return HintsGiven(level, time, _truth(kept["tried_since"]), mistakes)


def _write_pair(pair: tuple[Any, Any] | None) -> Any:
    return None if pair is None else list(pair)


def _practice(kept: Any) -> tuple[str, int] | None:
    return None if kept is None else (_text(kept[0]), _count(kept[1]))


def _write_offered(offered: tuple[Equation, str] | None) -> Any:
    return None if offered is None else [as_text(offered[0]), offered[1]]


def _offered(kept: Any) -> tuple[Equation, str] | None:
    return None if kept is None else (_about(kept[0]), _text(kept[1]))


PARTS: Mapping[str, WholePart | RowPart | TablePart] = {
    "step": WholePart(_same, _text),
    "reasons_done": WholePart(_same, _truth),
    "count_done": WholePart(_same, _truth),
    "sound_done": WholePart(_same, _truth),
    "moving_done": WholePart(_same, _truth),
    "supports_done": RowPart(_same, _text),
    "senses": TablePart(_same, _text),
    "turning": WholePart(_same, _maybe_text),
    "about": WholePart(_write_about, lambda kept: None if kept is None else _about(kept)),
    "proposed": WholePart(_same, _truth),
    "joint": WholePart(_same, _maybe_text),
    "lines": RowPart(_write_line, _line),
    "results": RowPart(_write_result, _result),
    "tries": RowPart(_write_try, _try),
    "hints": TablePart(_write_hints, _hints, place_key, place_of),
    "hints_used": RowPart(_same, _count),
    "taught": RowPart(_same, _text),
    "in_row": RowPart(_same, _text),
    "practice": WholePart(_write_pair, _practice),
    "offered": WholePart(_write_offered, _offered),
    "ended": WholePart(_same, _time),
    "shown": RowPart(_same, _text),
    "part": RowPart(_same, _text),
    "halves_done": WholePart(_same, _truth),
    "brought": RowPart(_same, _text),
    "letters": TablePart(_same, _number),
}
"""How each part of the state is kept, by its name in the file and in `State`."""
