"""What of a page that is typed or pasted line by line only heads it: a joint, a title, a rule, a page number?"""

from __future__ import annotations

import re

from tutor.deeds.deed import Deed, Do, Tell
from tutor.deeds.words import BY_WORD, first_word
from tutor.lesson import Lesson
from tutor.lesson.reply import LINES
from tutor.lesson.steps.headings import value_named
from tutor.notation import read_line, without_marks
from tutor.notation.no_work import is_no_work, names_an_unknown
from tutor.notation.places import place_named
from tutor.text import shown

PLACES = LINES | {"joint"}
"""Where lines and values are taken."""
CELLS = re.compile(r"[\t|;]")
RULE = re.compile(r"[-=_*~|: ]{3,}")
SENTENCE = re.compile(r"[.:;,] +[A-Za-z]")
COMMENTS = ("#", "//", "%")
PASSED = "Passed over: {what} is not read as work."
NOTHING = "Passed over: nothing in this line is read as work."
SHOWN = 40


def headed(lesson: Lesson, bare: str) -> Deed | None:
    """The joint that a heading on a line of its own goes to: "## Joint A", "1. Joint L0"."""
    if lesson.ask.kind not in PLACES:
        return None
    names = lesson.problem.names
    text = without_marks(bare).lstrip("# ")
    place = place_named(names, text) if text else None
    if place is None:
        return None
    if place.missing:
        joints = ", ".join(joint.name for joint in lesson.problem.joints)
        return Tell((f"There is no joint {place.missing[:SHOWN]}; the joints are {joints}.",))
    if place.joint is not None:
        return Do("joint", {"joint": place.joint})
    return Tell((PASSED.format(what=shown(text[:SHOWN])),)) if lesson.ask.kind == "line" else None


def begun(lesson: Lesson, bare: str) -> Deed | None:
    """The joint that a sentence begins with: "Joint C. Equilibrium of the joint gives"."""
    return None if SENTENCE.search(bare) is None else headed(lesson, bare)


def passed_over(lesson: Lesson, bare: str) -> Deed | None:
    """That a line is none of the work, where it heads a page or only marks it up; else None."""
    if lesson.ask.kind not in PLACES or (first_word(bare) in BY_WORD and not CELLS.search(bare)):
        return None
    text = without_marks(bare)
    if not text or RULE.fullmatch(text):
        return Tell((NOTHING,))
    names = lesson.problem.names
    remarks = bare.startswith(COMMENTS) and place_named(names, text.lstrip("# ")) is None
    if is_no_work(names, bare) or (
        remarks and not names_an_unknown(names, text) and "=" not in text
    ):
        return Tell((PASSED.format(what=shown(text[:SHOWN])),))
    return None


def row(lesson: Lesson, text: str) -> Deed | None:
    """The value in a row of cells: "AB | 12.5 | C"; None for what is no row, or names no unknown."""
    if lesson.ask.kind not in PLACES or CELLS.search(text) is None:
        return None
    given = value_named(read_line(text, lesson.problem.names))
    return None if given is None else Do("type", {"text": text}, text)
