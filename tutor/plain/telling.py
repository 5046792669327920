"""What is said of a lesson, as plain lines: what is asked, what was answered, how things look."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from tutor.figure import (
    Figure,
    joint_figure,
    moment_figure,
    part_figure,
    plain,
    result_figure,
    to_words,
    truss_figure,
)
from tutor.judge import M, in_words
from tutor.judge.called import counted
from tutor.lesson import CAUTION, Ask, Lesson, Reply, Row, Say, State
from tutor.lesson.pointing import pointed_out
from tutor.lesson.steps.result_words import result_in_words
from tutor.lesson.steps.sound import what_it_is
from tutor.lesson.steps.spread import pictured
from tutor.lesson.steps.table import hints_in_words, largest_in_words, time_in_words
from tutor.model import LEVELS, Problem
from tutor.statics import forces_follow, joint_body, whole
from tutor.text import raised

FIRST_WORD: Mapping[str, str] = {
    "right": "Right",
    "wrong": "Wrong",
    "unreadable": "Cannot read",
    "undecided": "Not decided",
    "hint": "Hint",
    "remark": "Remark",
    "note": "Note",
    "shown": "On the board",
}
HOW: Mapping[str, str] = {
    "reasons": "Type the numbers of all that hold, with blanks between them.",
    "count": "Type the three numbers in this order, with blanks between them: m, r, 2j.",
    "halves": "Type the numbers of all that are so, with blanks between them.",
    "support": "Type the numbers of all that act, or none.",
    "sense": "Type one number, or the direction.",
    "turning": "Type one number.",
    "soundness": "Type one number.",
    "loose": "Type the joints that can move, with blanks between them.",
    "shares": "Type joints with their forces, with commas between them, one or several at a time.",
    "line": "Type a number to choose, then the line. A line may carry its heading instead.",
    "joint": "Type a number, or the name of a joint.",
    "joint-line": "Type equations to hear all the sums with their numbers.",
    "close": "Type a number to choose, then the line.",
    "table": "Type save and a file name to keep this as a file, problems for another, or leave.",
}


def reply_lines(reply: Reply, text: str = "") -> Iterator[str]:
    """What was said back, each line beginning with a word that tells what kind of thing it is."""
    for say in reply.said:
        yield _said(say)
        if say.span is not None and text:
            column = say.span.start + 1
            yield f'This is at column {column}: "{text[say.span.start : say.span.end]}".'


def _said(say: Say) -> str:
    word = FIRST_WORD[say.tone]
    if say.tone == "right":
        return f"{word}: {say.rest_aloud}"
    return say.text if say.opening else f"{word}: {raised(say.text)}"


def ask_lines(ask: Ask, how: bool = True) -> Iterator[str]:
    """The question, its numbered options, and with `how`, the way it is answered.

    The sums at a joint are named in the question already.
    """
    yield ask.alone
    if ask.caution:
        yield ask.caution
    if ask.kind != "joint-line":
        yield from option_lines(ask)
    if how and ask.kind in HOW:
        yield HOW[ask.kind]


def option_lines(ask: Ask) -> Iterator[str]:
    """The options of a question, numbered; those of a count are no options but names."""
    if ask.kind == "count":
        return
    for number, option in enumerate(ask.options, start=1):
        yield f"{number}. {option.words}{' (chosen)' if option.chosen else ''}"


def opening_lines(problem: Problem) -> Iterator[str]:
    """A problem as one meets it: title, story, and the truss in words."""
    level = f" Level {problem.level} of {LEVELS[-1]}." if problem.level is not None else ""
    yield f"Problem: {problem.title}.{level}"
    if problem.story:
        yield problem.story
    yield from to_words(truss_figure(problem))[1:]


def figure_lines(state: State) -> tuple[str, ...]:
    """What the figure beside the lesson shows now, in words; with the caution where it is done."""
    problem = state.problem
    if state.part:
        return part_lines(state)
    if state.step in ("close", "table"):
        values = {r.unknown: state.signed(r.unknown) for r in state.results}
        return (*to_words(result_figure(problem, values)), CAUTION)
    if state.step == "joints" and state.joint is not None:
        return joint_lines(state, state.joint)
    return body_lines(state)


def joint_lines(state: State, joint: str) -> tuple[str, ...]:
    """One joint cut free, with what is known and how the rest is drawn."""
    figure = joint_figure(state.problem, joint, known=as_drawn(state), senses=state.senses)
    return to_words(figure)[1:]


def part_lines(state: State) -> tuple[str, ...]:
    """The part kept by a section, cut free."""
    figure = part_figure(state.problem, state.part, known=as_drawn(state), senses=state.senses)
    return to_words(figure)[1:]


def body_lines(state: State) -> tuple[str, ...]:
    """The whole truss, with arrows in the place of the supports already taken away."""
    return to_words(_body_figure(state))


def _body_figure(state: State) -> Figure:
    problem = pictured(state)
    reactions = {
        r.name: state.senses[r.name]
        for r in problem.reactions
        if r.joint in state.supports_done and r.name in state.senses
    }
    turn = {"counter-clockwise": "ccw", "clockwise": "cw"}
    return truss_figure(
        problem,
        reactions=reactions,
        forces=as_drawn(state),
        senses=state.senses,
        turning="ccw"
        if turn.get(state.turning or "") == "ccw"
        else "cw"
        if state.turning
        else None,
    )


def pointed_lines(state: State) -> tuple[str, ...]:
    """What the picture shows of the force that a hint has named; empty where none was.

    In a sum of moments that is where its arm runs, without the length; at a joint, its arrow.
    """
    pointed = pointed_out(state)
    if pointed is None or pointed.about.part:
        return ()
    about, problem = pointed.about, state.problem
    if isinstance(about, M):
        names = {force.name for force in whole(problem).forces}
        if pointed.arm and pointed.force in names:
            return to_words(moment_figure(problem, pointed.force, about.at))[-1:]
    elif about.joint is not None:
        forces = [force.name for force in joint_body(problem, about.joint).forces]
        if pointed.force in forces:
            told = joint_lines(state, about.joint)[-len(forces) :]
            return (told[forces.index(pointed.force)],)
    return ()


def arrow_lines(state: State) -> Iterator[str]:
    """The free body of the whole truss, without what was told of its joints before."""
    yield "Free body of the whole truss, as you drew it:"
    yield from map(plain, _body_figure(state).drawn)


def as_drawn(state: State) -> dict[str, float]:
    """Values as figures take them: members tension positive, reactions along the student's arrow."""
    return {
        r.unknown: state.signed(r.unknown) if r.unknown in state.problem.member else r.value
        for r in state.results
    }


