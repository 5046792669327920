"""What work stands in a pasted table?

A row is a name and its value, perhaps with a unit, a letter T or C or a direction in further
columns. Columns are parted by tabs, semicolons, commas or upright strokes; the decimal sign may be
a point or a comma. A blank value is not done yet. A row that names no unknown is passed over where
it looks like a heading, and told otherwise.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Literal

from tutor.homework.work import BLANK, LeftOut
from tutor.judge import Judge, judge_of
from tutor.model import Problem
from tutor.notation import Unreadable, read_line, value_of
from tutor.notation.elements.characters import plain
from tutor.text import marked

POINT_UNITS = frozenset({"lb", "kip"})
"""Units of a trade that writes its decimals with a point, so that a comma parts thousands."""
MOST_CHARACTERS = 100_000
MOST_ROWS = 1_000
BYTE_ORDER_MARK = "\ufeff"
_COMMA_DECIMAL = re.compile(r"\s*[-+−–]?\d+,\d+\s*")
_NUMBER = re.compile(r"[-+−–]?[\d.,]*\d")
_GROUPED = re.compile(r"[-+−–]?[1-9]\d{0,2}(?:,\d{3})+|[-+−–]?[1-9]\d{0,2}(?:\.\d{3})+")
_SPACED = re.compile(r"(?<![\w.,])([-+−–]?[1-9]\d{0,2})((?:[ \u00a0\u2009\u202f'’]\d{3})+)(?!\d)")
_SURE_COMMA = re.compile(r"(?<![\w.,])(?:\d+,(?:\d{1,2}|\d{4,})(?![\d.,])|0+,\d|\d{4,},\d)")
_SURE_POINT = re.compile(r"(?<![\d.])(?:\d+\.(?:\d{1,2}|\d{4,})(?![\d.])|0+\.\d|\d{4,}\.\d)")

_CELLS = re.compile(r"</t[dh]>\s*<t[dh](?: [^<>]*)?>", re.IGNORECASE)
_AROUND_CELLS = re.compile(r"</?(?:table|thead|tbody|tr|td|th)(?: [^<>]*)?>", re.IGNORECASE)

DecimalSign = Literal[",", ".", ""]


@dataclass(frozen=True)
class Pasted:
    """What a table gave: `work` as `review` takes it, and the rows that could not be read."""

    work: dict[str, dict[str, str]]
    refused: tuple[LeftOut, ...] = ()


def cells_apart(text: str) -> str:
    """A row of an HTML table as the row that it shows; any other text as it is."""
    return _AROUND_CELLS.sub("", _CELLS.sub("\t", text))


def without_formulas(text: str) -> str:
    """A row of a spreadsheet with what its formulas come to: a cell "=-4/5*2500" before it is left out."""
    cells = text.split("\t")
    formulas = [cell for cell in cells[1:] if cell.strip().startswith("=")]
    numbers = [cell for cell in cells[1:] if _NUMBER.fullmatch(cell.strip())]
    if not numbers:
        return text
    return "\t".join(cell for cell in cells if cell not in formulas)


def read_table(problem: Problem, text: str) -> Pasted:
    """The values in a pasted table; nothing raises on what somebody pasted."""
    desk = judge_of(problem)
    work: dict[str, dict[str, str]] = {"reactions": {}, "forces": {}}
    if len(text) > MOST_CHARACTERS:
        message = f"This is longer than {MOST_CHARACTERS} characters; paste the table alone."
        return Pasted(work, (LeftOut("table", text[:40], message),))
    refused: list[LeftOut] = []
    rows = [row for row in text.splitlines() if row.strip()]
    rows[:1] = [row.removeprefix(BYTE_ORDER_MARK) for row in rows[:1]]
    sign = decimal_sign(text) or usual_sign(problem)
    for number, row in enumerate(rows[:MOST_ROWS], start=1):
        read = read_row(desk, row, sign, f"Row {number}")
        if isinstance(read, LeftOut):
            if read.name or _NUMBER.search(row) or number > 1:
                refused.append(replace(read, name=read.name or f"row {number}"))
            continue
        name, value = read
        if not value:
            continue
        part = work["reactions" if name in desk.problem.reaction else "forces"]
        if name in part:
            message = f"Row {number}: {name} stands in the table twice; the first value is taken."
            refused.append(LeftOut(name, _shown(row), message))
        else:
            part[name] = value
    if len(rows) > MOST_ROWS:
        message = f"Only the first {MOST_ROWS} rows were read."
        refused.append(LeftOut("table", "", message))
    return Pasted(work, tuple(refused))


def read_row(desk: Judge, row: str, sign: DecimalSign, where: str) -> tuple[str, str] | LeftOut:
    """The unknown and the value in one row, the value "" where it is blank.

    What is refused has no name where the row names no unknown; `where` begins the sentence.
    """
    best: LeftOut | None = None
    for cells in _cuts(row):
        meant = desk.names.meant(plain(_bare(cells[0]))[:80]) if cells else ()
        if len(meant) != 1:
            continue
        value = " ".join(cells[1:]).strip()
        if value.lower() in BLANK:
            return meant[0], ""
        value = _pointed(_unspaced(value), sign)
        reading = value_of(read_line(value, desk.names), reaction="_" in meant[0])
        if not isinstance(reading, Unreadable):
            return meant[0], value
        best = best or LeftOut(
            meant[0], _shown(row), f"{where}: {reading.message}", reading, f"{where}: "
        )
    message = f"{where} does not begin with the name of a member or a reaction."
    return best or LeftOut("", _shown(row), message)


def decimal_sign(text: str) -> DecimalSign:
    """Which decimal sign the numbers of a table show, "" where they leave it open.

    A sign with three figures behind it may part thousands and shows nothing.
    """
    comma, point = bool(_SURE_COMMA.search(text)), bool(_SURE_POINT.search(text))
    if comma == point:
        return ""
    return "," if comma else "."


def usual_sign(problem: Problem) -> DecimalSign:
    """The decimal sign that goes with a problem's units, "" where either does."""
    return "." if problem.force in POINT_UNITS else ""


