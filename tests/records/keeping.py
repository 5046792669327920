"""What does this version of the program keep? Lessons, homeworks and drawings, for all later ones.

`PYTHONPATH=tests python tests/records/keeping.py 0.1.0` writes `tests/records/kept/0.1.0/`: once a
version, before it is given out, and never again. `test_records_kept.py` opens all that is there.
"""

from __future__ import annotations

import itertools
import json
import shutil
import sys
import time
from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

sys.path.insert(0, str(Path(__file__).parents[1] / "students"))  # where the habits are

import contextlib

from habits import HABITS
from student import Student
from walker import Walker

from tutor.drafting import Draft, lines_of
from tutor.homework.brought import brought
from tutor.lesson import Lesson
from tutor.lesson.place import place_key
from tutor.model import Problem, load_problem
from tutor.records import Keep
from tutor.records.kept_lines import TRUSS, KeptLines
from tutor.session import Session, open_session
from tutor.shipped import shipped_problems
from tutor.workbook import open_walk, open_workbook

KEPT = Path(__file__).parent / "kept"
PROBLEMS = (
    "bell-frame",
    "lamp-arm",
    "boarding-boom",
    "storm-mast",
    "signal-gantry",
    "creek-footbridge",
)
OF_OTHER_SETS = {"wagon-bridge": "bridges", "stall-hoist": "compound"}
"""A truss with a load on its members, and one that is cut in two; by the names of their sets."""
START = datetime(2025, 9, 8, 8, 0, tzinfo=UTC)
Do = tuple[str, dict[str, object]]


class Interrupted(Exception):  # noqa: N818 - a student who leaves in the midst is no error
    """The student leaves."""


def standing(lesson: Lesson) -> dict[str, Any]:
    """What a lesson has come to, as it must open again."""
    state = lesson.state
    return {
        "step": state.step,
        "joint": state.joint,
        "senses": dict(state.senses),
        "results": {r.unknown: [r.text, r.value, r.radius, r.how] for r in state.results},
        "lines": [line.text for line in state.lines],
        "hints": list(state.hints_used),
        "tries": [try_.verdict for try_ in state.tries],
        "tried": [[try_.step, try_.place, try_.text, list(try_.codes)] for try_ in state.tries],
        "shown": list(state.shown),
        "part": list(state.part),
        "brought": list(state.brought),
        "letters": dict(state.letters),
        "taught": list(state.taught),
        "hints by place": {place_key(place): given.level for place, given in state.hints.items()},
    }


def scripted(problem: Problem, keep: Keep, share: float) -> Session:
    """The scripted student, who slips everywhere and leaves after a share of the whole walk."""
    whole = Lesson(problem)
    Student(whole, whole.take).walk()
    session = open_session(problem, keep)
    left = max(1, round(share * len(whole.events)))

    def do(kind: str, **data: Any) -> Any:
        if len(session.lesson.events) >= left:
            raise Interrupted
        return session.do(kind, **data)

    with contextlib.suppress(Interrupted):
        Student(session.lesson, do).walk()
    return session


def habitual(problem: Problem, keep: Keep, habit: int, share: float) -> Session:
    """A student with a habit, with their own roundings and ways of writing."""
    walker = Walker(problem, HABITS[habit])
    walker.walk()
    session = open_session(problem, keep)
    events = walker.lesson.events
    for event in events[: max(1, round(share * len(events)))]:
        session.do(event.kind, **event.data)
    return session


def by_hand(problem: Problem, keep: Keep, events: Sequence[Do]) -> Session:
    """Typed by hand."""
    session = open_session(problem, keep)
    for kind, data in events:
        session.do(kind, **data)
    return session


