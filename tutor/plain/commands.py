"""Which words steer a lesson, and what does each do? `COMMANDS` is the one table of them."""

from __future__ import annotations

import difflib
import re
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from tutor.figure import moment_figure, to_words
from tutor.judge import Fx, Fy, M
from tutor.lesson import STEPS, Lesson
from tutor.lesson.steps.joints import RULES
from tutor.plain import telling
from tutor.plain.deed import Await, Deed, Do, Go, Remark, Save, Tell
from tutor.plain.equations import Run, across, along, equation, moment
from tutor.plain.names import joint_named, member_named, unknown_named
from tutor.statics import whole

HEADING = re.compile(r"(?:sum\s+of\s+|sum\s+|Σ\s*)(f_?x|f_?y|moments?|m)\b\s*:?", re.IGNORECASE)
HEADED = {"fx": "x", "fy": "y", "moment": "moment", "moments": "moment", "m": "moment"}


@dataclass(frozen=True)
class Command:
    """A command: the words it answers to, how it is typed, what it does.

    `run` gets what stands after the word; it returns None where that makes no sense for it, and
    the line is then taken for something else.
    """

    words: tuple[str, ...]
    typed: str
    does: str
    run: Run


def command(lesson: Lesson, text: str) -> Deed | None:
    """The deed of a command, or None where `text` is none."""
    text = HEADING.sub(lambda found: HEADED[found[1].lower().replace("_", "")] + " ", text.strip())
    first, _, rest = text.strip().rstrip(".:").partition(" ")
    found = BY_WORD.get(first.lower())
    return None if found is None else found.run(lesson, rest.strip())


def nearest(text: str) -> str | None:
    """The command that a mistyped one was most likely meant to be."""
    first = text.strip().lower().partition(" ")[0]
    close = difflib.get_close_matches(first[:20], list(BY_WORD), n=1, cutoff=0.7)
    return close[0] if close else None


def alone(deed: Callable[[Lesson], Deed]) -> Run:
    """A command that takes nothing after its word."""
    return lambda lesson, rest: None if rest else deed(lesson)


def tells(lines: Callable[[Lesson], Sequence[str] | Iterator[str]]) -> Run:
    """A command that only says something."""
    return alone(lambda lesson: Tell(tuple(lines(lesson))))


def _value(lesson: Lesson, rest: str) -> Deed | None:
    named, _, amount = rest.partition(" ")
    unknown = unknown_named(lesson.problem, named)
    if unknown is None:
        names = ", ".join(lesson.problem.unknowns)
        return Tell((f"Cannot read: a value is of one of {names}.",))
    amount = amount.strip().removeprefix("=").strip()
    return value_of(unknown, amount) if amount else Await(unknown)


def value_of(unknown: str, amount: str) -> Deed:
    """The typed value of an unknown that was named before."""
    text = f"{unknown} = {amount}"
    return Do("type", {"text": text}, text)


def _assume(sense: str) -> Run:
    def run(lesson: Lesson, rest: str) -> Deed | None:
        member = member_named(lesson.problem, rest)
        if member is None:
            return Tell((no_member(lesson, rest),))
        return Do("assume", {"member": member.name, "sense": sense})

    return run


def no_member(lesson: Lesson, text: str) -> str:
    """What is said where no member of that name is there."""
    members = ", ".join(member.name for member in lesson.problem.members)
    return f"Cannot read: the members are {members}." if text else f"Name a member: {members}."


def _zero(lesson: Lesson, rest: str) -> Deed | None:
    named, _, rule = rest.rpartition(" ") if " " in rest else (rest, "", "")
    member = member_named(lesson.problem, named)
    if member is None:
        return Tell((no_member(lesson, rest),))
    keys = list(RULES)
    key = (
        keys[int(rule) - 1]
        if rule.isascii() and rule.isdigit() and 0 < int(rule[:3]) <= len(keys)
        else rule
    )
    if key in RULES:
        return Do("zero", {"member": member.name, "rule": key})
    told = (f"{n}. {k}: {words}." for n, (k, words) in enumerate(RULES.items(), start=1))
    return Tell((f"Say by which rule {member.name} is zero, like zero {member.name} two:", *told))


def _step(lesson: Lesson, rest: str) -> Deed | None:
    wanted = re.sub(r"^(?:to|back to|the|step)\s+", "", rest.lower())
    fitting = [step for step in STEPS if wanted and step.startswith(wanted)]
    if len(fitting) == 1:
        return Do("go", {"step": fitting[0]})
    return Tell((f"You are at {lesson.state.step}. The steps are {', '.join(STEPS)}.",))


def _joint(lesson: Lesson, rest: str) -> Deed | None:
    joint = joint_named(lesson.problem, rest)
    if joint is None and rest:
        joints = ", ".join(joint.name for joint in lesson.problem.joints)
        return Tell((f"Cannot read: the joints are {joints}.",))
    return Do("joint", {"joint": joint})


def _leave(lesson: Lesson, rest: str) -> Deed | None:
    if rest.lower() in ("joint", "this joint", "the joint"):
        return Do("joint", {"joint": None})
    return None if rest else Go("out")


def _save(lesson: Lesson, rest: str) -> Deed | None:
    return Save(rest) if rest else Tell(("Name the file as well, like save lamp-arm.md.",))