def joined(value: str, sign: DecimalSign) -> str:
    """A value with its thousands joined, 2 500 or 2,500, where they can be nothing else."""
    value = _unspaced(value)
    number = _NUMBER.search(value)
    if number is None or _GROUPED.fullmatch(number.group()) is None:
        return value
    return _pointed(value, sign)


def _unspaced(value: str) -> str:
    """A value whose thousands are parted by spaces or ticks, without these."""
    return _SPACED.sub(lambda found: found[1] + re.sub(r"\D", "", found[2]), value)


def _cuts(row: str) -> Iterator[list[str]]:
    """The ways in which a row may fall into cells, the most telling sign first."""
    for sign in ("\t", ";", "|"):
        if sign in row:
            yield [cell.strip().strip('"').strip() for cell in row.strip("| \t").split(sign)]
            return
    if "," in row:
        name, _, rest = row.partition(",")
        name, rest = name.strip().strip('"'), rest.strip()
        if _COMMA_DECIMAL.fullmatch(rest.strip('"')):
            yield [name, rest.strip('"').strip()]
        yield [name, *(cell.strip().strip('"').strip() for cell in rest.split(","))]
        yield [name, rest]
    for sign in ("=", ":"):
        if sign in row:
            name, _, rest = row.partition(sign)
            yield [name.strip(), rest.strip()]
    name, _, rest = row.strip().partition(" ")
    yield [name, rest.strip()]


def _bare(name: str) -> str:
    """A name without quotes, brackets and the like around it."""
    return name.strip().strip("\"'()[]:").strip()


def _pointed(value: str, sign: DecimalSign) -> str:
    """The value with its number in the way the notation reads: thousands joined, a point.

    A number that may mean two things where the table shows no decimal sign is left as it is.
    """
    found = _NUMBER.search(value)
    if found is None:
        return value
    number = found.group()
    if "," in number and "." in number:
        last = max(number.rfind(","), number.rfind("."))
        whole = number[:last].replace(",", "").replace(".", "")
        number = f"{whole}.{number[last + 1 :]}"
    elif "," in number or "." in number:
        own = "," if "," in number else "."
        grouped = _GROUPED.fullmatch(number) is not None
        if grouped and (number.count(own) > 1 or (sign and sign != own)):
            number = number.replace(own, "")
        elif not grouped or sign == own:
            number = number.replace(own, ".")
    return value[: found.start()] + number + value[found.end() :]


def _shown(row: str) -> str:
    return marked(row[:60], " ")
