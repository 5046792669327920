"""What do the joints take of a load that lies on members, and why may it be brought to them?

Asked only where a problem has such a load, before anything else: with it, members would bend, and only
forces at joints make them two-force members.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

from tutor.judge import Judge, Mistake
from tutor.judge.shares import JointShare, is_right, loaded, mistake_in, ways_at, with_own_load
from tutor.lesson.event import Event
from tutor.lesson.hints import Levels
from tutor.lesson.place import Question
from tutor.lesson.reply import YES, Ask, Option, Reply, Say
from tutor.lesson.state import State
from tutor.lesson.steps.shares_typed import Amount, amounts_in, read_amount, sizes_like
from tutor.lesson.trying import right, wrong
from tutor.model import Load, Problem
from tutor.model.parts import AXES
from tutor.statics.along import push_words, spread_words
from tutor.text import listed, lowered

HALVES: Mapping[str, Sequence[str]] = {
    "halves": (
        "what lies on a member is even, so each of its joints takes half of it",
        "the resultant of an even load acts mid-member: half goes to each end",
    ),
    "two-force": (
        "with forces at its ends only, each member is a two-force member again",
        "with the load at the joints, every member force lies along its member",
    ),
    "bending": (
        "how the load bends the member between its joints is left out",
        "that a member under the load is bent as well is not looked at",
    ),
}
"""What is so when a load is brought to the joints, each in several wordings."""
NOT_SO: Mapping[str, Sequence[str]] = {
    "nothing": (
        "a member has axial force only, wherever on it the load lies",
        "a load between its ends does not bend a member, since they are pins",
    ),
    "nearest": ("each joint takes the whole of what lies on the members that end there",),
    "supports": ("the load goes straight to the supports, and the members do not feel it",),
    "stiff": ("the members are stiff, so that it does not matter where the load lies",),
    "small": ("the load is small beside those at the joints",),
}
WORDS: Mapping[str, Sequence[str]] = {**HALVES, **NOT_SO}
MOST_NOT_SO = 2
BECAUSE_HALVES = (
    "Half of what lies on a member at each of its ends has the same force and the same moment about "
    "any point. Only the bending of that member is left out: whoever designs it adds that again."
)
FIRST = "First bring what lies on the members to the joints: the forces of a truss act there."
NOTHING_LEFT = "Nothing lies on a member here that is not at the joints yet."
SIZE_AND_WAY = "A joint takes a size, and it acts in a direction: write {like}, without a minus."
WHICH_WAY = "Which way does {joint} take it? Write the direction behind each number, like {like}."
HOW_MANY = "These are {count} numbers for {of}, {joints}: write one for each, in this order."
WITH_OWN = (
    "At {joint} this is what it takes together with its own load. That one stays as it is: give what comes "
    "from the members alone."
)


def asked_for(state: State) -> bool:
    """Whether something of it is still to be answered."""
    return bool(state.problem.spreads) and not (state.halves_done and not open_joints(state))


def open_joints(state: State) -> tuple[str, ...]:
    """The joints whose share is still to be given."""
    return tuple(name for name in loaded(state.problem) if name not in state.brought)


def pictured(state: State) -> Problem:
    """The problem as it is drawn: with what lies on members, or once that is done with what follows."""
    return state.problem if asked_for(state) else state.problem.brought


def all_brought(state: State) -> State:
    """The state with everything of it done."""
    return replace(state, halves_done=True, brought=loaded(state.problem))


def true_statements(problem: Problem) -> tuple[Option, ...]:
    """Those of the statements that are so, as this problem words them."""
    return tuple(option for option in statements(problem) if option.key in HALVES)


def statements(problem: Problem) -> tuple[Option, ...]:
    """What is so and two that are not, in an order and wording that is the problem's own."""
    seed = "|".join((problem.title, *problem.member))
    keys = _mixed(seed, [*HALVES, *_mixed(seed, NOT_SO)[:MOST_NOT_SO]])
    return tuple(Option(key, _mixed(seed, WORDS[key])[0]) for key in keys)


