"""Where did it go wrong, and what is the state of each wrong entry?"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, replace

from tutor.homework.account import Account
from tutor.homework.beliefs import Held
from tutor.homework.findings import Finding, Sure
from tutor.homework.sheet import WHOLE, Sheet
from tutor.homework.slips import mistake_of
from tutor.homework.uniform import Uniform
from tutor.judge import Mistake, Value
from tutor.model import Problem
from tutor.statics import joint_order

RIVAL = 0.9
"""Explanations that cost no more than this above the best one leave no certainty."""


@dataclass(frozen=True)
class Outcome:
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
    rival: float,
) -> Outcome:
    """The outcome of a page that beliefs explain, best first; `rival` is the cost of what else does."""
    best = found[0]
    places = _began(problem, handed_in, wrong, order, best)
    near = [each for each in found if each.cost <= best.cost + RIVAL]
    accounts = tuple(
        Account(places[0], said(problem, each), None, each.cost, throughout=not each.at_whole)
        for each in near
        if each.cost <= best.cost + RIVAL / 2
    )
    alone = len({each.code for each in near}) == 1 and rival > best.cost + RIVAL
    sure: Sure = "certain" if alone and len(places) == 1 else "likely"
    findings: dict[str, Finding] = {}
    for name in wrong:
        body = best.follows.get(name, (WHOLE, ()))[0]
        sheet = handed_in[body]
        sound = not sheet.missing and not sheet.fails and body not in places
        findings[name] = (
            Finding(name, "follows", None, sure)
            if sound
            else Finding(name, "wrong", accounts[0].mistake, sure)
        )
    return Outcome(places, accounts, findings)


def of_uniform(alike: Uniform, wrong: Collection[str], doubtful: bool) -> Outcome:
    """The outcome of a page that one factor or one turned sign runs through."""
    sure: Sure = "likely" if doubtful else "certain"
    findings = {name: Finding(name, "wrong", alike.cause(name), sure) for name in wrong}
    return Outcome(alike.places, alike.accounts, findings)


def said(problem: Problem, belief: Held) -> Mistake:
    """A belief as a mistake of the catalogue, in its own words."""
    look, reason, place = belief.words
    mistake = mistake_of(problem, Value("the forces"), belief.code, None)
    return replace(mistake, force=belief.force, text=look, reason=reason, place=place)


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
    return tuple(sorted(told, key=lambda place: place not in best.closing))[:3]


def _may_begin(sheet: Sheet, wrong: Collection[str]) -> bool:
    """Whether everything wrong at a joint may have been found there."""
    return 0 < sum(name in wrong for name in sheet.part) <= sheet.size


def _from_right(sheet: Sheet, wrong: Collection[str], best: Held, place: str) -> bool:
    """Whether everything wrong at a joint was found there."""
    here = [name for name in sheet.part if name in wrong]
    return bool(here) and all(best.follows.get(n, (place, ()))[0] == place for n in here)
