"""Which explanations of a place are told, and which of the values found there do they call wrong?"""

from __future__ import annotations

from collections.abc import Collection, Sequence

from tutor.homework.account import Account
from tutor.homework.findings import Finding, Sure
from tutor.homework.lines import LineVerdict
from tutor.homework.slips import stands_in
from tutor.judge import M, Value
from tutor.model import Problem


def far_fetched(problem: Problem, account: Account) -> bool:
    """Whether it speaks of moments about a joint that has neither a support nor a load.

    Hardly anybody takes moments there; common practice, no source.
    """
    about = account.about
    if not isinstance(about, M):
        return False
    usual = {support.joint for support in problem.supports}
    return about.at not in usual | {load.joint for load in problem.loads}


def at_its_place(
    problem: Problem, wrong: Collection[str], name: str, named: Sequence[Account], sure: Sure
) -> Finding:
    """A wrong value found at a place that these accounts explain, the first being the best.

    Where they do not agree on whether it is wrong there or follows, neither is certain.
    """
    if not named:
        return Finding(name, "wrong", None, "unclear")
    touched = [_touches(problem, wrong, account, name) for account in named]
    if sure == "certain" and len(set(touched)) > 1:
        sure = "likely"
    if touched[0]:
        return Finding(name, "wrong", named[0].mistake, sure)
    return Finding(name, "follows", None, sure)


def _touches(problem: Problem, wrong: Collection[str], account: Account, name: str) -> bool:
    """Whether the line with the slip has a part of this value, or the slip is of the value."""
    about = account.about
    if about is None or name == account.mistake.force:
        return True
    if isinstance(about, Value):
        return about.unknown == name or about.unknown not in wrong
    return stands_in(problem, about, name)


def line_account(judged: LineVerdict) -> Account:
    """What a wrong line shows, as an account of its place."""
    about, mistake = judged.line.about, judged.verdict.mistakes[0]
    if judged.verdict.stands and mistake.force is not None:
        about = Value(mistake.force)
    return Account(str(judged.place), mistake, about, 0.0)


def finding_of(judged: LineVerdict) -> Finding:
    """What is said of a line."""
    verdict, name = judged.verdict, judged.line.index
    if verdict.kind == "right":
        return Finding(name, "right")
    if verdict.kind == "wrong":
        return Finding(name, "wrong", verdict.mistakes[0], stands=bool(verdict.stands))
    return Finding(name, "unchecked", None, "unclear", undecided=verdict.kind == "undecided")
