"""What does a lecturer say while idealising, and while the supports are replaced by what they do?"""

from __future__ import annotations

from tutor.judge import Judge
from tutor.judge.known_values import senses_for
from tutor.lesson.move import Guess, Move, Reason
from tutor.lesson.reply import Ask, Option
from tutor.lesson.state import State
from tutor.lesson.steps.free_body import ACTS, acts_of, sense_in_words, support_in_words
from tutor.lesson.steps.idealise import BECAUSE
from tutor.lesson.steps.reasons import TRUE_REASONS, statements
from tutor.lesson.steps.sound import WORDS
from tutor.lesson.steps.spread import BECAUSE_HALVES, following, true_statements
from tutor.model.support import kind_of_support
from tutor.statics import determinacy, loose_joints, soundness, stability
from tutor.statics.along import push_words, spread_words
from tutor.text import listed


def reasons(state: State, ask: Ask, desk: Judge) -> Move:
    """The reasons for which every member is a two-force member."""
    true = [o for o in statements(state.problem) if o.key in TRUE_REASONS]
    written = "Two-force members: " + "; ".join(option.words for option in true) + "."
    return Move("reasons", {"chosen": [o.key for o in true]}, written, Reason(BECAUSE))


def halves(state: State, ask: Ask, desk: Judge) -> Move:
    """What is so when a load is brought from members to joints."""
    true = true_statements(state.problem)
    written = "To the joints: " + "; ".join(option.words for option in true) + "."
    return Move("halves", {"chosen": [o.key for o in true]}, written, Reason(BECAUSE_HALVES))


def shares(state: State, ask: Ask, desk: Judge) -> Move:
    """What the joints take of the load, half of it from each member."""
    problem = state.problem
    lies = "; ".join(spread_words(problem, spread) for spread in problem.spreads)
    left = [load for load in following(problem) if load.joint not in state.brought]
    because = (
        f"On the members: {lies}. Half of what lies on each of them goes to each of its ends; where two "
        "of them meet, the joint takes from both."
    )
    text = ", ".join(f"{load.joint} {push_words(load)}" for load in left)
    return Move("shares", {"text": text}, f"The joints take: {text}.", Reason(because))


def count(state: State, ask: Ask, desk: Judge) -> Move:
    """m + r against 2j."""
    problem = state.problem
    m, r, j = len(problem.members), len(problem.reactions), len(problem.joints)
    because = (
        f"The unknowns are the {m} member forces and the {r} reactions; each of the {j} joints gives "
        "two equations."
    )
    if problem.truss is None:
        because += " As many unknowns as equations: statics can find them all."
    written = f"The counts: m + r = {m} + {r} = {m + r}, 2j = {2 * j}."
    return Move("count", {"m": m, "r": r, "2j": 2 * j}, written, Reason(because))


def support(state: State, ask: Ask, desk: Judge) -> Move:
    """One support taken away, and what it put on the truss."""
    problem = state.problem
    found = next(s for s in problem.supports if s.joint == ask.subject)
    acts = acts_of(problem, found)
    names = [r.name for r in problem.reactions if r.joint == found.joint]
    guess = Guess(
        "support",
        f"How many unknown forces replace {support_in_words(problem, found)}?",
        (Option("1", "one"), Option("2", "two"), Option("3", "two and a moment")),
        frozenset({str(len(names))}),
        found.joint,
    )
    written = f"{listed(names)} in the place of {support_in_words(problem, found)}."
    data = {"joint": found.joint, "acts": [key for key in ACTS if key in acts]}
    return Move(
        "support", data, written, Reason(kind_of_support(found).why, open=tuple(names)), guess
    )


def sense(state: State, ask: Ask, desk: Judge) -> Move:
    """One arrow, drawn in the positive sense."""
    unknown = str(ask.subject)
    drawn = senses_for(state.problem, unknown)[0]
    words = sense_in_words(state.problem, unknown, drawn)
    because = (
        "Which way it really acts is not known yet; a minus will say so if it is the other way."
    )
    data = {"unknown": unknown, "sense": drawn}
    return Move("sense", data, f"{unknown} is drawn {words}.", Reason(because))


def turning(state: State, ask: Ask, desk: Judge) -> Move:
    """Counter-clockwise, as most do."""
    because = "Either sense may be chosen, as long as every moment of a line is counted by it."
    positive = ask.options[0].key
    written = f"Moments count {positive} positive."
    return Move("turning", {"positive": positive}, written, Reason(because))


def say_soundness(state: State, ask: Ask, desk: Judge) -> Move:
    """Whether the truss is held, and whether statics can solve it."""
    problem = state.problem
    found = soundness(problem)
    guess = Guess("soundness", "What is this truss?", ask.options, frozenset({found}))
    because = Reason(f"The counts: {determinacy(problem).said}")
    return Move("soundness", {"is": found}, f"This truss: {WORDS[found]}.", because, guess)


def say_loose(state: State, ask: Ask, desk: Judge) -> Move:
    """What can move."""
    loose = loose_joints(state.problem)
    because = Reason(stability(state.problem).how, open=loose)
    return Move("loose", {"joints": list(loose)}, f"What can move: {listed(loose)}.", because)