def line_lines(state: State) -> Iterator[str]:
    """The lines that stand."""
    if not state.lines:
        yield "No line stands yet."
    for line in state.lines:
        use = "" if line.adds else ", which adds nothing new"
        yield f"{in_words(line.about)}: {line.text}{use}"


def result_lines(state: State) -> Iterator[str]:
    """The values found, what is still unknown, and the caution."""
    for result in state.results:
        yield f"{result_in_words(state, result.unknown, spoken=True)}."
    missing = [name for name in state.problem.unknowns if name not in state.result]
    yield f"Still unknown: {', '.join(missing)}." if missing else "Nothing is unknown any more."
    if state.results:
        yield CAUTION


def where_lines(state: State) -> Iterator[str]:
    """Where the student is: problem, step, joint, equation, and how much is found."""
    yield f"You are at {state.step}, in {state.problem.title}."
    if state.step in ("reactions", "joints"):
        found = sum(name in state.result for name in state.problem.unknowns)
        yield f"{found} of {len(state.problem.unknowns)} forces are found."
    if state.joint is not None:
        yield f"You are at joint {state.joint}."
    if state.about is not None:
        yield f"You are writing {in_words(state.about)}."


def count_lines(state: State) -> Iterator[str]:
    """How many unknowns are left at each joint."""
    for joint in state.problem.joints:
        unknown = state.unknown_at(joint.name)
        left = f"{', '.join(unknown)} unknown" if unknown else "everything known"
        yield f"Joint {joint.name}: {left}."


def table_lines(lesson: Lesson, caution: bool = True) -> Iterator[str]:
    """Every reaction and member with its force, the extremes, how the walk went, and the caution."""
    table, state = lesson.table, lesson.state
    if not forces_follow(state.problem):
        yield what_it_is(state)
    for reaction in state.problem.reactions:
        if reaction.name in state.result:
            yield f"Reaction {result_in_words(state, reaction.name)}."
    for row in table.rows:
        yield f"Member {_row(row, table.unit)}."
    if table.tensions:
        yield f"Largest tension: {largest_in_words(table.tensions, table.unit)}."
    if table.compressions:
        yield f"Largest compression: {largest_in_words(table.compressions, table.unit)}."
    slips = "; ".join(counted(code, count) for code, count in table.mistakes)
    yield f"What went wrong on the way: {slips}." if slips else "Nothing went wrong on the way."
    yield f"Hints taken: {hints_in_words(table.hints)}."
    if table.shown:
        yield f"Shown at the board: {table.shown} of the steps."
    yield f"Time: {time_in_words(table.seconds)}."
    if caution:
        yield CAUTION


def _row(row: Row, unit: str) -> str:
    if row.letter == "0":
        return f"{row.member}: no force"
    kind = "tension" if row.letter == "T" else "compression"
    return f"{row.member}: {abs(row.force):.5g} {unit}, {kind}"