def _figure(lesson: Lesson, rest: str) -> Deed | None:
    joint = joint_named(lesson.problem, rest.removeprefix("joint ").strip())
    if joint is not None:
        return Tell(telling.joint_lines(lesson.state, joint))
    return None if rest else Tell(telling.figure_lines(lesson.state))


def _arm(lesson: Lesson, rest: str) -> Deed | None:
    about = lesson.state.about
    if not isinstance(about, M) or about.part:
        return Tell(("Choose a sum of moments first, like moment A.",))
    pointed = telling.pointed_lines(lesson.state)
    if not rest and pointed:
        return Tell(pointed)
    force = unknown_named(lesson.problem, rest) or rest
    try:
        return Tell(to_words(moment_figure(lesson.problem, force, about.at))[-1:])
    except KeyError:
        names = ", ".join(f.name for f in whole(lesson.problem).forces)
        return Tell((f"Cannot read: an arm is that of one of {names}.",))


def _practice(lesson: Lesson) -> Deed:
    if lesson.practice is None:
        return Tell(("A smaller problem is offered after the last hint three times in a row.",))
    return Go("practice")


def _remarks(lesson: Lesson, rest: str) -> Deed | None:
    if rest.lower() in ("on", "off"):
        return Remark(rest.lower() == "on")
    return Tell(("Type remarks on, or remarks off.",))


def _help(lesson: Lesson, rest: str) -> Deed | None:
    if rest:
        found = BY_WORD.get(rest.lower())
        return None if found is None else Tell((f"{found.typed}: {found.does}",))
    return Tell(
        (
            "Type a line as you would write it, like F_AB*3/5 + F_AC - 12 = 0, "
            "or a value, like AB = 7.5 C.",
            *(f"{each.typed}: {each.does}" for each in COMMANDS),
        )
    )


COMMANDS: tuple[Command, ...] = (
    Command(
        ("again", "ask", "question"),
        "again",
        "says what is asked.",
        tells(lambda x: tuple(telling.ask_lines(x.ask))),
    ),
    Command(
        ("figure", "drawing", "picture"),
        "figure, or figure C",
        "says what the figure shows now, or joint C cut free.",
        _figure,
    ),
    Command(
        ("truss", "story", "problem"),
        "truss",
        "says the problem again.",
        tells(lambda x: tuple(telling.opening_lines(x.problem))),
    ),
    Command(("x", "fx"), "x", "chooses ΣFx.", equation(Fx)),
    Command(("y", "fy"), "y", "chooses ΣFy.", equation(Fy)),
    Command(
        ("moment", "moments", "about"),
        "moment A, or moment 4, 0",
        "chooses ΣM about a joint or a point.",
        moment,
    ),
    Command(
        ("along",),
        "along AC, or along 30",
        "chooses the sum along a member, or in degrees from +x.",
        along,
    ),
    Command(("across",), "across AC", "chooses the sum square to a member.", across),
    Command(
        ("arm",),
        "arm B_y",
        "says where the arm of a force runs; arm alone, that of the force a hint has named.",
        _arm,
    ),
    Command(("value",), "value AB", "says that the next line is the value of AB.", _value),
    Command(("joint",), "joint C", "goes to a joint; leave joint goes back.", _joint),
    Command(("pull",), "pull AC", "draws a member pulling on its joints.", _assume("T")),
    Command(("push",), "push AC", "draws a member pushing on its joints.", _assume("C")),
    Command(("zero",), "zero AB two", "says that a member is zero, and by which rule.", _zero),
    Command(
        ("keep",), "keep", "keeps a line as what it is true of.", alone(lambda x: Do("keep", {}))
    ),
    Command(("hint",), "hint", "gives the next hint.", alone(lambda x: Do("hint", {}))),
    Command(("undo",), "undo", "takes the last thing back.", alone(lambda x: Do("undo", {}))),
    Command(
        ("practice",), "practice", "opens the smaller problem that was offered.", alone(_practice)
    ),
    Command(
        ("remarks", "remark"),
        "remarks off, or remarks on",
        "leaves out or brings back remarks on an easier way.",
        _remarks,
    ),
    Command(
        ("lines",),
        "lines",
        "says the lines that stand.",
        tells(lambda x: tuple(telling.line_lines(x.state))),
    ),
    Command(
        ("results", "values"),
        "results",
        "says the values found.",
        tells(lambda x: tuple(telling.result_lines(x.state))),
    ),
    Command(
        ("joints",),
        "joints",
        "says what is unknown at each joint.",
        tells(lambda x: tuple(telling.count_lines(x.state))),
    ),
    Command(
        ("table",),
        "table",
        "says the table so far.",
        tells(lambda x: tuple(telling.table_lines(x))),
    ),
    Command(("save",), "save NAME.md", "writes the lesson so far into a new file.", _save),
    Command(("step", "go"), "step reactions", "goes to another step.", _step),
    Command(
        ("homework",),
        "homework",
        "checks work you did on paper on this truss.",
        alone(lambda x: Go("homework")),
    ),
    Command(
        ("problems",),
        "problems",
        "goes to the list of problems; all is kept.",
        alone(lambda x: Go("problems")),
    ),
    Command(("leave", "quit", "exit", "bye"), "leave", "ends; all is kept.", _leave),
    Command(("help", "?"), "help, or help along", "says these words.", _help),
)

BY_WORD: Mapping[str, Command] = {word: each for each in COMMANDS for word in each.words}
