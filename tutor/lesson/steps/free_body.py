"""Step 2: what does each support put on the truss, and how are the arrows drawn?"""

from __future__ import annotations

from dataclasses import replace

from tutor.judge import Judge, Mistake
from tutor.judge.about import equation_of
from tutor.judge.claims import CLAIMS
from tutor.judge.known_values import inclined_in_words, senses_for
from tutor.lesson.event import Event
from tutor.lesson.hints import Hints, Levels
from tutor.lesson.place import AtSupport
from tutor.lesson.reply import Ask, Option, Reply, Say
from tutor.lesson.state import State
from tutor.lesson.step import LessonStep
from tutor.lesson.trying import right, wrong
from tutor.model import Problem, Support
from tutor.model.support import kind_of_support
from tutor.text import listed

ACTS = {
    "x": "a horizontal reaction",
    "y": "a vertical reaction",
    "slanting": "one inclined reaction, along a known line",
    "moment": "a moment",
}
SENSE_WORDS = {
    "right": "to the right",
    "left": "to the left",
    "up": "up",
    "down": "down",
    "along": "the way it is meant to push",
    "against": "the other way",
}
FREE_CHOICE = {
    "sense": "Either way is right: if the force acts against your arrow, its value comes out with "
    "a minus.",
    "turning": "Either way is right, as long as every moment in a line is counted by it.",
}
TURNINGS = ("counter-clockwise", "clockwise")


def acts_of(problem: Problem, support: Support) -> frozenset[str]:
    """What really acts at a support, as keys of `ACTS`."""
    acts = set()
    for reaction in problem.reactions:
        if reaction.joint == support.joint:
            direction = reaction.direction
            inclined = direction.x != 0.0 and direction.y != 0.0
            acts.add("slanting" if inclined else ("x" if direction.x else "y"))
    return frozenset(acts)


def support_in_words(problem: Problem, support: Support) -> str:
    """ "the pin at A", "the inclined roller at C"."""
    inclined = "slanting" in acts_of(problem, support)
    on_a_slope = inclined and kind_of_support(support).sign == "roller"
    return f"the {'inclined ' if on_a_slope else ''}{support.kind} at {support.joint}"


def ask(state: State) -> Ask:
    """Support by support, then arrow by arrow, then the turning sense."""
    problem = state.problem
    for support in problem.supports:
        if support.joint not in state.supports_done:
            where = support_in_words(problem, support)
            return Ask(
                "free body",
                "support",
                "Free body",
                f"Take away {where}. What did it put on the truss? Choose all that act there.",
                tuple(Option(key, words) for key, words in ACTS.items()),
                support.joint,
            )
    for reaction in problem.reactions:
        if reaction.name not in state.senses:
            return Ask(
                "free body",
                "sense",
                "Free body",
                f"Draw {reaction.name} at {reaction.joint}: which way do you assume it acts? Any "
                "sense will do; the sign of the result is read against your arrow.",
                tuple(
                    Option(s, sense_in_words(problem, reaction.name, s))
                    for s in senses_for(problem, reaction.name)
                ),
                reaction.name,
            )
    return Ask(
        "free body",
        "turning",
        "Free body",
        "Which way of turning do you count as positive in moment equations?",
        tuple(Option(turning, turning, turning == state.turning) for turning in TURNINGS),
    )


def sense_in_words(problem: Problem, unknown: str, sense: str) -> str:
    """A sense for people: "up", or for a link "pulling on the joint"."""
    reaction = problem.reaction.get(unknown)
    if reaction is not None and sense in ("along", "against"):
        if reaction.pull:
            return "pulling on the joint" if sense == "along" else "pushing on the joint"
        return inclined_in_words(problem, unknown, sense)
    return SENSE_WORDS.get(sense, sense)


def support(state: State, event: Event, desk: Judge) -> tuple[State, Reply]:
    """The student replaced a support: data `joint` and `acts`, a list of keys of `ACTS`."""
    problem = state.problem
    joint = event.text("joint")
    found = next((s for s in problem.supports if s.joint == joint), None)
    if found is None:
        places = listed([s.joint for s in problem.supports])
        return state, Reply((Say("note", f"The supports are at {places}."),))
    chosen = event.strings("acts") & ACTS.keys()
    true = acts_of(problem, found)
    place = AtSupport(joint)
    if chosen == true:
        state = right(state, event, place)
        if joint not in state.supports_done:
            state = replace(state, supports_done=(*state.supports_done, joint))
        names = [r.name for r in problem.reactions if r.joint == joint]
        so = f"{'Its unknown is' if len(names) == 1 else 'Its unknowns are'} {listed(names)}."
        said = Say.opened("right", "Yes. ", f"{kind_of_support(found).why} {so}")
        return state, Reply((said,), True)
    mistake = _mistake(problem, found, chosen, true)
    state = wrong(state, event, place, (mistake.code,), mistakes=(mistake,))
    return state, Reply((Say("wrong", mistake.text),))


