"""Which words on a homework's paper steer it: a place, an order of joints, an arrow, a line struck out?"""

from __future__ import annotations

import re
from dataclasses import replace

from tutor.homework.page import Page, Written, joints_said, no_unknown, unknown_of
from tutor.judge.known_values import senses_for
from tutor.notation import Unreadable, read_letters
from tutor.notation.places import place_named

ORDER = re.compile(r"order\b\s*[:=]?\s*(.*)", re.IGNORECASE)
DRAWN = re.compile(
    r"(?:sense|draw|drawn)\s+(?:of\s+)?(\S+)\s+(?:is\s+)?(?:to\s+the\s+)?(\w+)"
    r"|(\S+)\s+(?:is\s+)?drawn\s+(?:to\s+the\s+)?(\w+)"
    r"|(?P<way>push|pull)\s+(?P<member>\S+)",
    re.IGNORECASE,
)
STRIKE = re.compile(r"strike(?:\s+out)?\s+(?:line\s+)?(\d{1,4})", re.IGNORECASE)
BETWEEN = re.compile(r"[\s,;>→-]+")
SENSES = {
    **dict.fromkeys(("pull", "pulls", "pulling", "tension"), "T"),
    **dict.fromkeys(("push", "pushes", "pushing", "compression"), "C"),
}


def place(page: Page, bare: str, text: str) -> Written | None:
    named = place_named(page.desk.names, bare)
    if named is None:
        return None
    if named.missing:
        return page.refuse(text, f"There is no joint {named.missing[:40]}; {joints_said(page)}.")
    where = "the whole truss" if named.joint is None else f"joint {named.joint}"
    return page.noted(replace(page.paper, place=named.joint), f"{where}: its lines follow")


def order(page: Page, bare: str, text: str) -> Written | None:
    found = ORDER.fullmatch(bare)
    if found is None or "=" in found[1]:
        return None
    words = [word for word in BETWEEN.split(found[1]) if word]
    names = ["whole" if w.lower() == "whole" else page.desk.names.joint(w) for w in words]
    for word, name in zip(words, names, strict=True):
        if name is None:
            return page.refuse(
                text, f"There is no joint {word[:40]}; {joints_said(page)}.", "order"
            )
    order = tuple(dict.fromkeys(name for name in names if name is not None))
    said = f"the joints in the order {', '.join(order)}" if order else "no order of joints"
    return page.noted(replace(page.paper, order=order), said)


def sense(page: Page, bare: str, text: str) -> Written | None:
    found = DRAWN.fullmatch(bare)
    if found is None:
        return None
    name, word = found[1] or found[3] or found["member"], found[2] or found[4] or found["way"]
    unknown = unknown_of(page, name)
    if unknown is None:
        return page.refuse(text, no_unknown(page, name), "senses")
    sense = SENSES.get(word.lower(), word.upper() if word in "tTcC" else word.lower())
    ways = senses_for(page.problem, unknown)
    if sense not in ways:
        drawn = "pull or push" if unknown in page.problem.member else " or ".join(ways)
        return page.refuse(text, f"{unknown} is drawn {drawn}.", unknown)
    way = {"T": "pulling", "C": "pushing"}.get(sense, sense)
    return page.noted(page.paper.with_sense(unknown, sense), f"{unknown} drawn {way}")


def strike(page: Page, bare: str, text: str) -> Written | None:
    found = STRIKE.fullmatch(bare)
    if found is None:
        return None
    number, lines = int(found[1]), page.paper.lines
    if not 1 <= number <= len(lines):
        there = f"there are lines 1 to {len(lines)}" if lines else "there is none"
        return page.refuse(text, f"There is no line {number}; {there}.")
    return page.noted(page.paper.without_line(number - 1), f"line {number} struck out")


def letters(page: Page, bare: str, text: str) -> Written | None:
    """A line that only says how large angles and lengths are."""
    line = page.desk.read(text)
    if not (isinstance(line, Unreadable) and line.code == "letters"):
        return None
    found = read_letters(text, page.desk.names, page.desk.letters)
    said = ", ".join(f"{name} = {size:.4g}" for name, size in found.items())
    return page.noted(page.paper.with_letters(found), said)
