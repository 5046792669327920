"""What does one typed line put on the paper? Values, a row of a table, a line with its heading, a word.

One line at a time, as a student types or a work file holds them; `whole_page` reads a whole file.
Nothing here judges: what can be read is written down, and what cannot is told in a sentence and
leaves the paper as it was.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace

from tutor.homework.aside import no_work
from tutor.homework.at_once import at_once
from tutor.homework.leads import led, sum_named
from tutor.homework.marks import LONGEST, bared, dashed, without_remark
from tutor.homework.page import Page, Written, no_unknown, unknown_of
from tutor.homework.page_words import letters, order, place, sense, strike
from tutor.homework.paper import Paper
from tutor.homework.several import PARTING, several
from tutor.homework.table import DecimalSign, decimal_sign, joined, read_row, usual_sign
from tutor.homework.unheaded import equation_meant, likeliest, values_in_line, with_heading
from tutor.homework.work import BLANK, LeftOut, read_entry
from tutor.judge import Equation, in_words, judge_of
from tutor.judge.headings import headed
from tutor.judge.known_values import KnownValues
from tutor.model import Problem
from tutor.notation import Line, Unreadable, read_letters
from tutor.notation.elements.characters import plain

NOT_DONE = "-"

ASSIGNED = re.compile(r"(?<![\w}])([^\W\d_][\w{}-]*)\s*=(?!=)")
NAMED = re.compile(r"[^\W\d_][\w{}]+")
AFTER = re.compile(r"(?:[,;&=]|\band)$")
OPERATORS = tuple("-+*/·×(")
TIMES = re.compile(r"\d[\s*·×]*([^\W\d_][\w{}-]*)")
APART = re.compile(r"(?<![\w}])([FSNT]) ([A-Z]\w{1,7})(?=\s*=)")
SUM = re.compile(r"=\s*[-+]?0(?:\.0*)?\s*$")
ROW = re.compile(r"([^\W\d_][\w{}-]*)\s*[\s,;:|]\s*[-+]?[\d.]")


def write_line(
    problem: Problem, paper: Paper, text: str, sign: DecimalSign | None = None
) -> Written:
    """The paper with what `text` says; blank lines and remarks after # say nothing.

    `sign` is the decimal sign of the table that the line is from, where that is known.
    """
    own = decimal_sign(text) or usual_sign(problem)
    page = Page(judge_of(problem).knowing(paper.letters), paper, own if sign is None else sign)
    return _placed(page, text, _written(page, text))


def _placed(page: Page, text: str, written: Written) -> Written:
    """What was refused with its columns counted in the whole line, or without any."""
    if not any(r.complaint is not None and r.complaint.placed for r in written.refused):
        return written
    line = page.desk.read(text)
    return replace(written, refused=tuple(_counted(refused, line) for refused in written.refused))


def _counted(refused: LeftOut, line: Line | Unreadable) -> LeftOut:
    """A complaint about a piece of a line with the column that the same one has in the whole line."""
    piece = refused.complaint
    if piece is None or not piece.placed:
        return refused
    same = isinstance(line, Unreadable) and line.without_place == piece.without_place
    said = line.message if isinstance(line, Unreadable) and same else piece.without_place
    return replace(refused, message=f"{refused.lead}{said}")


def _written(page: Page, text: str) -> Written:
    text = without_remark(page, text)
    bare = _together(page, bared(text))
    if not bare:
        return Written(page.paper)
    if len(bare) > LONGEST:
        return page.refuse(text, f"A line has {LONGEST} characters at most.")
    for way in WAYS:
        written = way(page, bare, text)
        if written is not None:
            return written
    return page.refuse(text, _cannot(page, bare))


def write_row(problem: Problem, paper: Paper, name: str, text: str) -> Written:
    """The paper with `text` as the value of `name`, and with other values that stand behind it.

    What is told of it counts its columns in `text`.
    """
    bare = plain(text).partition("#")[0].strip()
    desk = judge_of(problem).knowing(paper.letters)
    page = Page(desk, paper, decimal_sign(text) or usual_sign(problem))
    if len(bare) > LONGEST:
        return page.refuse(text, f"A line has {LONGEST} characters at most.")
    if "=" in bare:
        ways = (
            [f"{name} = {text}", text]
            if _is_equation(page, bare.partition("=")[0])
            else [f"{name} = {text}"]
        )
        if SUM.search(bare):
            ways.reverse()
        if _multiplied(page, name, bare):
            return _written(page, text)
        return likeliest(page, [_written(page, way) for way in ways])
    row = _several(page, f"{name} {bare}", text)
    return row if row is not None else _value(page, name, bare or NOT_DONE)


def _together(page: Page, bare: str) -> str:
    """The line with the letter for a force at the name it belongs to: F AD = -5 is F_AD = -5."""
    return APART.sub(
        lambda found: (
            f"{found[1]}_{found[2]}" if unknown_of(page, f"{found[1]}_{found[2]}") else found[0]
        ),
        bare,
    )


def _headed_line(page: Page, bare: str, text: str) -> Written | None:
    line = page.desk.read(text)
    label = sum_named(page.desk.names, bare, line)
    if label is None:
        return None
    about = headed(page.problem, line, page.paper.place)
    if about is not None:
        return _with_line(page, about, text, text.strip(), in_words(about))
    if isinstance(line, Unreadable):
        return page.refuse(text, line)
    if label.part is not None:
        return page.refuse(
            text,
            "A sum of a part needs the members that are cut and the side that is kept, like section "
            "through BC, CG and FG, left part, ΣM_F: before the line.",
        )
    if label.kind == "along":
        return page.refuse(
            text, "A sum along a direction needs it, like ΣF along 30: before the line."
        )
    return page.refuse(text, "A sum of moments needs its point, like ΣM_A: before the line.")


def _values(page: Page, bare: str, text: str) -> Written | None:
    found = [each for each in ASSIGNED.finditer(bare) if _begins_a_value(page, bare, each)]
    if not found or bare[: found[0].start()].strip(PARTING):
        return None
    if len(found) == 1 and _is_equation(page, bare[found[0].end() :]):
        return None
    ends = [*(each.start() for each in found[1:]), len(bare)]
    texts = [bare[each.end() : end] for each, end in zip(found, ends, strict=True)]
    for i in range(len(texts) - 2, -1, -1):
        texts[i] = texts[i] if texts[i].strip() else texts[i + 1]  # A_y = C_y = 6
    paper = page.paper
    noted: list[str] = []
    refused: list[LeftOut] = []
    for each, text_of in zip(found, texts, strict=True):
        value = text_of.strip(PARTING).removesuffix(" and").strip(PARTING)
        written = _value(replace(page, paper=paper), each[1], value)
        paper = written.paper
        noted += written.noted
        refused += written.refused
    return Written(paper, tuple(noted), tuple(refused))


def _begins_a_value(page: Page, bare: str, name: re.Match[str]) -> bool:
    """Whether a name before an = sign is one that gets a value, and not the θ of sin θ or a term."""
    before = bare[: name.start()].rstrip()
    if before.endswith(OPERATORS):
        return False
    return not before or AFTER.search(before) is not None or unknown_of(page, name[1]) is not None


def _several(page: Page, bare: str, text: str) -> Written | None:
    """Values in a row, some of them without an equals sign: `AB -7.5, BC 3`.

    Either every one can be read, or commas part them and each begins with a name; then those that
    cannot be read are told.
    """
    found = several(bare, lambda name: unknown_of(page, name) is not None)
    if len(found.pieces) < 2:
        return None
    rows = [read_row(page.desk, f"{name} {value}", page.sign, name) for name, value in found.pieces]
    if not found.parted and any(isinstance(row, LeftOut) for row in rows):
        return None
    paper = page.paper
    noted: list[str] = []
    refused: list[LeftOut] = []
    for row in rows:
        if isinstance(row, LeftOut):
            refused.append(row)
            continue
        written = _value(replace(page, paper=paper), *row)
        paper = written.paper
        noted += written.noted
        refused += written.refused
    return Written(paper, tuple(noted), tuple(refused))


def _row(page: Page, bare: str, text: str) -> Written | None:
    if "=" in bare:
        return None
    read = read_row(page.desk, text, page.sign, "This row")
    if not isinstance(read, LeftOut):
        return _value(page, *read)
    if read.name:
        return Written(page.paper, (), (read,))
    named = ROW.match(bare)
    return None if named is None else page.refuse(text, no_unknown(page, named[1]))


def _led(page: Page, bare: str, text: str) -> Written | None:
    """Values behind words that say where they were found."""
    found = led(page.desk.names, bare)
    if found is None:
        return None
    paper = replace(page.paper, place=found.place) if found.of else page.paper
    for way in (_values, _several, _row):
        written = way(replace(page, paper=paper), found.rest, found.rest)
        if written is not None:
            kept = written.paper if written.noted else page.paper
            return replace(written, paper=kept)
    return None


def _unheaded_line(page: Page, bare: str, text: str) -> Written | None:
    about = equation_meant(page, bare) if "=" in bare else None
    if about is None:
        return None
    kept = with_heading(about, text.strip())
    return _with_line(page, about, text, kept, f"taken as {in_words(about)}")


def _with_line(page: Page, about: Equation, text: str, kept: str, words: str) -> Written:
    """The paper with a line, and with the value and the letters that stand in it."""
    paper = page.paper.with_line(about, kept)
    paper = paper.with_letters(read_letters(text, page.desk.names, page.desk.letters))
    noted: tuple[str, ...] = (f"line {len(paper.lines)}, {words}",)
    for found in values_in_line(page.desk.read(text), paper.values):
        written = _value(replace(page, paper=paper), *found)
        paper, noted = written.paper, (*noted, *written.noted)
    return Written(paper, noted)


WAYS: tuple[Callable[[Page, str, str], Written | None], ...] = (
    *(no_work, place, order, sense, strike, letters, dashed),
    lambda page, _, text: at_once(page, text, _written),
    *(_led, _headed_line, _values, _several, _row, _unheaded_line),
)
"""The ways to read a line, in the order in which they are tried."""


def _value(page: Page, name: str, value: str) -> Written:
    unknown = unknown_of(page, name)
    if unknown is None:
        return page.refuse(f"{name} = {value}", no_unknown(page, name), name)
    old = page.paper.values.get(unknown)
    value = " ".join(joined(value, page.sign).split())
    if value.lower() in BLANK:
        return page.noted(page.paper.with_value(unknown, ""), f"{unknown} not done")
    read = read_entry(page.desk, unknown, value, KnownValues(dict(page.paper.senses), {}))
    if isinstance(read, LeftOut):
        return Written(page.paper, (), (read.led(f"{unknown}: "),))
    before = f", in the place of {old}" if old not in (None, value) else ""
    return page.noted(
        page.paper.with_value(unknown, value, page.paper.place), f"{unknown} = {value}{before}"
    )


def _is_equation(page: Page, side: str) -> bool:
    """Whether an unknown stands on this side of an = sign, so that the line is no value."""
    return any(unknown_of(page, word) is not None for word in NAMED.findall(side))


def _multiplied(page: Page, name: str, bare: str) -> bool:
    """Whether the row's own unknown stands behind a number on the first side: an equation, no value."""
    first = TIMES.findall(bare.partition("=")[0])
    return any(unknown_of(page, word) == name for word in first)


def _cannot(page: Page, bare: str) -> str | Unreadable:
    if "=" not in bare:
        return "This is no value, no line and no word known here; a value is like AB = 7.5 C."
    reading = page.desk.read(bare)
    if isinstance(reading, Unreadable):
        return reading
    at = f" at {page.paper.place}" if page.paper.place else f" at {page.problem.joints[0].name}"
    return f"Say which equation this is, with ΣFx{at}: or ΣFy{at}: or ΣM_A: before it."