def _mixed(seed: str, things: Iterable[str]) -> list[str]:
    def lot(thing: str) -> bytes:
        return hashlib.sha256(f"{seed}|{thing}".encode()).digest()

    return sorted(things, key=lot)


def ask(state: State) -> Ask:
    """What is so when it is brought to the joints; then what each joint takes."""
    lies = "; ".join(spread_words(state.problem, spread) for spread in state.problem.spreads)
    if not state.halves_done:
        return Ask(
            "idealise",
            "halves",
            "Why may we?",
            f"To be brought to the joints: {lies}. Which of these are so then? Choose all.",
            statements(state.problem),
        )
    left = open_joints(state)
    return Ask(
        "idealise",
        "shares",
        "To the joints",
        f"{lies}. What {'does' if len(left) == 1 else 'do'} {listed(left, len(left))} take of it? Type "
        f"each joint with its force, like {_like(state)}; or only the numbers, in this order.",
    )


def _like(state: State) -> str:
    sizes = [size.value for load in following(state.problem) for _, size in load.pushes]
    return sizes_like(state.problem, open_joints(state) or loaded(state.problem), sizes)


def following(problem: Problem) -> tuple[Load, ...]:
    """The loads at the joints that follow from what lies on the members."""
    return tuple(load for load in problem.loads if load.spread)


def say_halves(state: State, event: Event, desk: Judge) -> tuple[State, Reply]:
    """The student says what is so when a load is brought to the joints: data `chosen`, keys."""
    chosen = event.strings("chosen") & WORDS.keys()
    if not asked_for(state) or state.halves_done:
        return state, Reply((Say("note", NOTHING_LEFT),))
    if not chosen:
        return state, Reply((Say("note", "Choose those that are so; there is more than one."),))
    if chosen == HALVES.keys():
        state = right(replace(state, halves_done=True), event, Question("halves"))
        return state, Reply((Say.opened("right", YES, lowered(BECAUSE_HALVES)),), True)
    look = "Those are so, but one more thing is."
    if chosen - HALVES.keys():
        look = "One of these is not so: ask what the load does to the member that it lies on."
    elif len(chosen) == 1:
        look = "That is so, but it is not all."
    state = wrong(
        state, event, Question("halves"), ("extra" if chosen - HALVES.keys() else "missing",)
    )
    return state, Reply((Say("wrong", look),))


def take_shares(state: State, event: Event, desk: Judge) -> tuple[State, Reply]:
    """The student types what joints take: data `text`. Right ones stand, whatever is wrong of others."""
    if not asked_for(state) or not state.halves_done:
        note = "Choose first what is so." if asked_for(state) else NOTHING_LEFT
        return state, Reply((Say("note", note),))
    text = event.text("text")
    shares = _shares(state, text)
    if isinstance(shares, Say):
        return state, Reply((shares,))
    problem = state.problem
    good = [share.joint for share in shares if is_right(problem, share)]
    bad = [share for share in shares if share.joint not in good]
    own = [share for share in bad if with_own_load(problem, share)]
    bad = [share for share in bad if share not in own]
    fresh = [joint for joint in loaded(problem) if joint in good and joint not in state.brought]
    said = [Say("note", WITH_OWN.format(joint=share.joint)) for share in own]
    known = (*state.brought, *fresh)
    state = replace(state, brought=tuple(n for n in loaded(problem) if n in known))
    if bad:
        mistakes = _mistakes(problem, bad, known)
        codes = tuple(dict.fromkeys(mistake.code for mistake in mistakes))
        state = wrong(state, event, Question("shares"), codes, text, mistakes[:1])
        stands = f"{listed(fresh)} {'stands' if len(fresh) == 1 else 'stand'}. " if fresh else ""
        said.append(Say("wrong", f"{stands}{listed([s.joint for s in bad])}: {mistakes[0].text}"))
        return state, Reply(tuple(said), bool(fresh))
    if not fresh:
        said = said or [Say("note", _still(state))]
        return state, Reply(tuple(said))
    state = right(state, event, Question("shares"), text)
    return state, Reply((_done_so_far(state, fresh), *said), True)


