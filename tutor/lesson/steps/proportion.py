"""How is a proportion of the forces at a joint taken, DE/17 = CE/15 = 10/8, and what is behind it?"""

from __future__ import annotations

from dataclasses import replace

from tutor.judge import Judge
from tutor.judge.headings import equation_in_words
from tutor.judge.independent import adds_something
from tutor.judge.proportion import proportion_in, sums_shown
from tutor.lesson.event import Event
from tutor.lesson.reply import Reply, Say
from tutor.lesson.state import State
from tutor.lesson.step import Handler
from tutor.lesson.steps.apart import answer_each, statements_behind
from tutor.lesson.steps.line_kept import keep_line, refuse
from tutor.notation import Unreadable
from tutor.text import listed

KEPT = "It stands as {sums}."
AGAIN = "Both sums of joint {joint} stand already."


def take_proportion(
    typed: Handler, state: State, event: Event, desk: Judge
) -> tuple[State, Reply] | None:
    """A proportion kept as the sums at its joint that it shows, and the values behind it typed in turn.

    None for any other line.
    """
    text = event.text("text")
    line = desk.read(text)
    step = proportion_in(line)
    if step is None or isinstance(line, Unreadable):
        return None
    sums = sums_shown(state.problem, step, desk.values())
    if not sums:
        return None
    alone = line.text[: step.span.end]
    verdict = desk.judge(sums[0], alone, state.own)
    state = replace(state, joint=sums[0].joint, about=sums[0], proposed=True, part=())
    if not verdict.right:
        return refuse(state, event, sums[0], alone, verdict)
    added = [about for about in sums if adds_something(state.problem, about, state.standing)]
    for about in added:
        state, _ = keep_line(state, event, about, alone, verdict)
    words = listed([equation_in_words(state.problem, about) for about in added])
    kept = KEPT.format(sums=words) if added else AGAIN.format(joint=sums[0].joint)
    said = (Say("right", verdict.text, opening=verdict.opening), Say("note", kept))
    behind = statements_behind(line, step)
    if not behind:
        return state, Reply(said, True, verdict)
    state, reply = answer_each(typed, behind, state, event, desk)
    return state, replace(reply, said=(*said, *reply.said), accepted=True)
