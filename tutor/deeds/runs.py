"""What does each word do with what stands behind it? A deed each, or None where it makes no sense."""

from __future__ import annotations

import re
from collections.abc import Callable

from tutor.deeds.deed import (
    Await,
    Deed,
    Do,
    Go,
    Guided,
    RemarksOn,
    Save,
    Show,
    Sight,
    Tell,
    Unfinished,
)
from tutor.deeds.equations import Run
from tutor.judge import M
from tutor.judge.known_values import senses_for
from tutor.lesson import STEPS, Lesson
from tutor.lesson.pointing import pointed_out
from tutor.lesson.reply import LINES, TICKED
from tutor.lesson.steps.free_body import sense_in_words
from tutor.lesson.steps.joints import RULES
from tutor.model.naming import joint_meant, member_meant, reaction_meant, unknown_meant
from tutor.statics import whole

SENSES = {
    **dict.fromkeys(("t", "tension", "pull", "pulling"), "T"),
    **dict.fromkeys(("c", "compression", "push", "pushing"), "C"),
}
BEHIND_JOINT = re.compile(r"(?<=\w)\s*(?:\([^()]*\)|[-–—:]+)\s*$")
"""What may stand behind the joint one goes to, also close to it: "joint E(by symmetry)", "joint E:"."""


def alone(deed: Callable[[Lesson], Deed]) -> Run:
    """A command that takes nothing after its word."""
    return lambda lesson, rest: None if rest else deed(lesson)


def shows(what: Sight) -> Run:
    """A command that only shows something."""
    return alone(lambda lesson: Show(what))


def value(lesson: Lesson, rest: str) -> Deed | None:
    named, _, amount = rest.partition(" ")
    unknown = unknown_meant(lesson.problem, named)
    if unknown is None:
        names = ", ".join(lesson.problem.unknowns)
        return Tell((f"Cannot read: a value is of one of {names}.",))
    amount = amount.strip().removeprefix("=").strip()
    return value_of(unknown, amount) if amount else Await(unknown)


def value_of(unknown: str, amount: str) -> Deed:
    """The typed value of an unknown that was named before."""
    text = f"{unknown} = {amount}"
    return Do("type", {"text": text}, text)


def drawn(sense: str) -> Run:
    def run(lesson: Lesson, rest: str) -> Deed | None:
        member = member_meant(lesson.problem, rest)
        if member is None:
            return Tell((no_member(lesson, rest),))
        return Do("assume", {"member": member, "sense": sense})

    return run


def assume(lesson: Lesson, rest: str) -> Deed | None:
    named, _, way = rest.rpartition(" ")
    member = member_meant(lesson.problem, named)
    sense = SENSES.get(way.lower())
    if member is not None and sense is not None:
        return Do("assume", {"member": member, "sense": sense})
    member = member_meant(lesson.problem, rest)
    if rest and member is None:
        return Tell((no_member(lesson, named or rest),))
    name = member or "AB"
    asked = f"Say how it is drawn, like assume {name} T (pulling) or assume {name} C (pushing)."
    return Unfinished("assume", "" if member is None else name, (asked,))


def no_member(lesson: Lesson, text: str) -> str:
    """What is said where no member of that name is there."""
    members = ", ".join(member.name for member in lesson.problem.members)
    return f"Cannot read: the members are {members}." if text else f"Name a member: {members}."


def zero(lesson: Lesson, rest: str) -> Deed | None:
    named, _, rule = rest.rpartition(" ")
    member = member_meant(lesson.problem, rest)
    if member is not None:
        rule = ""
    else:
        member = member_meant(lesson.problem, named)
    if member is None:
        line = no_member(lesson, rest)
        return Tell((line,)) if rest else Unfinished("zero", "", (line,))
    keys = list(RULES)
    key = (
        keys[int(rule) - 1]
        if rule.isascii() and rule.isdigit() and 0 < int(rule[:3]) <= len(keys)
        else rule
    )
    if key in RULES:
        return Do("zero", {"member": member, "rule": key})
    told = (f"{n}. {k}: {words}." for n, (k, words) in enumerate(RULES.items(), start=1))
    asked = f"By which rule, if any, is {member} zero? Name it, like zero {member} two:"
    return Unfinished("zero", member, (asked, *told))