BEGUN: tuple[Do, ...] = (
    ("reasons", {"chosen": ["triangles"]}),
    ("hint", {}),
    ("reasons", {"chosen": ["pins", "joints", "weight"]}),
    ("count", {"m": 3, "r": 3, "2j": 6}),
    ("support", {"joint": "A", "acts": ["x", "y"]}),
    ("support", {"joint": "B", "acts": ["x"]}),
    ("sense", {"unknown": "A_x", "sense": "right"}),
    ("sense", {"unknown": "A_y", "sense": "down"}),
    ("sense", {"unknown": "B_x", "sense": "left"}),
    ("turning", {"positive": "clockwise"}),
)
REACTIONS: tuple[Do, ...] = (
    *BEGUN,
    ("type", {"text": "ΣM_A: Bx*1 + 150*2.4 = 0"}),
    ("type", {"text": "Bx = 360"}),
    ("hint", {}),
    ("type", {"text": "-360"}),
    ("choose", {"about": "Fx"}),
    ("type", {"text": "A_x + B_x = 0"}),
    ("hint", {}),
    ("type", {"text": "A_x - B_x = 0"}),
    ("undo", {}),
    ("type", {"text": "ΣFx: A_x + 360 = 0"}),
    ("type", {"text": "A_x = -360"}),
    ("type", {"text": "ΣFy: - A_y - 150 = 0"}),
    ("type", {"text": "A_y = 150"}),
    ("type", {"text": "A_y = 150 up"}),
)
LAMP: tuple[Do, ...] = (
    *REACTIONS,
    ("joint", {"joint": "C"}),
    ("assume", {"member": "BC", "sense": "C"}),
    ("type", {"text": "ΣFy: 0.385 F_BC - 150 = 0"}),
    ("type", {"text": "BC = 390"}),
    ("type", {"text": "ΣFx: -AC + 0.923 BC = 0"}),
    ("undo", {}),
    ("type", {"text": "ΣFy: F_BC/2.6 = 150"}),
    ("type", {"text": "F_BC = 390 C"}),
    ("type", {"text": "ΣFx: AC = 0.923*390"}),
    ("type", {"text": "AC = 360 T"}),
    ("joint", {"joint": "B"}),
    ("type", {"text": "AB - 390*0.3846 = 0"}),
    ("type", {"text": "ΣFy: AB = 390*0.3846"}),
    ("type", {"text": "AB = 150 T"}),
)
CLOSED: tuple[Do, ...] = (
    *LAMP,
    ("go", {"step": "joints"}),
    ("go", {"step": "close"}),
    ("type", {"text": "Fx @ B: 360 - 390*0.923 = 0.03"}),
    ("type", {"text": "ΣFx: 360 - 390*0.923 = 0"}),
    ("choose", {"about": "Fx @ B"}),
    ("type", {"text": "360 - 390*0.923 = 0.03"}),
)
LETTERED: tuple[Do, ...] = (
    *REACTIONS,
    ("joint", {"joint": "C"}),
    ("assume", {"member": "BC", "sense": "C"}),
    ("type", {"text": "tan θ = 1/2.4 ⇒ θ = 22.62°"}),
    ("type", {"text": "ΣFy: F_BC sin θ = 150"}),
    ("type", {"text": "BC = 390"}),
)
SHOWN: tuple[Do, ...] = (
    *BEGUN,
    ("guess", {"guess": "C"}),
    ("show", {"until": "reactions"}),
    ("show", {}),
)
MAST: tuple[Do, ...] = (
    ("reasons", {"chosen": ["pins", "joints", "weight"]}),
    ("count", {"m": 9, "r": 3, "2j": 12}),
    ("support", {"joint": "A", "acts": ["x", "y"]}),
    ("support", {"joint": "B", "acts": ["y"]}),
    ("sense", {"unknown": "A_x", "sense": "left"}),
    ("sense", {"unknown": "A_y", "sense": "down"}),
    ("sense", {"unknown": "B_y", "sense": "up"}),
    ("turning", {"positive": "counter-clockwise"}),
    ("zero", {"member": "AB", "rule": "two"}),
    ("hint", {}),
    ("type", {"text": "ΣFx: 3 + 6 - A_x = 0"}),
    ("type", {"text": "9 kN"}),
    ("type", {"text": "ΣM_B: 3 A_y - 12 - 48 = 0"}),
    ("type", {"text": "A_y = 20"}),
    ("type", {"text": "B_y - A_y = 0"}),
    ("type", {"text": "B_y = 20 kN"}),
    ("joint", {"joint": "F"}),
    ("type", {"text": "ΣFx: -EF = 0"}),
    ("type", {"text": "EF = 0"}),
    ("type", {"text": "DF = 0"}),
    ("zero", {"member": "DF", "rule": "two"}),
    ("zero", {"member": "DF", "rule": "along"}),
    ("joint", {"joint": "E"}),
    ("type", {"text": "ΣFx: 6 + 0.6 DE = 0"}),
    ("type", {"text": "DE = 10 C"}),
    ("type", {"text": "ΣFy: CE + 0.8 DE = 0"}),
    ("type", {"text": "CE = 8 T"}),
    ("joint", {"joint": "D"}),
    ("type", {"text": "ΣFy at C: 1 = 0"}),
    ("type", {"text": "-CD + 0.6*10 = 0"}),
    ("keep", {}),
)
PAPER = (
    "A_x = 360 left, A_y = 150",
    "B_x = 350",
    "AC = 360 C",
    "ΣFx at C: AC - 0.923 BC = 0",
    "push BC",
)
PAPERS: dict[str, tuple[str, ...]] = {
    "lamp-arm": PAPER,
    "bell-frame": (
        "A_y = 6\tB_y = 6",
        "joint A",
        "ΣFy: 6 + 0.6 F_AC = 0",
        "F_AC = -10",
        "order A C B",
    ),
    "storm-mast": ("A_x 9 left; A_y 20 down; B_y 20", "EF = 0", "DE, 10, C", "CE 8,0 T", "AB ="),
}
DRAWINGS: dict[str, tuple[str, ...]] = {
    "crane": (
        "title Crane at the pilot station",
        "A 0 0  B 0 3  C 4 3",
        "AB BC CA",
        "A pin, B roller 0",
        "C 12 down",
    ),
    "warren": ("Warren span 12 height 3 panels 4 load 10",),
    "exact": (
        "A 0 0  B 4 0  C 2 2*sqrt(3)",
        "AB BC CA",
        "A pin  B link 4 -2",
        "C 5 at 210",
        "kip ft",
    ),
    "begun": ("A 0 0", "B 3/2 1", "AB"),
}


