"""How is a homework reviewed? Read it, follow the chain of work, and judge each entry."""

from __future__ import annotations

from dataclasses import dataclass, replace

from tutor.homework.account import Account
from tutor.homework.accounts import UNEXPLAINED
from tutor.homework.closing import closures
from tutor.homework.findings import Finding, Review, Sure
from tutor.homework.lines import Judged, judged_lines, order_of
from tutor.homework.one_line import Usual
from tutor.homework.places import Search, Story, first_in_order, first_places
from tutor.homework.reading import (
    Reading,
    blank_members,
    plain_reading,
    readings_by_supports,
    readings_of_blank_joint,
)
from tutor.homework.sheet import PARALLEL, WHOLE, Vector, sheets
from tutor.homework.slips import cost_of
from tutor.homework.telling import at_its_place, far_fetched
from tutor.homework.uniform import uniform
from tutor.homework.words import summary
from tutor.homework.work import Work, read_work
from tutor.judge import Judge, Mistake, Value, judge_of
from tutor.model import Problem
from tutor.statics import Unsolvable

EQUALLY_NAMED = 0.25
BY_ITSELF = 0.05
WORKED_WRONG, HIDDEN = 0.2, 0.3
WELL_EXPLAINED, NOT_NEEDED = 1.15, 1.2
LEAST_WRITTEN = 2
MUCH_BLANK, FARFETCHED = 2, 1.5
VALUE_SLIPS = frozenset({"tension-compression", "sign", "sense", "unit", "rounding"})


def review(problem: Problem, work: object) -> Review:
    """What `work` shows, as the contract describes it; it never raises on a student's work.

    `work` is a mapping whose parts may all be absent: "reactions" and "forces" (unknown to value),
    "lines" (pairs of an equation and its text), "senses", "order" (joint names, perhaps "whole").
    """
    desk = judge_of(problem)
    handed_in = read_work(desk, work)
    try:
        true = desk.values()
    except Unsolvable:
        return _unsolvable(handed_in)
    return _Check(desk, handed_in, true).review()


def _unsolvable(work: Work) -> Review:
    names: list[str | int] = [*work.entries, *(line.index for line in work.lines)]
    findings = tuple(Finding(name, "unchecked", None, "unclear") for name in names)
    said = "Statics alone cannot give the forces of this truss, so nothing could be checked."
    return Review(findings, None, refused=work.refused, clear=False, said=said)


@dataclass(frozen=True)
class Outcome:
    """Where it went wrong: places, what explains the first, and the state of each wrong value."""

    places: tuple[str, ...]
    accounts: tuple[Account, ...]
    findings: dict[str, Finding]
    clear: bool = True