def step(lesson: Lesson, rest: str) -> Deed | None:
    wanted = re.sub(r"^(?:to|back to|the|step)\s+", "", rest.lower())
    fitting = [step for step in STEPS if wanted and step.startswith(wanted)]
    if len(fitting) == 1:
        return Do("go", {"step": fitting[0]})
    asked = f"You are at {lesson.state.step}. The steps are {', '.join(STEPS)}."
    return Unfinished("step", "", (asked,))


def steps(lesson: Lesson, rest: str) -> Deed | None:
    return None if rest else step(lesson, "")


def equation(lesson: Lesson, rest: str) -> Deed | None:
    if rest:
        return None
    if lesson.ask.kind not in LINES:
        return Tell(("No equation is asked for here.",))
    named = (f"{n}. {option.words}" for n, option in enumerate(lesson.ask.options, start=1))
    return Unfinished("equation", "", tuple(named))


def reaction(lesson: Lesson, rest: str) -> Deed | None:
    """The arrow of a reaction: "draw A_x left"."""
    problem = lesson.problem
    named, _, way = rest.partition(" ")
    unknown = reaction_meant(problem, named)
    if unknown is None:
        names = ", ".join(problem.reaction)
        return Tell((f"Name a reaction ({names}) and the way its arrow points.",))
    words = {
        sense: sense_in_words(problem, unknown, sense) for sense in senses_for(problem, unknown)
    }
    said = way.strip().lower()
    fitting = [s for s, told in words.items() if said and (said == s or said in told)]
    if len(fitting) == 1:
        return Do("sense", {"unknown": unknown, "sense": fitting[0]})
    return Tell((f"{unknown} can be drawn {' or '.join(words.values())}.",))


def joint(lesson: Lesson, rest: str) -> Deed | None:
    rest = BEHIND_JOINT.sub("", rest)
    joint = joint_meant(lesson.problem, rest)
    if joint is None and rest:
        joints = ", ".join(joint.name for joint in lesson.problem.joints)
        return Tell((f"Cannot read: the joints are {joints}.",))
    return Do("joint", {"joint": joint})


def leave(lesson: Lesson, rest: str) -> Deed | None:
    if rest.lower() in ("joint", "this joint", "the joint"):
        return Do("joint", {"joint": None})
    if rest.lower() in ("section", "part", "this part", "the part"):
        return Do("section", {"members": []})
    return None if rest else Go("out")


def save(lesson: Lesson, rest: str) -> Deed | None:
    asked = "Name the file as well, like save lamp-arm.md."
    return Save(rest) if rest else Unfinished("save", "", (asked,))


def figure(lesson: Lesson, rest: str) -> Deed | None:
    joint = joint_meant(lesson.problem, rest.removeprefix("joint ").strip())
    if joint is not None:
        return Show("figure", joint)
    if rest.lower() == "large":
        return Show("large")
    return None if rest else Show("figure")


def arm(lesson: Lesson, rest: str) -> Deed | None:
    about = lesson.state.about
    if not isinstance(about, M) or about.part:
        return Tell(("Choose a sum of moments first, like moment A.",))
    names = [force.name for force in whole(lesson.problem).forces]
    force = unknown_meant(lesson.problem, rest) or rest
    if force in names or (not rest and pointed_out(lesson.state) is not None):
        return Show("arm", force)
    return Tell((f"Cannot read: an arm is that of one of {', '.join(names)}.",))


def done(lesson: Lesson) -> Deed:
    if lesson.ask.kind not in TICKED:
        return Tell(("There are no boxes to tick here.",))
    return Unfinished("answer", "", ("Type the numbers of all that hold, like 1 3.",))


def practice(lesson: Lesson) -> Deed:
    if lesson.practice is None:
        return Tell(("A smaller problem is offered after the last hint three times in a row.",))
    return Go("practice")


def remarks(lesson: Lesson, rest: str) -> Deed | None:
    if rest.lower() in ("on", "off"):
        return RemarksOn(rest.lower() == "on")
    return Tell(("Type remarks on, or remarks off.",))


def guide(lesson: Lesson, rest: str) -> Deed | None:
    if rest.lower() in ("on", "off"):
        return Guided(rest.lower() == "on")
    return Tell(("Type guide on, or guide off.",))
