"""Which member is stated to carry no force, and does the rule named for it show that?"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from dataclasses import replace

from tutor.judge import Judge, Mistake
from tutor.judge.claims import CLAIMS
from tutor.judge.kind import force_in_words
from tutor.lesson.event import Event
from tutor.lesson.hints import Levels
from tutor.lesson.place import NoForce
from tutor.lesson.reply import Reply, Say
from tutor.lesson.state import HintsGiven, Result, State
from tutor.lesson.steps.hinting import wrong_place
from tutor.lesson.trying import LAST, right, wrong
from tutor.model.naming import member_meant
from tutor.statics import ZeroForce, joint_body, shown_zero, zero_force
from tutor.statics.body import Force

RULES = {
    "two": "two members that are not in one line, and nothing else, meet here: both are zero",
    "three": "two of three members are in one line, and nothing else acts here: the third is zero",
    "along": "all else that acts here lies in one line, and this member does not: it is zero",
}
"""The rules a student may name, by key."""

NEEDS = {
    "two": "two members meet that are not in one line, and nothing else acts",
    "three": "three members meet, two of them in one line, and nothing else acts",
}
"""What the special rules need at a joint; where one of them shows it, "along" shows it as well."""

NEARLY = 1e-9
CALLED = {"one": "along", "two-along": "along", "three-along": "along"}


def state_zero(state: State, event: Event, desk: Judge) -> tuple[State, Reply]:
    """The student states zero-force members: data `member` (one, or several with = between them), `rule`
    (a key of `RULES`). Several are judged in turn, up to the first that the rule does not show."""
    typed, rule = event.text("member").replace("=", " ").split(), event.text("rule")
    names = [member_meant(state.problem, each) for each in typed or [""]]
    if None in names:
        members = ", ".join(m.name for m in state.problem.members)
        return state, Reply((Say("note", f"Name one of the members: {members}."),))
    if rule not in RULES:
        return state, Reply((Say("note", f"Name the rule that shows it: {', '.join(RULES)}."),))
    said: tuple[Say, ...] = ()
    reply = Reply(())
    for name in filter(None, names):
        state, reply = _stated(state, event, name, rule)
        said += reply.said
        if not reply.accepted:
            break
    return state, replace(reply, said=said)


def _stated(state: State, event: Event, name: str, rule: str) -> tuple[State, Reply]:
    place = NoForce(name)
    seen = list(ways_to_see(state, name))
    fitting = [way for way in seen if rule in (CALLED.get(way.rule, way.rule), "along")]
    if fitting:
        state = _recorded(state, (name, *_other_of_both(state, fitting[0], rule)))
        state = right(state, event, place, RULES[rule])
        return state, Reply((Say.opened("right", "Yes. ", fitting[0].said),), True)
    mistake = _mistake(state, name, seen, rule)
    state = wrong(state, event, place, (mistake.code,), RULES[rule], (mistake,))
    return state, Reply((Say("wrong", mistake.text),))


def _other_of_both(state: State, seen: ZeroForce, rule: str) -> tuple[str, ...]:
    """The second of two members that the rule for both shows to be zero, where it has no value yet."""
    both = rule == "two" and seen.rule == "two"
    return tuple(name for name in seen.members if both and name not in state.result)


def _recorded(state: State, members: Sequence[str]) -> State:
    """The state with these members zero."""
    rest = tuple(r for r in state.results if r.unknown not in members)
    zeros = (Result(name, "0", 0.0, 0.0, "zero-force") for name in members)
    return replace(state, results=(*rest, *zeros))


def _mistake(state: State, name: str, seen: Sequence[ZeroForce], rule: str) -> Mistake:
    """What forbids that a member is seen to be zero so: another rule, a load, another member."""
    one, other = _ends(state, name)
    gaps = {"member": name, "ends": f"{one} or {other}"}
    if seen:
        return CLAIMS["zero-rule"].told(**gaps, joint=seen[0].joint, needs=NEEDS[rule])
    zero = {r.unknown for r in state.results if r.value == 0.0}
    bodies = {
        end: [f for f in joint_body(state.problem, end).forces if f.name not in zero]
        for end in (one, other)
    }
    forbidding = [
        (f.kind != "load", end, f.kind)
        for end, forces in bodies.items()
        if _is_alone(name, [f for f in forces if f.kind == "member"])
        for f in forces
        if f.kind != "member"
    ]
    if forbidding:
        _, end, kind = min(forbidding)
        loaded = {each for _, each, _ in forbidding}
        where = _where_more(loaded, one, other)
        return CLAIMS["zero-loaded"].told(**gaps, joint=end, other=f"a {kind}", where=where)
    end = min(bodies, key=lambda joint: len(bodies[joint]))
    beside = next(f for f in bodies[end] if f.name != name)
    balancing = force_in_words(state.problem, beside.name)
    return CLAIMS["zero-third-member"].told(**gaps, joint=end, other=balancing)


def _where_more(loaded: Collection[str], *ends: str) -> str:
    """At which ends of a member more acts than members, and what keeps the rules from the other."""
    beside = [end for end in ends if end not in loaded]
    if not beside:
        return "there than its members"
    here = next(end for end in ends if end in loaded)
    return f"at {here} than its members, and at {beside[0]} the others do not lie in one line across it"


def _is_alone(name: str, members: Sequence[Force]) -> bool:
    """Whether all the other members lie in one line, and this one does not."""
    here = next(f for f in members if f.name == name)
    others = [f for f in members if f is not here]
    across = [abs(f.x * here.y - f.y * here.x) > NEARLY for f in others]
    level = [abs(f.x * others[0].y - f.y * others[0].x) <= NEARLY for f in others]
    return all(across) and all(level)


def ways_to_see(state: State, name: str) -> Iterator[ZeroForce]:
    """Every way to see that a member is zero, with what is known or can be seen to be zero before.

    A member found zero counts as absent or as still there: both of two members at a bare corner are
    zero by the same rule, whichever is stated first.
    """
    problem = state.problem
    known = {r.unknown for r in state.results if r.value == 0.0} - {name}
    chain = [z.member for z in zero_force(problem, known)]
    known |= set(chain[: chain.index(name)]) if name in chain else set()
    beside = {m.name for end in _ends(state, name) for m in problem.meeting[end]}
    for absent in (known, *(known - {other} for other in sorted(known & beside))):
        yield from shown_zero(problem, name, absent)


def zero_hints(state: State) -> Levels | None:
    """The hints for a member just stated to be zero by a rule that does not show it, or None.

    Once the last of them is told, those for what is asked follow.
    """
    place = wrong_place(state)
    if not isinstance(place, NoForce) or place.member not in state.problem.member:
        return None
    name = place.member
    if state.hints.get(place, HintsGiven()).level >= LAST:
        return None
    one, other = _ends(state, name)
    seen = next(ways_to_see(state, name), None)
    line = seen.said if seen else f"No rule shows it: write the sums of joint {one} or {other}."
    return Levels(
        place,
        f"Only what acts at the two ends of {name} counts, at {one} and at {other}.",
        "A force is zero where nothing else at the joint has a component perpendicular to the line of "
        "all the rest: then nothing could balance it.",
        f"At {one} and at {other}, list every load, every reaction and every member that is not "
        "known to be zero. Do all but one lie in one line?",
        line,
    )


def _ends(state: State, name: str) -> tuple[str, str]:
    member = state.problem.member[name]
    return member.start, member.end
