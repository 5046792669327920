"""Are one more mistake, one more support and one more step one file each, and nothing else?

The program is laid out anew, every file of it the one that is there, with one more file in each of the
three folders; a process of its own then uses them.
"""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

ROOT = Path(__file__).parents[1]
PAGE = (ROOT / "DEVELOPERS.md").read_text("utf-8")
LAMP = ROOT / "problems" / "first-steps" / "lamp-arm.toml"

HALVED = '''
"""Half of a load."""

from tutor.judge.about import Fy
from tutor.judge.example import Example
from tutor.judge.kind import Kind
from tutor.judge.saying import Saying


def halves(term):
    if term.numeric and term.force.size is not None:
        yield 0.5 * term.per_unit


KIND = Kind(
    code="halved",
    called="half a load",
    why="Half of each load is given to either side of a truss, whatever stands where.",
    look=lambda case: Saying("A load stands here with half its size"),
    reason=lambda case: "A load acts whole where it acts.",
    place=lambda case: Saying(f"Look at {case.thing}"),
    variants=halves,
    examples=(Example(Fy(), "A_y + C_y - 10 = 0"),),
    touches="size",
)
'''
SLOT = '''
"""A straight slot: it holds its joint across itself, both ways."""

from tutor.model.direction import Direction
from tutor.model.parts import Reaction
from tutor.model.support_kind import SupportKind


def reactions(support, joint):
    return (Reaction(f"R_{joint.name}", joint.name, Direction.at_angle(support.angle)),)


KIND = SupportKind(
    name="slot",
    reactions=reactions,
    sign="roller",
    why="A slot holds its joint across itself, and lets it slide along.",
    takes="angle",
    about="across which way it holds",
    words=("groove",),
)
'''
FOOTING = '''
"""Between the free body and the reactions: what stands at the supports?"""

from tutor.lesson.hints import Levels
from tutor.lesson.place import Question
from tutor.lesson.reply import Ask, Option, Reply, Say
from tutor.lesson.step import LessonStep
from tutor.lesson.steps.free_body import undrawn
from tutor.lesson.trying import right, wrong
from tutor.lesson.move import Move, Reason

PLACE = Question("footing")
OPTIONS = (Option("unknown", "forces not known yet"), Option("load", "loads of the problem"))


def ask(state):
    return Ask("footing", "reasons", "Footing", "What are reactions?", OPTIONS)


def say(state, event, desk):
    if event.strings("chosen") == {"unknown"}:
        return right(state, event, PLACE), Reply((Say("right", "Yes."),), True)
    return wrong(state, event, PLACE, ("extra",)), Reply((Say("wrong", "One is given."),))


STEP = LessonStep(
    name="footing",
    order=2.5,
    where="at the footing",
    arrived=Say.opened("note", "Next: ", "what stands at the supports."),
    not_here="First say what reactions are.",
    ask=ask,
    hints=lambda state, desk: Levels(PLACE, "Look.", "Because.", "There.", "Unknown forces."),
    handles={"reasons": say},
    done=lambda state: state.answered(PLACE),
    barred=undrawn,
    chosen=True,
    move=lambda state, ask, desk: Move(
        "reasons", {"chosen": ["unknown"]}, "Reactions: forces not known yet.", Reason("They are.")
    ),
)
'''
ADDED = {
    "judge/mistakes/halved.py": HALVED,
    "model/supports/slot.py": SLOT,
    "lesson/steps/footing.py": FOOTING,
}
USED = """
import json, sys
from pathlib import Path
from tutor import Fx, Fy, judge, load_problem, review, solve
from tutor.deeds.read import deed_of
from tutor.drafting import Draft
from tutor.figure import to_svg, truss_figure
from tutor.figure.sentences import support_sentence
from tutor.judge import judge_of, right_line
from tutor.lesson import STEPS, Lesson
from tutor.model.schema import problem_schema
from tutor.model.write import write_problem
from tutor.progress.account import account_of
from tutor.progress.guide import where_in_words
from tutor.records.keep import Keep
from tutor.session import open_session

said, here = {}, Path(sys.argv[1]).parent
lamp = load_problem(sys.argv[1])
halved = judge(lamp, Fy(), "A_y - 75 = 0")
said["mistake"] = [(m.code, m.text, m.place) for m in halved.mistakes]
said["right"] = judge(lamp, Fy(), "A_y - 150 = 0").right

text = Path(sys.argv[1]).read_text("utf-8").replace("roller = 0", "slot = 30")
file = here / "slot.toml"
file.write_text(text, "utf-8")
slotted = load_problem(file)
said["written"] = "B = { slot = 30 }" in write_problem(slotted)
said["schema"] = '"slot"' in json.dumps(problem_schema())
answer = solve(slotted)
said["force"] = answer.reaction("R_B")
lines = [right_line(slotted, about, judge_of(slotted).known_values()) for about in (Fx(), Fx("B"))]
said["judged"] = [judge(slotted, about, text).right for about, text in zip((Fx(), Fx("B")), lines)]
work = {
    "reactions": {each: answer.value(each) for each in slotted.reaction},
    "forces": {each: answer.value(each) for each in slotted.member},
}
said["reviewed"] = review(slotted, work).right
said["sentence"] = support_sentence(slotted, slotted.supports[1])
said["drawn"] = len(to_svg(truss_figure(slotted)))
draft = Draft()
draft.type("A 0 1 B 0 0 C 2.4 1; AB BC AC; A pin; B groove 30; C 150 down")
said["typed"] = [(s.kind, s.angle and s.angle.text) for s in draft.problem.supports]
said["without"] = draft.type("B slot").said

said["steps"] = STEPS
keep = Keep(here / "kept")
session = open_session(slotted, keep)
for _ in range(8):
    if session.lesson.state.step != "footing":
        session.do("show")
said["asked"] = [option.words for option in session.lesson.ask.options]
said["where"] = where_in_words(account_of(session.lesson.state))
said["replies"] = []
for each in ["2", "hint", "1"]:
    deed = deed_of(session.lesson, each)
    said["replies"].append(session.do(deed.kind, **deed.data).text)
said["barred"] = Lesson(slotted).take("go", step="footing").text
session.close()
(kept,) = keep.lessons()
session = open_session(slotted, keep, kept.path)
said["again"] = session.lesson.state.step
session.close()
watched = Lesson(slotted)
watched.take("show", until="close")
watched.take("show")
said["shown"] = watched.state.shown
said["done"] = watched.done
print(json.dumps(said))
"""