class _Check:
    """The review of one homework in the making."""

    def __init__(self, desk: Judge, work: Work, true: dict[str, float]) -> None:
        self.desk = desk
        self.problem = desk.problem
        self.work = work
        self.true = true
        self.handed_in = sheets(self.problem, work.entries)
        self.reading = plain_reading(self.problem, self.handed_in, work.entries, true)
        self._usual: dict[str, list[Usual]] = {}
        self.lines = judged_lines(desk, work, self.handed_in)

    @property
    def wrong(self) -> tuple[str, ...]:
        return self.reading.wrong

    def _stories(self) -> list[tuple[Story, Reading]]:
        """The stories of every reading, cheapest first."""
        plain = self.reading
        right = set(self.work.entries) - set(plain.wrong)
        given = (self.problem, self.handed_in, self.work.entries, self.true, right)
        dark = [n for n, s in self.handed_in.items() if blank_members(self.problem, s)]
        told = [(s, plain) for s in self._search(plain).stories() if s.first not in dark]
        if any(name not in self.work.entries for name in self.problem.reaction):
            doubt = NOT_NEEDED if right and any(map(self._alone, told)) else WORKED_WRONG
            for read in readings_by_supports(*given):
                told += self._doubted(read, WHOLE, doubt)
        for joint in filter(self._tells, dark):
            for read in readings_of_blank_joint(*given, joint):
                told += self._doubted(read, joint, HIDDEN)
        return sorted(told, key=lambda pair: pair[0].cost)

    def _alone(self, pair: tuple[Story, Reading]) -> bool:
        """Whether one slip at a joint without support explains all that is wrong."""
        story = pair[0]
        held = {support.joint for support in self.problem.supports}
        return (
            len(story.turns) == 1
            and story.first not in held | {WHOLE}
            and not story.open
            and story.cost <= WELL_EXPLAINED
        )

    def _tells(self, joint: str) -> bool:
        """Whether enough is written at a joint with a blank to look for a mistake at it."""
        members = [name for name in self.handed_in[joint].part if name in self.problem.member]
        written = sum(1 for name in self.work.entries if name in self.problem.member)
        if 2 * written >= len(self.problem.members):
            return True
        at_it = sum(1 for name in members if name in self.work.entries)
        several = sum(1 for name in self.wrong if name in self.work.entries) > 1
        return at_it + several >= LEAST_WRITTEN

    def _doubted(self, read: Reading, first: str, doubt: float) -> list[tuple[Story, Reading]]:
        """The stories of a reading that begin at a place, with a doubt of how it was read."""
        return [
            (replace(story, doubt=story.doubt + (0.0 if self._shows(story) else doubt)), read)
            for story in self._search(read).stories(first)
        ]

    def _shows(self, story: Story) -> bool:
        """Whether a wrong value that was found at the first place is written, not only blanks."""
        return any(name in self.work.entries for name in story.turns[0].values)

    def _search(self, reading: Reading) -> Search:
        return Search(self.problem, reading.bodies, reading.entries, reading.wrong, self._usual)

    def review(self) -> Review:
        outcome = self._outcome()
        findings = [
            outcome.findings.get(name, Finding(name, "right")) for name in self.work.entries
        ]
        unread = [r.name for r in self.work.refused if r.name in self.problem.unknowns]
        findings += [
            Finding(name, "unchecked", None, "unclear")
            for name in dict.fromkeys(unread)
            if name not in self.work.entries
        ]
        findings += [_of_line(judged) for judged in self.lines]
        result = Review(
            tuple(findings),
            outcome.places[0] if outcome.places else None,
            outcome.places,
            outcome.accounts,
            closures(self.handed_in),
            self.work.refused,
            outcome.clear,
        )
        return replace(result, said=summary(result))

    def _outcome(self) -> Outcome:
        misleading = [j for j in self.lines if j.misleads and j.place is not None]
        if not any(name in self.work.entries for name in self.wrong):
            return self._from_lines(misleading) if misleading else Outcome((), (), {})
        alike = uniform(self.problem, self.work.entries, self.true, self.wrong)
        if alike is not None:
            findings = {n: Finding(n, "wrong", alike.cause(n)) for n in self.wrong}
            return Outcome((alike.place,), alike.accounts, findings)
        told = self._told_place(misleading)
        pairs = self._stories()
        if told is not None:
            by_lines = any(judged.place == told for judged in misleading)
            pairs = self._from_told(pairs, told, by_lines)
        if not pairs:
            return self._lost()
        self.reading = pairs[0][1]
        return self._of_story([story for story, _ in pairs], told is not None, misleading)

    def _from_told(
        self, pairs: list[tuple[Story, Reading]], told: str, by_lines: bool
    ) -> list[tuple[Story, Reading]]:
        """The stories that begin where the order tells, or also with reactions left blank.

        An order shows nothing of reactions that are blank and were worked with wrongly; lines do.
        """
        plain = self.reading
        here = [pair for pair in pairs if pair[0].first == told]
        here = here or [(self._forced(self._search(plain), told), plain)]
        if by_lines or told == WHOLE:
            return here
        blank = [pair for pair in pairs if pair[1] is not plain and pair[0].first == WHOLE]
        return sorted((*here, *blank), key=lambda pair: pair[0].cost)

    def _told_place(self, misleading: list[Judged]) -> str | None:
        """The first wrong place by the student's own order or lines, None where there are neither."""
        order = self.work.order or order_of(self.lines)
        if not order:
            return None
        by_values = first_in_order(self.reading.bodies, order, self.wrong)
        found = [j.place for j in misleading if j.place is not None]
        if by_values is not None:
            found.append(by_values)
        steps = [WHOLE, *order] if WHOLE not in order else list(order)
        found = [place for place in found if place in steps]
        return min(found, key=steps.index) if found else None

    def _forced(self, search: Search, place: str) -> Story:
        """The story that begins at a place which the order tells, whatever is left open."""
        turn, follows, left = search.from_place(place)
        return Story((turn,), follows, left)

    def _of_story(self, stories: list[Story], told: bool, misleading: list[Judged]) -> Outcome:
        best = stories[0]
        places = first_places(stories)
        sure: Sure = "certain" if len(places) == 1 else "likely"
        accounts = [a for a in best.turns[0].accounts if not far_fetched(self.problem, a)]
        near = tuple(a for a in accounts if a.cost <= accounts[0].cost + EQUALLY_NAMED)
        near = self._from_value(best, near)
        lines = [j for j in misleading if j.place == best.first]
        if lines:
            near = tuple(_line_account(j) for j in lines)
        findings: dict[str, Finding] = {}
        clear = told or best.turns[0].cost < self._plain_enough(best.first)
        for k, turn in enumerate(best.turns):
            named = near if k == 0 else turn.accounts[:1]
            for name in turn.values:
                findings[name] = at_its_place(self.problem, self.wrong, name, named, sure)
        for name, (place, equation) in best.follows.items():
            if clear or self._all_written(place, equation):
                findings[name] = Finding(name, "follows", None, sure)
            else:
                findings[name] = Finding(name, "wrong", None, "unclear")
        for name in best.open:
            findings[name] = Finding(name, "wrong", None, "unclear")
        return Outcome(places, near, findings, clear)

    def _all_written(self, place: str, equation: Vector) -> bool:
        """Whether the equation that a value follows by holds with written numbers alone."""
        parts = self.handed_in[place].part.values()
        return all(
            part.name in self.work.entries or abs(part.share(equation)) <= PARALLEL
            for part in parts
        )

    def _plain_enough(self, place: str) -> float:
        """What the account of a place may cost to make it clear: less where much is blank there."""
        blank = blank_members(self.problem, self.handed_in[place])
        return UNEXPLAINED if len(blank) < MUCH_BLANK else FARFETCHED

    def _from_value(self, story: Story, near: tuple[Account, ...]) -> tuple[Account, ...]:
        """For a lone wrong value: what its own figures say as well, the sign or the rounding."""
        mistake = self._figures(self.wrong[0]) if len(self.wrong) == 1 else None
        if mistake is None:
            return near
        cost = cost_of(mistake.code) + BY_ITSELF
        own = Account(story.first, mistake, Value(self.wrong[0]), cost)
        return tuple(sorted((*near, own), key=lambda account: account.cost))

    def _from_lines(self, misleading: list[Judged]) -> Outcome:
        """Wrong lines beside values that are right all the same."""
        first = misleading[0]
        assert first.place is not None
        order = self.work.order
        if order:
            steps = [WHOLE, *order] if WHOLE not in order else list(order)
            known = [j for j in misleading if j.place in steps]
            first = min(known, key=lambda j: steps.index(str(j.place)), default=first)
        accounts = tuple(_line_account(j) for j in misleading if j.place == first.place)
        return Outcome((str(first.place),), accounts, {})

    def _lost(self) -> Outcome:
        """Too little is there to tell where: each wrong value names the bodies it may be from."""
        findings = {n: Finding(n, "wrong", self._figures(n), "unclear") for n in self.wrong}
        places: list[str] = []
        for name in self.wrong:
            member = self.problem.member.get(name)
            places += [member.start, member.end] if member is not None else [WHOLE]
        return Outcome(tuple(dict.fromkeys(places))[:2], (), findings, clear=False)

    def _figures(self, name: str) -> Mistake | None:
        """What a wrong value shows by itself: its sign, its unit or its rounding, or None."""
        if name not in self.work.entries:
            return None
        entry, true = self.work.entries[name], abs(self.true[name])
        own = self.work.own(without=self.work.entries)
        verdict = self.desk.judge(Value(name), entry.text, own)
        if verdict.kind != "wrong" or verdict.mistakes[0].code not in VALUE_SLIPS:
            return None
        mistake = verdict.mistakes[0]
        of_force = abs(entry.value) > 90 * true or 90 * abs(entry.value) < true
        return mistake if mistake.code != "unit" or of_force else None


def _line_account(judged: Judged) -> Account:
    about = judged.line.about
    return Account(str(judged.place), judged.verdict.mistakes[0], about, 0.0)


def _of_line(judged: Judged) -> Finding:
    verdict, name = judged.verdict, judged.line.index
    if verdict.kind == "right":
        return Finding(name, "right")
    if verdict.kind == "wrong":
        return Finding(name, "wrong", verdict.mistakes[0] if verdict.mistakes else None)
    return Finding(name, "unchecked", None, "unclear")