def _mistake(
    problem: Problem, support: Support, chosen: frozenset[str], true: frozenset[str]
) -> Mistake:
    """What was chosen wrongly at a support, with its hints."""
    where = support_in_words(problem, support)
    code = "reaction-direction"
    if "moment" in chosen:
        code = "invented-moment"
    elif len(chosen) > len(true):
        code = "too-many-reactions"
    elif len(chosen) < len(true):
        code = "too-few-reactions"
    mistake = CLAIMS[code].told(support=where, joint=support.joint)
    if not chosen:
        said = f"Something must act there: without {where} that joint could move."
        return replace(mistake, text=said)
    return mistake


def sense(state: State, event: Event, desk: Judge) -> tuple[State, Reply]:
    """The student drew an arrow: data `unknown` and `sense`. Any sense is legitimate."""
    problem = state.problem
    unknown, drawn = event.text("unknown"), event.text("sense")
    if unknown not in problem.reaction:
        names = listed([r.name for r in problem.reactions])
        return state, Reply((Say("note", f"The reactions are {names}."),))
    senses = senses_for(problem, unknown)
    if drawn not in senses:
        words = " or ".join(sense_in_words(problem, unknown, s) for s in senses)
        return state, Reply((Say("note", f"{unknown} can be drawn {words}."),))
    if state.senses.get(unknown, drawn) != drawn and _is_used(state, unknown):
        said = f"{unknown} stands in lines or has a value under its arrow; take those back first."
        return state, Reply((Say("note", said),))
    state = replace(state, senses={**state.senses, unknown: drawn})
    return state, Reply(
        (Say("note", f"{unknown} is drawn {sense_in_words(problem, unknown, drawn)}."),), True
    )


def _is_used(state: State, unknown: str) -> bool:
    """Whether a line or a value stands under the arrow of `unknown`."""
    return unknown in state.result or any(
        unknown in equation_of(state.problem, line.about).linear for line in state.lines
    )


def turning(state: State, event: Event, desk: Judge) -> tuple[State, Reply]:
    """The student chose the positive turning sense: data `positive`."""
    positive = event.text("positive")
    if positive not in TURNINGS:
        return state, Reply((Say("note", "Choose counter-clockwise or clockwise."),))
    state = replace(state, turning=positive)
    return state, Reply((Say("note", f"Moments are counted {positive} positive."),), True)


def hints(state: State, desk: Judge) -> Hints:
    """The hints of whichever support is open; arrows and turning need none."""
    asked = ask(state)
    if asked.kind != "support":
        return FREE_CHOICE[asked.kind]
    problem = state.problem
    found = next(s for s in problem.supports if s.joint == asked.subject)
    where = support_in_words(problem, found)
    acts = " and ".join(ACTS[key] for key in sorted(acts_of(problem, found)))
    return Levels(
        AtSupport(found.joint),
        f"Think of moving the joint by hand, with only {where} left.",
        "A support puts a force on the truss in each direction in which it stops movement, and a "
        "moment only where it stops turning.",
        f"Try in turn to push {found.joint} sideways, to lift it, to press it down and to turn the "
        f"truss about it; note each movement that {where} stops, and along which line.",
        f"There acts {acts}.",
    )


def undrawn(state: State) -> str | None:
    """Why no line can be written yet, or None."""
    if state.free_body_done:
        return None
    return "First replace every support and draw its arrows: the lines need them."


def _pass_over(state: State) -> tuple[State, str]:
    """Arrows not drawn yet are drawn in the positive sense, and moments count counter-clockwise."""
    problem = state.problem
    senses = {r.name: senses_for(problem, r.name)[0] for r in problem.reactions}
    senses |= state.senses
    arrows = [
        f"{r.name} {sense_in_words(problem, r.name, senses[r.name])}" for r in problem.reactions
    ]
    turning = state.turning or TURNINGS[0]
    supports = tuple(support.joint for support in problem.supports)
    passed = replace(state, supports_done=supports, senses=senses, turning=turning)
    return passed, (
        f"Drawn: {listed(arrows)}; moments count {turning} positive. Until it is used, an arrow can "
        "be drawn the other way."
    )


STEP = LessonStep(
    name="free body",
    order=2,
    where="at the free body",
    arrived=Say.opened(
        "note", "Next: ", "the free body. The supports are taken away and replaced by what they do."
    ),
    not_here="Finish the free body first: the supports replaced, the arrows drawn, the sense of "
    "moments chosen. Lines are written from it.",
    ask=ask,
    hints=hints,
    handles={"support": support, "sense": sense, "turning": turning},
    done=lambda state: state.free_body_done,
    chosen=True,
    skill="step free body",
    pass_over=_pass_over,
)