@pytest.fixture(scope="module")
def said(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Any]:
    """What came of it where the three files were added."""
    root = tmp_path_factory.mktemp("grown")
    laid_out(ROOT / "tutor", root / "tutor", [Path(name) for name in ADDED])
    for name, text in ADDED.items():
        (root / "tutor" / name).write_text(text, "utf-8")
    (root / "problem.toml").write_text(LAMP.read_text("utf-8"), "utf-8")
    ended = subprocess.run(
        [sys.executable, "-c", USED, str(root / "problem.toml")],
        capture_output=True,
        text=True,
        encoding="utf-8",
        cwd=root,
        env={**os.environ, "PYTHONPATH": str(root), "PYTHONIOENCODING": "utf-8"},
        check=False,
    )
    assert ended.returncode == 0, ended.stderr
    found: dict[str, Any] = json.loads(ended.stdout)
    return found


def laid_out(source: Path, target: Path, added: list[Path]) -> None:
    """The folder `source` under another name; only folders that something is added to are new ones."""
    if added == [Path()] or not added:
        target.symlink_to(source)
        return
    target.mkdir()
    for each in source.iterdir():
        inside = [path.relative_to(each.name) for path in added if path.parts[0] == each.name]
        if each.name == "__pycache__":
            inside = [Path("new.pyc")]
        laid_out(each, target / each.name, inside)


def test_one_more_mistake_is_one_file(said: dict[str, Any]) -> None:
    ((code, text, place),) = said["mistake"]
    assert (code, text) == ("halved", "A load stands here with half its size.")
    assert "load" in place
    assert said["right"]


def test_one_more_support_is_one_file(said: dict[str, Any]) -> None:
    assert said["written"]
    assert said["schema"]
    assert said["force"] == pytest.approx(360 / 0.75**0.5), "by hand: moments about A"
    assert said["judged"] == [True, True]
    assert said["reviewed"]
    assert said["sentence"].startswith("Joint B is on a slot ")
    assert said["drawn"]
    assert said["typed"] == [["pin", None], ["slot", "30"]]
    assert "does not say which way" in said["without"]


def test_one_more_step_is_one_file(said: dict[str, Any]) -> None:
    assert said["steps"].index("footing") == said["steps"].index("reactions") - 1
    assert said["asked"] == ["forces not known yet", "loads of the problem"]
    assert said["where"] == "at the footing"
    wrong, hint, right = said["replies"]
    assert wrong == "One is given."
    assert "Because." in hint
    assert right.startswith("Yes.")
    assert said["barred"].startswith("First replace every support")
    assert said["again"] == "reactions"
    assert "Reactions: forces not known yet." in said["shown"]
    assert said["done"]


@pytest.mark.parametrize("what", ["A mistake", "A support", "A step", "A problem"])
def test_every_file_that_the_page_names_for_one_more_is_there(what: str) -> None:
    told = PAGE.partition(f"**{what}.**")[2].partition("\n\n")[0]
    named = [word for word in told.split("`")[1::2] if word.endswith((".py", ".toml", "/"))]
    assert named
    for word in named:
        ways = (word, f"tutor/{word}", f"tutor/lesson/{word}", f"tests/{word}")
        assert any((ROOT / way).exists() for way in ways) or word in (".toml", "set.toml"), word


@pytest.mark.parametrize("name", ADDED)
def test_the_page_names_the_folder_of_one_more(name: str) -> None:
    assert f"`tutor/{Path(name).parent}/`" in PAGE
