"""Where did it go wrong, and what is the state of each wrong entry?"""

from __future__ import annotations

import math
from collections.abc import Callable, Collection, Mapping, Sequence
from dataclasses import dataclass

from tutor.homework.account import RIVAL, Account
from tutor.homework.beliefs import Held
from tutor.homework.certainty import of_one_value
from tutor.homework.chain import Found
from tutor.homework.findings import Finding, Sure
from tutor.homework.half_mended import Was
from tutor.homework.places import EQUALLY, Story
from tutor.homework.sheet import WHOLE, Sheet, place_in_words
from tutor.homework.uniform import Uniform
from tutor.judge import Mistake
from tutor.model import Problem
from tutor.statics import joint_order
from tutor.text import listed

MOST_PLACES, MOST_TOLD = 2, 3
PAGE, REST = "All through the page", "In all that is not mended yet"
AS_BEFORE = "{left} {verb} still as before {mended} {was} put right: go on at {place}."
LOOKS_SO = "{left} {verb} as if worked out before {mended} {was} put right: go on at {place}."


@dataclass(frozen=True)
class ReviewOutcome:
    """Where it went wrong: places, what explains the first, and the state of each wrong value.

    `note` is a sentence of its own about the page, "" where there is none; `rests` are the entries
    that rest on values mended since the last check.
    """

    places: tuple[str, ...]
    accounts: tuple[Account, ...]
    findings: Mapping[str, Finding]
    clear: bool = True
    note: str = ""
    rests: tuple[str, ...] = ()


def of_beliefs(
    problem: Problem,
    handed_in: Mapping[str, Sheet],
    wrong: Collection[str],
    order: Sequence[str],
    found: Sequence[Held],
    stories: Sequence[Story],
) -> ReviewOutcome:
    """The outcome of a page that beliefs explain, best first; `stories` are what else does.

    On a page with blanks, too little shows to put a belief before a slip that costs about as little:
    the place of the slip then stands behind that of the belief.
    """
    best = found[0]
    rival = min((story.cost for story in stories), default=math.inf)
    near_by = [story.first for story in stories if story.cost <= best.cost + EQUALLY]
    beside = near_by if any(sheet.missing for sheet in handed_in.values()) else ()
    began = _began(problem, handed_in, wrong, order, best)
    places = tuple(dict.fromkeys((*began, *beside)))[:MOST_TOLD]
    near = [each for each in found if each.cost <= best.cost + RIVAL]
    accounts = tuple(
        Account(places[0], said(each), None, each.cost, throughout=not each.at_whole)
        for each in near
        if each.cost <= best.cost + RIVAL / 2
    )
    alone = best.sole and len({each.code for each in near}) == 1 and rival > best.cost + RIVAL
    doubtful = best.at_whole and of_one_value(handed_in[WHOLE], wrong)
    sure: Sure = "certain" if alone and not doubtful and len(places) == 1 else "likely"
    findings: dict[str, Finding] = {}
    for name in wrong:
        findings[name] = (
            Finding(name, "follows", None, sure)
            if _sound(handed_in, name, best, places)
            else Finding(name, "wrong", accounts[0].mistake, sure)
        )
    return ReviewOutcome(places, accounts, findings)


def _sound(bodies: Mapping[str, Sheet], name: str, best: Held, places: Collection[str]) -> bool:
    """Whether a wrong entry was found from others as it should be.

    A belief about the reactions alone leaves joints as they are: each that closes may have given it, or
    the equation by which it was found.
    """
    found, equation = best.follows.get(name, (WHOLE, ()))
    may_give = [found]
    if best.at_whole and found != WHOLE:
        if not bodies[found].missing and bodies[found].holds(equation) and found not in places:
            return True
        may_give += [body for body, sheet in bodies.items() if body != WHOLE and name in sheet.part]
    return any(
        not bodies[body].missing and not bodies[body].fails and body not in places
        for body in may_give
    )


def of_half_mended(problem: Problem, belief: Held, was: Was, order: Sequence[str]) -> ReviewOutcome:
    """The outcome of a page through whose rest a belief still runs."""
    left = tuple(name for name in was.wrong if name not in was.mended)
    places = _next(was, belief.follows, left, order)
    mistake = said(belief, REST)
    findings = {name: Finding(name, "wrong", mistake, "likely") for name in left}
    account = Account(places[0], mistake, None, belief.cost, throughout=True)
    return ReviewOutcome(
        places, (account,), findings, note=_as_before(was, left, places[0]), rests=left
    )