def lessons(problems: dict[str, Problem], keep: Keep) -> Iterator[tuple[str, Session]]:
    """Every lesson of the collection, and the problem it is on."""
    for name, shares in zip(
        PROBLEMS, ((1.0,), (0.5,), (0.3, 1.0), (0.7,), (0.9,), (0.2,)), strict=True
    ):
        for share in shares:
            yield name, scripted(problems[name], keep, share)
    for number, (name, share) in enumerate(
        zip(
            (*PROBLEMS[:5], "lamp-arm", "bell-frame"),
            (1.0, 0.6, 0.8, 0.4, 1.0, 1.0, 1.0),
            strict=True,
        )
    ):
        yield name, habitual(problems[name], keep, number, share)
    for name, share in ((n, share) for n in OF_OTHER_SETS for share in (0.6, 1.0)):
        yield name, scripted(problems[name], keep, share)
    for events in (BEGUN, REACTIONS, LAMP, CLOSED, LETTERED, SHOWN):
        yield "lamp-arm", by_hand(problems["lamp-arm"], keep, events)
    yield "storm-mast", by_hand(problems["storm-mast"], keep, MAST)
    given = replace(problems["bell-frame"], given=("reactions",))
    yield (
        "bell-frame-given",
        by_hand(
            given,
            keep,
            (
                ("joint", {"joint": "A"}),
                ("type", {"text": "ΣFy: 6 + 0.6 AC = 0"}),
                ("type", {"text": "AC = 10 C"}),
            ),
        ),
    )


def collect(folder: Path) -> dict[str, Any]:
    """Make everything in `folder`, and return what each part must open to."""
    keep = Keep(folder, clock=clock(1))
    problems = {name: own(folder, name) for name in (*PROBLEMS, *OF_OTHER_SETS)}
    given = replace(problems["bell-frame"], given=("reactions",))
    text = (folder / "problems" / "bell-frame.toml").read_text("utf-8")
    (folder / "problems" / "bell-frame-given.toml").write_text(
        f'given = ["reactions"]\n{text}', "utf-8"
    )
    problems["bell-frame-given"] = given
    found: dict[str, Any] = {"lessons": {}, "homeworks": {}, "drawings": {}}
    for name, session in lessons(problems, keep):
        session.close()
        found["lessons"][session.journal.path.name] = {"problem": name, **standing(session.lesson)}
    for name, lines in PAPERS.items():
        book = open_workbook(problems[name], keep)
        for line in lines:
            book.write(line)
        if name == "lamp-arm":
            walk, _ = open_walk(book, brought(book.problem, book.paper, book.review), keep)
            walk.do("hint")
            walk.close()
            found["lessons"][walk.journal.path.name] = {"problem": name, **standing(walk.lesson)}
        found["homeworks"][name] = list(book.kept.read())
    for name, lines in DRAWINGS.items():
        draft = Draft()
        for line in lines:
            assert draft.type(line).taken, line
        kept = KeptLines(folder / f"drawing-{name}", TRUSS)
        kept.write(lines_of(draft.problem))
        found["drawings"][name] = list(kept.read())
    return found


def own(folder: Path, name: str) -> Problem:
    """A copy of a shipped problem, which stays as it is when that one changes."""
    path = folder / "problems" / f"{name}.toml"
    path.parent.mkdir(exist_ok=True)
    shutil.copy(shipped_problems() / OF_OTHER_SETS.get(name, "first-steps") / path.name, path)
    return replace(load_problem(path), source=Path("/home/marit/statics/harbour") / path.name)


def clock(step: int) -> Callable[[], datetime]:
    """A clock that goes on by some seconds whenever it is asked."""
    ticks = itertools.count()
    return lambda: START + timedelta(seconds=step * next(ticks))


def main(version: str) -> None:
    """Write the collection of one version; raises FileExistsError where there is one."""
    folder = KEPT / version
    folder.mkdir(parents=True)
    seconds = itertools.count(START.timestamp(), 7)
    time.time = lambda: float(next(seconds))
    found = collect(folder)
    (folder / "expected.json").write_text(
        json.dumps(found, indent=1, ensure_ascii=False) + "\n", "utf-8"
    )


if __name__ == "__main__":
    main(sys.argv[1])
