"""What the tests of the lesson share: problems to walk, random events, and ways to one step.

`walk_to` answers rightly up to a step. `random_events` mixes what a student may do with data that
makes no sense, as a damaged or forged journal might hold.
"""

from __future__ import annotations

import itertools
from typing import Any

from hypothesis import strategies as st
from student import REASONS, Student, what_acts

from tutor.lesson import Event, Lesson, Reply, State
from tutor.lesson.lesson import TAKEN_BACK
from tutor.model import Problem, load_problem
from tutor.shipped import shipped_problems

FOLDER = shipped_problems() / "first-steps"
ARM = load_problem(FOLDER / "lamp-arm.toml")
LANDING = load_problem(FOLDER / "baggage-landing.toml")
MAST = load_problem(FOLDER / "storm-mast.toml")
RAIL = load_problem(FOLDER / "drying-rail.toml")
CRADLE = load_problem(FOLDER / "slipway-cradle.toml")
START = 1_700_000_000.0


class Clock:
    """Does things in a lesson, each some seconds after the one before."""

    def __init__(self, lesson: Lesson, seconds: float = 7.0) -> None:
        self.lesson = lesson
        self.ticks = itertools.count(START, seconds)

    def __call__(self, kind: str, **data: Any) -> Reply:
        return self.lesson.take(kind, now=next(self.ticks), **data)


def walk_to(step: str, problem: Problem = ARM, **senses: str) -> tuple[Lesson, Clock]:
    """A lesson answered rightly up to `step`, its arrows drawn as `senses` says, else positive."""
    lesson = Lesson(problem)
    do = Clock(lesson)
    if step == "idealise":
        return lesson, do
    m, r, n = len(problem.members), len(problem.reactions), 2 * len(problem.joints)
    do("reasons", chosen=REASONS)
    do("count", m=m, r=r, **{"2j": n})
    if step == "free body":
        return lesson, do
    for support in problem.supports:
        do("support", joint=support.joint, acts=what_acts(problem, support))
    while lesson.ask.kind == "sense":
        unknown = str(lesson.ask.subject)
        do("sense", unknown=unknown, sense=senses.get(unknown, lesson.ask.options[0].key))
    do("turning", positive="counter-clockwise")
    student = Student(lesson, do)
    student.slip = lambda *_, **__: None  # type: ignore[method-assign]
    while lesson.state.step != step:
        ask = lesson.ask
        getattr(student, ask.kind.replace("-", "_"))(ask)
    return lesson, do


def script(problem: Problem) -> list[Event]:
    """Every event of a student who slips at every place and still finishes."""
    lesson = Lesson(problem)
    Student(lesson, Clock(lesson)).walk()
    return lesson.events


def without_tallies(state: State) -> dict[str, Any]:
    """What a state says, save what is only counted: tries, hints and the clock."""
    counted = ("tries", "hints", "hints_used", "started", "last_time")
    counted += ("taught", "in_row", "practice")
    return {n: v for n, v in vars(state).items() if n in STATE and n not in counted}


STATE = frozenset(State.__dataclass_fields__)
NAMES = ["A", "B", "C", "AB", "BA", "AC", "BC", "A_x", "A_y", "B_x", "Z", "", "\x1b[31m"]
KEYS = ["pins", "joints", "weight", "rigid", "x", "y", "slanting", "moment", "left", "right"]
KEYS += ["up", "down", "T", "C", "two", "three", "along", "clockwise", "free body", "reactions"]
KEYS += ["joints", "close", "table", "Fx", "Fy", "M A", "M B", "Fx @ A", "Fy @ C", "value AB"]
KEYS += ["along 22.62 @ C", "M 1e308 1e999", "along 1e999 @ C", "M nan 0", "Fx @ Z"]
TEXTS = ["B_x = 360", "B_x - 150*2.4 = 0", "A_x + B_x = 0", "ΣFy: A_y - 150 = 0", "A_y = 150"]
TEXTS += ["F_AC + 12/13 F_BC = 0", "AC = 360 T", "AB = 150 T", "BC = -390", "BC = 390 C", "= ="]
TEXTS += ["150 - F_AB = 0", "ΣM_A: 1 = 1", "A_x = -360", "360 - 390*12/13 = 0", "B_x = 1e400"]
JSON = st.recursive(
    st.none()
    | st.booleans()
    | st.integers()
    | st.floats(allow_nan=False, allow_infinity=False)
    | st.text(max_size=8),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=3), inner),
    max_leaves=4,
)
WORD = st.sampled_from(NAMES + KEYS + TEXTS)
FIELDS = ["chosen", "joint", "acts", "unknown", "sense", "positive", "about", "text", "member"]
FIELDS += ["rule", "step", "m", "r", "2j", "kind", "time"]
DATA = st.fixed_dictionaries(
    {},
    optional={key: WORD | st.lists(WORD, max_size=4) | st.integers(-1, 7) | JSON for key in FIELDS},
)
KINDS = st.sampled_from([*TAKEN_BACK, "choose", "joint", "hint", "undo", "go", "dance"])
PLAIN = st.one_of(
    st.sampled_from(TEXTS).map(lambda text: ("type", {"text": text})),
    st.sampled_from(KEYS).map(lambda key: ("choose", {"about": key})),
    st.sampled_from(NAMES).map(lambda name: ("joint", {"joint": name})),
    st.sampled_from(KEYS).map(lambda key: ("go", {"step": key})),
    st.tuples(st.sampled_from(NAMES), st.sampled_from(KEYS)).map(
        lambda two: ("zero", {"member": two[0], "rule": two[1]})
    ),
    st.sampled_from(["undo", "undo", "hint", "hint", "keep"]).map(lambda kind: (kind, {})),
)
ANYTHING = st.one_of(PLAIN, PLAIN, st.tuples(KINDS, DATA))


@st.composite
def random_events(draw: Any, scripted: list[Event], most: int = 12) -> list[Event]:
    """A walk begun rightly and gone on with at random, by a clock that now and then stands still."""
    begun = scripted[: draw(st.integers(0, len(scripted)))]
    now = begun[-1].time if begun else START
    events = list(begun)
    for kind, data in draw(st.lists(ANYTHING, max_size=most)):
        now += draw(st.sampled_from((0.0, 1.0, 9.0)))
        events.append(Event(kind, data, now))
    return events
