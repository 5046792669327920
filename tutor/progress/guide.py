"""Where does a student stand among the problems on the list, and which of them is next?"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import lru_cache
from pathlib import Path

from tutor.judge.about import Same
from tutor.lesson.state import State
from tutor.lesson.steps import STEP
from tutor.model import Problem
from tutor.progress.account import LessonAccount, account_of
from tutor.progress.attained import MOST_TRACED, Attained, WorkedLesson, attained_by
from tutor.progress.choosing import Candidate, Next, next_one
from tutor.progress.kept import Summaries, Summary, account_in
from tutor.progress.kinds import kind_of_problem
from tutor.progress.needs import needs_of
from tutor.progress.stages import POORLY
from tutor.progress.where import BEGUN, CHANGED, DONE, FINISHED, WATCHED
from tutor.records.anew import can_be_anew
from tutor.records.belonging import Belonging, key_of
from tutor.records.lessons import Lessons


@dataclass(frozen=True)
class Listed:
    """A problem on the list: its set's title, and the keys of what comes before it."""

    problem: Problem
    set: str
    before: tuple[str, ...] = ()


@dataclass(frozen=True)
class Guide:
    """Where each problem stands by its key, the key of the one last worked on, and all that the kept
    lessons come to; `notices` tell of those that cannot be read, and `lessons` says by the name of each
    kept file of which problem it is."""

    listed: tuple[Listed, ...] = ()
    places: Mapping[str, str] = field(default_factory=dict)
    last: str = ""
    attained: Attained = field(default_factory=Attained)
    notices: tuple[str, ...] = ()
    lessons: Mapping[str, str] = field(default_factory=dict)

    def next(self, here: str = "") -> Next | None:
        """The problem to take after `here` (its key), by default after the one last worked on."""
        here = here or self.last
        done = [w for w in self.attained.worked if w.account.done]
        well = not done or done[-1].key != here or done[-1].account.share >= POORLY
        by_key = {key_of(each.problem): each.problem for each in self.listed}
        candidates = [self._candidate(each) for each in self.listed]
        return next_one(
            candidates, lambda key: _needs(Same(by_key[key])), self.attained.weak, here, well
        )

    def _candidate(self, each: Listed) -> Candidate:
        key = key_of(each.problem)
        return Candidate(
            key,
            each.problem.title,
            each.set,
            each.problem.level or 0,
            self.places.get(key) in FINISHED,
            any(self.places.get(before) not in FINISHED for before in each.before),
            self.places.get(key) == WATCHED,
            max((w.last for w in self.attained.worked if w.key == key), default=0.0),
            can_be_anew(each.problem),
        )

    def after(self, state: State, path: Path | None) -> Guide:
        """The same once a lesson, kept at `path`, stands at this state."""
        problem, account = state.problem, account_of(state)
        key, name = key_of(problem), "" if path is None else path.name
        worked = WorkedLesson(
            key, kind_of_problem(problem), problem.title, state.last_time, account, name
        )
        others = [w for w in self.attained.worked if not name or w.name != name]
        return replace(
            self,
            places={**self.places, key: where_in_words(account)},
            last=key,
            attained=Attained((*others, worked)),
        )

    def prepare(self) -> Guide:
        """Work out now, where nobody waits for it, what choosing a problem needs."""
        for each in self.listed:
            _needs(Same(each.problem))
        self.next()
        return self


@lru_cache(maxsize=2048)
def _needs(same: Same) -> Mapping[str, int]:
    return needs_of(same.problem)


def where_in_words(account: LessonAccount) -> str:
    """Where a lesson stands: "at the joints", "done", "watched"."""
    if not account.done:
        return STEP[account.step].where
    return WATCHED if account.stage == "watch" else DONE


def guide_for(
    listed: Iterable[Listed], summaries: Summaries, traced: int = MOST_TRACED, opened: bool = False
) -> Guide:
    """The guide by the lessons kept; `traced` is how many of the latest are gone through for skills,
    besides those that say where problems stand; with `opened`, a lesson counts as begun even if nothing
    was done in it."""
    rows, every = tuple(listed), summaries.look()
    notices = tuple(each.kept.notice for each in every if not each.kept.readable)
    found = [each for each in every if each.kept.readable and (opened or each.kept.events)]
    order = {each.kept.path: place for place, each in enumerate(found)}
    by_path = {each.kept.path: each for each in found}
    lessons = Lessons(each.kept for each in found)
    places: dict[str, str] = {}
    latest: tuple[int, str] = (len(found), "")
    names = {each.kept.path.name: each.kept.problem for each in every}
    for row in rows:
        key = key_of(row.problem)
        on_it = [(by_path[kept.path], how) for kept, how in lessons.of(row.problem)]
        if not on_it or key in places:
            continue
        names |= {each.kept.path.name: key for each, _ in on_it}
        places[key] = _place(on_it, summaries)
        latest = min(latest, (order[on_it[0][0].kept.path], key))
    of_these = summaries.go_through(found[:traced])
    summaries.put_down()
    return Guide(rows, places, latest[1], attained_by(reversed(of_these)), notices, names)


def _place(on_it: Sequence[tuple[Summary, Belonging]], summaries: Summaries) -> str:
    """Where the lesson last worked on stands; one on another truss counts where there is no other."""
    now = next((each for each in on_it if not each[1].changes), None)
    if now is None:
        return CHANGED
    return where_left(*now, summaries)


def where_left(summary: Summary, how: Belonging, summaries: Summaries) -> str:
    """Where a kept lesson stands in words; "begun" where that cannot be told."""
    account = summaries.accounted(summary).account or account_in(summary.kept, how.problem)
    return BEGUN if account is None else where_in_words(account)
