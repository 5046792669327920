"""How is one event written as a line of the journal, and read back unchanged or not at all?

A line is one JSON object in ASCII. It carries its number, the problem it belongs to, the check sum
of the line before it and, last, its own check sum over every byte that stands before that sum. So a
line proves itself alone, and a lost or moved line is noticed by its neighbours.
"""

from __future__ import annotations

import json
import math
from collections.abc import Mapping, Sequence
from datetime import datetime
from typing import Any, NamedTuple

Event = Mapping[str, Any]
"""What a lesson tells the journal: text, numbers, lists and mappings, with text as keys."""

MARK = b',"sum":"'
END = b'"}'
SUM_LENGTH = 16
TAIL = len(MARK) + SUM_LENGTH + len(END)
MAX_DEPTH = 64


class JournalLine(NamedTuple):
    """One whole line: `number` 0 is the header, events count from 1; `after` is the sum before."""

    number: int
    problem: str
    after: str
    at: datetime
    event: Event
    sum: str


def write_line(number: int, problem: str, after: str, at: datetime, event: Event) -> bytes:
    """The bytes of a line, without its line end. `at` needs a time zone.

    Raises TypeError or ValueError when the event is not made of text, finite numbers, truth values,
    None, lists and mappings with text keys, or is nested more than 64 deep.
    """
    fields = {
        "line": number,
        "of": problem,
        "after": after,
        "at": at.isoformat(timespec="microseconds"),
        "event": plain_json(event),
    }
    body = json.dumps(fields, allow_nan=False, separators=(",", ":"))[:-1].encode("ascii")
    return body + MARK + check_sum(body).encode("ascii") + END


def whole_line(raw: bytes) -> JournalLine | None:
    """The line these bytes hold, or None if a single one of them is not as it was written."""
    if not bears_its_sum(raw):
        return None
    try:
        return line_with(json.loads(raw.decode()))
    except (ValueError, TypeError, KeyError, RecursionError):
        return None


def read_sound(rows: Sequence[bytes]) -> list[JournalLine] | None:
    """The lines of a journal of which each follows from the one before it, or None where one does not.

    They are read as one text, which takes half the time; the sum that stands in each must be its own.
    """
    from hashlib import sha256  # here for start-up time

    for raw in rows:
        own = sha256(raw[:-TAIL]).hexdigest()[:SUM_LENGTH]
        if raw[-TAIL:] != b"%b%b%b" % (MARK, own.encode(), END):
            return None
    try:
        every = json.loads(f"[{b','.join(rows).decode()}]")
        lines = [line_with(fields) for fields in every]
    except (ValueError, TypeError, KeyError, RecursionError):
        return None
    if len(lines) != len(rows):
        return None
    after, problem = lines[0].after if lines else "", lines[0].problem if lines else ""
    for number, (line, raw) in enumerate(zip(lines, rows, strict=True)):
        if (line.number, line.problem, line.after) != (number, problem, after):
            return None
        if raw[-SUM_LENGTH - len(END) : -len(END)] != line.sum.encode():
            return None
        after = line.sum
    return lines


def bears_its_sum(raw: bytes) -> bool:
    """Whether the sum at the end of these bytes is that of all before it."""
    return raw[-TAIL:] == MARK + check_sum(raw[:-TAIL]).encode("ascii") + END


def line_with(fields: Mapping[str, Any]) -> JournalLine:
    """The line these fields describe; raises TypeError, KeyError or ValueError if they do not."""
    at = datetime.fromisoformat(fields["at"])
    number, problem, after = fields["line"], fields["of"], fields["after"]
    event, own = fields["event"], fields["sum"]
    if type(number) is not int or number < 0 or at.tzinfo is None:
        raise ValueError("a line needs a number and a time with its zone")
    if not (isinstance(problem, str) and isinstance(after, str) and isinstance(event, dict)):
        raise TypeError("a line needs a problem, the sum before it and an event")
    return JournalLine(number, problem, after, at, event, own)


def check_sum(body: bytes) -> str:
    """The first 16 hexadecimal figures of the SHA-256 of these bytes."""
    from hashlib import sha256  # here for start-up time

    return sha256(body).hexdigest()[:SUM_LENGTH]


def plain_json(value: Any, depth: int = MAX_DEPTH) -> Any:
    """The value in plain JSON types, tuples as lists; raises TypeError or ValueError if it has none."""
    if depth < 0:
        raise ValueError(f"an event may be nested {MAX_DEPTH} deep at most")
    if isinstance(value, Mapping):
        for key in value:
            if not isinstance(key, str):
                raise TypeError(f"a key of an event must be text, not {key!r}")
        return {key: plain_json(item, depth - 1) for key, item in value.items()}
    if isinstance(value, list | tuple):
        return [plain_json(item, depth - 1) for item in value]
    if isinstance(value, float) and not math.isfinite(value):
        raise ValueError(f"an event cannot hold {value!r}")
    if value is None or isinstance(value, str | int | float):
        return value
    raise TypeError(f"an event cannot hold {value!r}")
