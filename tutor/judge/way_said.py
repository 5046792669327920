"""Is a value right in all but the word that says how it acts: CE = 12 sin 60/cos 30 = 12 T, where it is C?"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace

from tutor.judge.about import Equation, Value
from tutor.judge.desk import Desk
from tutor.judge.kind import Case
from tutor.judge.mistakes import KINDS
from tutor.judge.value_words import WAY_SAID
from tutor.judge.verdict import Mistake, Verdict
from tutor.judge.way_unread import pushes_again
from tutor.judge.worked import holds_alone, side_value, sized, value_given, with_other_sign
from tutor.judge.working import shows_working
from tutor.notation import Line, Step
from tutor.notation.lines.line import Letter, Sense

OTHER_LETTER: Mapping[Letter | None, Letter] = {"T": "C", "C": "T"}
OTHER_WAY: Mapping[Sense | None, Sense] = {
    "left": "right",
    "right": "left",
    "up": "down",
    "down": "up",
}
POSITIVE = ("T", "right", "up")


def only_the_way(
    desk: Desk, about: Equation, line: Line, judged: Callable[[Line], Verdict]
) -> Verdict | None:
    """The verdict on a line of one value that is right with the opposite word behind it; else None.

    A T, right or up behind a working without a minus is what that working says: then its sum is wrong.
    """
    other = _other_way(line)
    if (
        other is None
        or _goes_with_its_working(line.result)
        or not judged(sized(other) or other).right
    ):
        return None
    name = value_given(line.result)
    code = "tension-compression" if name in desk.problem.member else "sense"
    kind, case = KINDS[code], Case(desk.problem, Value(str(name)), name)
    text, reason, place = kind.look(case).text, kind.reason(case), kind.place(case).text
    if code == "sense":
        text, reason, where = WAY_SAID
        place = where.format(thing=case.thing)
    mistake = Mistake(code, name, text, reason, place)
    return Verdict("wrong", text, (mistake,), about=about, reading=line.result.links[0])


def _goes_with_its_working(step: Step) -> bool:
    return shows_working(step) and (step.sides[-1].letter or step.sides[-1].sense) in POSITIVE


def _other_way(line: Line) -> Line | None:
    """A line of a value with the way it acts, and of numbers worked out before, with that way turned round."""
    step = line.result
    last = step.sides[-1]
    if value_given(step) is None or not all(map(holds_alone, line.steps[:-1])):
        return None
    if last.letter is None and last.sense is None and side_value(last) < 0.0:
        last = replace(with_other_sign(last), letter="C" if pushes_again(line) else None)
    letter, sense = OTHER_LETTER.get(last.letter), OTHER_WAY.get(last.sense)
    if side_value(last) <= 0.0 or (letter is None and sense is None):
        return None
    other = replace(step, sides=(*step.sides[:-1], replace(last, letter=letter, sense=sense)))
    return replace(line, steps=(*line.steps[:-1], other), alternatives=())
