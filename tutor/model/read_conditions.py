"""Which conditions must every student's numbers meet, and which of them cannot be read?"""

from __future__ import annotations

import re
from typing import Any

from tutor.model.amounts import Wrong, amount, kind_of
from tutor.model.defect import Findings, KeyPath, choose_from
from tutor.model.problem import Problem
from tutor.model.toml_read import UNREAD
from tutor.model.vary import Condition, Kind, Relation
from tutor.text import one_line, shown

NAME = r"(?P<name>[A-Za-z][\w{}-]*)"
LIMIT = r"(?P<relation><=|>=|<|>|≤|≥)\s*(?P<limit>.+)"
FORMS: tuple[tuple[re.Pattern[str], Kind], ...] = (
    (re.compile(r"nice"), "nice"),
    (re.compile(rf"largest\s*{LIMIT}"), "largest"),
    (re.compile(rf"smallest\s*{LIMIT}"), "smallest"),
    (re.compile(rf"{NAME}\s+(is\s+)?(in\s+)?tension"), "tension"),
    (re.compile(rf"{NAME}\s+(is\s+)?(in\s+)?compression"), "compression"),
    (re.compile(rf"{NAME}\s+(is\s+)?(not|non)[\s-]*zero"), "not zero"),
    (re.compile(rf"{NAME}\s+(is\s+)?zero"), "zero"),
    (re.compile(rf"{NAME}\s*{LIMIT}"), "size"),
)
RELATIONS: dict[str, Relation] = {
    "<": "<",
    "<=": "<=",
    ">": ">",
    ">=": ">=",
    "≤": "<=",
    "≥": ">=",
}
EXAMPLES = 'write "nice", "largest < 100", "smallest > 1", "AB in compression" or "AB < 50"'
MOST = 50


def conditions(notes: Findings, value: Any, problem: Problem, whole: bool) -> tuple[Condition, ...]:
    """The conditions of `keep`; `whole` says that all members and supports were read."""
    path: KeyPath = ("vary", "keep")
    if value is UNREAD:
        return ()
    if not isinstance(value, list):
        cure = 'write a list of conditions, like keep = ["nice", "largest < 100"]'
        notes.error(path, f"keep is {kind_of(value)}, not a list", cure)
        return ()
    if len(value) > MOST:
        notes.error(path, f"keep has {len(value)} conditions, more than {MOST}", "keep the best")
        return ()
    read: list[Condition] = []
    for place, text in enumerate(value):
        if isinstance(text, str):
            found = _condition(notes, (*path, place), one_line(text), problem, whole)
            read += [found] if found is not None else []
        elif text is not UNREAD:
            notes.error((*path, place), f"a condition is {kind_of(text)}, not a text", EXAMPLES)
    return tuple(dict.fromkeys(read))


def _condition(
    notes: Findings, path: KeyPath, text: str, problem: Problem, whole: bool
) -> Condition | None:
    for form, kind in FORMS:
        if (found := form.fullmatch(text)) is None:
            continue
        parts = found.groupdict()
        limit = _limit(notes, path, text, parts.get("limit"), problem.force)
        unknown = _unknown(notes, path, text, kind, parts.get("name"), problem, whole)
        if limit is None or unknown is None:
            return None
        relation = RELATIONS[parts.get("relation") or "<"]
        return Condition(text, kind, unknown, relation, limit)
    notes.error(path, f"the condition {shown(text)} cannot be read", EXAMPLES)
    return None


def _limit(
    notes: Findings, path: KeyPath, text: str, written: str | None, unit: str
) -> float | None:
    """The number of a condition, 0 where it has none; a unit behind it must be the problem's own."""
    if written is None:
        return 0.0
    words = written.removesuffix(unit).strip() if unit else written.strip()
    read = amount(words)
    if not isinstance(read, Wrong):
        return read.value
    cure = f"write a number{f' of {unit}, without a unit' if unit else ''}, like largest < 100"
    notes.error(path, f"{shown(words)} in the condition {shown(text)} is no number", cure)
    return None


def _unknown(
    notes: Findings,
    path: KeyPath,
    text: str,
    kind: Kind,
    name: str | None,
    problem: Problem,
    whole: bool,
) -> str | None:
    """The member or reaction a condition names, "" where it names none, None where it is not there."""
    if name is None or not whole:
        return ""
    of_member = kind in ("tension", "compression")
    found = _member(problem, name)
    if found is None and not of_member and name in problem.reaction:
        found = name
    if found is not None:
        return found
    known = (*problem.member, *(() if of_member else problem.reaction))
    cure = choose_from(name, known, "there are")
    kind_of_force = "member" if of_member else "member or reaction"
    message = f"the condition {shown(text)} names {shown(name)}, which is no {kind_of_force} here"
    notes.error(path, message, cure)
    return None


def _member(problem: Problem, name: str) -> str | None:
    """The member's one name, however it is written: "AB", "BA", "F_AB", "L2-U1"."""
    plain = name.replace("{", "").replace("}", "").removeprefix("F_")
    if "-" in plain:
        start, _, end = plain.partition("-")
        pairs = [(start, end)]
    else:
        pairs = [(plain[:cut], plain[cut:]) for cut in range(1, len(plain))]
    for one, other in pairs:
        member = problem.between(one, other)
        if member is not None:
            return member.name
    return None