def _mistakes(
    problem: Problem, bad: Sequence[JointShare], right: Sequence[str]
) -> tuple[Mistake, ...]:
    return tuple(mistake_in(problem, share, right) for share in bad)


def _done_so_far(state: State, fresh: Sequence[str]) -> Say:
    if open_joints(state):
        return Say.opened("right", YES, f"{listed(fresh)}. {_still(state)}")
    now = f"What lay on the members now acts at the joints: {loads_in_words(state.problem)}."
    return Say.opened("right", "Yes. ", now)


def _still(state: State) -> str:
    return f"Still to be given: {listed(open_joints(state), 20)}."


def loads_in_words(problem: Problem) -> str:
    """The loads that follow, as one types them: "A 6 down, B 12 down"."""
    return ", ".join(f"{load.joint} {push_words(load)}" for load in following(problem))


def _shares(state: State, text: str) -> list[JointShare] | Say:
    """What each joint was given, or what is said where that is not clear."""
    typed = amounts_in(state.problem, text, _like(state))
    if typed.complaint:
        return Say.opened("unreadable", "Cannot read: ", typed.complaint)
    joints = typed.joints
    if typed.bare:
        left = open_joints(state)
        if len(typed.bare) != len(left):
            of = "one joint" if len(left) == 1 else f"{len(left)} joints"
            count = len(typed.bare)
            return Say("note", HOW_MANY.format(count=count, of=of, joints=listed(left, 20)))
        joints = {joint: [amount] for joint, amount in zip(left, typed.bare, strict=True)}
    shares = []
    for joint, amounts in joints.items():
        share = _share(state, joint, amounts)
        if isinstance(share, Say):
            return share
        shares.append(share)
    return shares


def _share(state: State, joint: str, amounts: Sequence[Amount]) -> JointShare | Say:
    ways, like = ways_at(state.problem, joint), _like(state)
    right = up = radius = 0.0
    for amount in amounts:
        given = read_amount(state.problem, amount)
        if isinstance(given, str):
            return Say.opened("unreadable", "Cannot read ", given)
        if given.size < 0:
            return Say("note", SIZE_AND_WAY.format(like=like))
        way = given.way or (next(iter(ways)) if len(ways) == 1 else None)
        if way is None:
            if given.size == 0:
                continue
            return Say("note", WHICH_WAY.format(joint=joint, like=like))
        x, y = AXES[way]
        right, up, radius = right + x * given.size, up + y * given.size, radius + given.radius
    return JointShare(joint, right, up, radius)


def hints(state: State, desk: Judge) -> Levels:
    """The hints of whichever part is open."""
    problem = state.problem
    if not state.halves_done:
        return Levels(
            Question("halves"),
            "Ask of each statement: is it so of one member alone, with the load lying on it?",
            "Two forces, half at each end, do to the truss as a whole what the even load does. Between its "
            "ends the member itself feels a difference.",
            "Three are so: one says how much each end takes, one what becomes of the members, one what is "
            "left out.",
            "Choose: " + "; ".join(option.words for option in true_statements(problem)) + ".",
        )
    left = open_joints(state)
    spreads = [s for s in problem.spreads if any(_ends(problem, name, left) for name in s.on)]
    measure = "the length of the member"
    if any(spread.per == "span" for spread in spreads):
        measure = "the length seen across the load"
    if any(spread.total for spread in spreads):
        measure += ", or its share of the whole"
    joint = left[0]
    here = [n for s in problem.spreads for n in s.on if _ends(problem, n, (joint,))]
    return Levels(
        Question("shares"),
        "Take the members under the load one by one: what lies on each, and where does half of it go?",
        f"What lies on a member is the load for each unit of length times {measure}; its two joints "
        "take half each.",
        f"At {joint} the load comes from {listed(dict.fromkeys(here))}: half of what lies on each of these.",
        f"{', '.join(f'{load.joint} {push_words(load)}' for load in following(problem) if load.joint in left)}.",
        typed=True,
    )


def _ends(problem: Problem, member: str, joints: Sequence[str]) -> bool:
    found = problem.member.get(member)
    return found is not None and bool({found.start, found.end} & set(joints))


HANDLES = {"halves": say_halves, "shares": take_shares}