def _as_before(was: Was, left: Sequence[str], place: str) -> str:
    one = len(left) == 1
    verb = ("is" if one else "are") if was.remembered else ("looks" if one else "look")
    return (AS_BEFORE if was.remembered else LOOKS_SO).format(
        left=listed(left),
        verb=verb,
        mended=listed(was.mended),
        was="was" if len(was.mended) == 1 else "were",
        place=place_in_words(place),
    )


def _next(was: Was, walk: Found, left: Sequence[str], order: Sequence[str]) -> tuple[str, ...]:
    """Where to go on: where nothing that is still wrong was put in, if there is such a place."""
    at = {
        body: {name for name in left if name in walk and walk[name][0] == body}
        for body in was.bodies
    }
    begun = [body for body, here in at.items() if here]
    first = [
        body for body in begun if not set(left) & (set(was.bodies[body].part) - at[body])
    ] or begun
    return tuple(([place for place in order if place in first] or first)[:MOST_PLACES])


def of_uniform(
    alike: Uniform, wrong: Collection[str], doubtful: bool, single: Sequence[str]
) -> ReviewOutcome:
    """The outcome of a page that one factor or one turned sign runs through.

    `single` are places where a single slip would have left the same numbers.
    """
    sure: Sure = "likely" if doubtful else "certain"
    findings = {name: Finding(name, "wrong", alike.cause(name), sure) for name in wrong}
    places = tuple(dict.fromkeys((alike.places[0], *single, *alike.places)))
    return ReviewOutcome(places[:MOST_PLACES], alike.accounts, findings)


def of_half_uniform(alike: Uniform, was: Was, left: Sequence[str]) -> ReviewOutcome:
    """The outcome of a page of which what is `left` is still wrong in one and the same way."""
    findings = {name: Finding(name, "wrong", alike.cause(name), "likely") for name in left}
    note = _as_before(was, left, alike.places[0])
    return ReviewOutcome(alike.places, alike.accounts, findings, note=note, rests=tuple(left))


def lost(
    problem: Problem, wrong: Sequence[str], figures: Callable[[str], Mistake | None]
) -> ReviewOutcome:
    """Too little is there to tell where: each wrong value names the bodies it may be from."""
    findings = {name: Finding(name, "wrong", figures(name), "unclear") for name in wrong}
    places: list[str] = []
    for name in wrong:
        member = problem.member.get(name)
        places += [member.start, member.end] if member is not None else [WHOLE]
    return ReviewOutcome(tuple(dict.fromkeys(places))[:MOST_PLACES], (), findings, clear=False)


def said(belief: Held, through: str = PAGE) -> Mistake:
    """A belief as a mistake, in its own words."""
    look, reason, place = belief.words(through)
    return Mistake(belief.code, belief.force, look, reason, place)


def _began(
    problem: Problem,
    handed_in: Mapping[str, Sheet],
    wrong: Collection[str],
    order: Sequence[str],
    best: Held,
) -> tuple[str, ...]:
    """The places where a belief can first have shown: by the student's order, else any of them."""
    if best.at_whole and any(name in problem.reaction for name in wrong):
        return (WHOLE,)
    places = list(dict.fromkeys(body for n, (body, _) in best.follows.items() if n in wrong))
    first = [place for place in order if place in places]
    if first:
        return (first[0],)
    began = [place for place in places if _from_right(handed_in[place], wrong, best, place)]
    if best.closing and not best.closing & set(began):
        began += [n for n, s in handed_in.items() if n in best.closing and _may_begin(s, wrong)]
    usual = [place for place in joint_order(problem).joints if place in began]
    told = dict.fromkeys((*usual, *began, *places[:1]))
    return tuple(sorted(told, key=lambda place: place not in best.closing))[:MOST_TOLD]


def _may_begin(sheet: Sheet, wrong: Collection[str]) -> bool:
    """Whether everything wrong at a joint may have been found there."""
    return 0 < sum(name in wrong for name in sheet.part) <= sheet.size


def _from_right(sheet: Sheet, wrong: Collection[str], best: Held, place: str) -> bool:
    """Whether everything wrong at a joint was found there."""
    here = [name for name in sheet.part if name in wrong]
    return bool(here) and all(best.follows.get(n, (place, ()))[0] == place for n in here)
