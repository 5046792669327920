"""How is a homework reviewed? Read it, follow the chain of work, and judge each entry."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from tutor.homework.account import RIVAL, Account
from tutor.homework.accounts import UNEXPLAINED
from tutor.homework.by_chance import fits_by_chance, of_the_value
from tutor.homework.certainty import beyond_doubt
from tutor.homework.closing import closures
from tutor.homework.deciding import closing, fewest, separating
from tutor.homework.findings import Finding, Review, Sure
from tutor.homework.half_mended import remembered
from tutor.homework.later_lines import with_later_lines
from tutor.homework.lines import LineVerdict, judged_lines, order_of, values_behind, wrong_entries
from tutor.homework.mended import of_resting, resting
from tutor.homework.outcome import ReviewOutcome, lost
from tutor.homework.places import Story, first_in_order, first_places
from tutor.homework.reading import blank_members
from tutor.homework.rounding import correctness
from tutor.homework.sheet import WHOLE, sheets
from tutor.homework.slips import cost_of
from tutor.homework.stories import Stories, Told
from tutor.homework.telling import at_its_place, far_fetched, finding_of, line_account
from tutor.homework.throughout import Throughout
from tutor.homework.two_figures import FIGURES, of_two_figures
from tutor.homework.vectors import PARALLEL, Vector
from tutor.homework.words import summary
from tutor.homework.work import Entry, Work, read_work
from tutor.judge import Judge, Mistake, Value, judge_of
from tutor.model import Problem
from tutor.statics import Unsolvable

EQUALLY_NAMED = 0.25
BY_ITSELF = 0.05
MUCH_BLANK, FARFETCHED = 2, 1.5
VALUE_SLIPS = frozenset({"tension-compression", "sign", "sense", "unit", "rounding"})


def review(problem: Problem, work: object, before: object = None) -> Review:
    """What `work` shows, as the contract describes it; it never raises on a student's work.

    `work` is a mapping whose parts may all be absent: "reactions" and "forces" (unknown to value),
    "lines" (pairs of an equation and its text), "senses", "order" (joint names, perhaps "whole").
    `before` is the work as it was at the last check, or what was wrong at the checks so far, the longest
    mended first: what rests on a value that was mended since is then told from a new mistake.
    """
    desk = judge_of(problem)
    handed_in = read_work(desk, work)
    try:
        true = desk.values()
    except Unsolvable:
        return _unsolvable(handed_in)
    last = {} if before is None else read_work(desk, before).entries
    return _Check(desk, handed_in, true, last).review()


def _unsolvable(work: Work) -> Review:
    names: list[str | int] = [*work.entries, *(line.index for line in work.lines)]
    findings = tuple(Finding(name, "unchecked", None, "unclear") for name in names)
    result = Review(findings, None, refused=work.refused, clear=False)
    return replace(result, said=summary(result))


class _Check:
    """The review of one homework in the making."""

    def __init__(
        self, desk: Judge, work: Work, true: dict[str, float], before: Mapping[str, Entry]
    ) -> None:
        self.before = before
        self.desk = desk = desk.knowing(work.letters)
        self.problem = desk.problem
        self.work = work
        self.true = true
        self.handed_in = sheets(self.problem, work.entries)
        self.correctness = correctness(self.problem, self.handed_in, work.entries, true)
        if self.correctness.wrong:
            self._take_as_coarse()
            work = self.work
        self.stories = Stories(self.problem, self.handed_in, work.entries, true, self.correctness)
        self.reading = self.stories.reading
        self.throughout = Throughout(self.problem, work.entries, true, self.stories, work.order)
        self.amiss = wrong_entries(desk, work)
        self.lines = judged_lines(desk, work, self.handed_in, self.amiss)
        self.pairs: list[Told] = []

    def _take_as_coarse(self) -> None:
        """The page as one of two figures, where that leaves nothing wrong."""
        if (entries := of_two_figures(self.problem, self.work.entries)) is None:
            return
        bodies = sheets(self.problem, entries)
        as_coarse = correctness(self.problem, bodies, entries, self.true, FIGURES)
        if not as_coarse.wrong:
            self.work = replace(self.work, entries=entries)
            self.handed_in, self.correctness = bodies, as_coarse

    @property
    def wrong(self) -> tuple[str, ...]:
        return self.reading.wrong

    def review(self) -> Review:
        outcome = self._outcome()
        findings = [outcome.findings.get(name, self._finding(name)) for name in self.work.entries]
        unread = [r.name for r in self.work.refused if r.name in self.problem.unknowns]
        findings += [
            Finding(name, "unchecked", None, "unclear")
            for name in dict.fromkeys(unread)
            if name not in self.work.entries
        ]
        findings += [finding_of(judged) for judged in self.lines]
        decides, more = self._asked(outcome)
        result = Review(
            tuple(findings),
            outcome.places[0] if outcome.places else None,
            outcome.places,
            outcome.accounts,
            closures(self.handed_in, self.correctness),
            self.work.refused,
            outcome.clear,
            note=outcome.note,
            rests=outcome.rests,
            decides=decides,
            more=more,
            coarse=tuple(name for name in self.work.entries if name in self.correctness.coarse),
            stopped=self.stories.stopped,
        )
        return replace(result, said=summary(result))

    def _asked(self, outcome: ReviewOutcome) -> tuple[str | None, str | None]:
        """A blank that would settle what is open, and one that would tell more of it."""
        blank = [name for name in self.problem.unknowns if name not in self.work.entries]
        if (found := separating(self.pairs, blank)) is not None:
            name, of_all = found
            return (name, None) if of_all else (None, name)
        undecided = self.correctness.open
        here = set() if outcome.clear else set(outcome.places)
        sheets = [
            sheet
            for body, sheet in self.handed_in.items()
            if body in here or not undecided.isdisjoint(sheet.part)
        ]
        return closing(self.handed_in, undecided), fewest(sheets)

    def _finding(self, name: str) -> Finding:
        if name in self.correctness.undecided:
            return Finding(name, "unchecked", None, "unclear", undecided=True)
        return Finding(name, "right")

    def _outcome(self) -> ReviewOutcome:
        misleading = [j for j in self.lines if j.misleads and j.place is not None]
        if not any(name in self.work.entries for name in self.wrong):
            return self._from_lines(misleading) if misleading else ReviewOutcome((), (), {})
        alike = self.throughout.of_uniform()
        if alike is not None:
            return alike
        mended = self._of_mended()
        if mended is not None:
            return mended
        told = self._told_place(misleading)
        pairs = self.stories.told()
        if told is not None:
            by_lines = any(judged.place == told for judged in misleading)
            pairs = self.stories.from_told(pairs, told, by_lines)
        if not misleading:
            other = self.throughout.of_beliefs(pairs) or self.throughout.of_drawing(pairs)
            if other is not None:
                return other
        if not pairs:
            return lost(self.problem, self.wrong, self._figures)
        self.reading = pairs[0][1]
        self.pairs = pairs
        outcome = self._of_story([story for story, _ in pairs], told is not None, misleading)
        return with_later_lines(self.desk, misleading, outcome)

    def _of_mended(self) -> ReviewOutcome | None:
        """What still rests on values, or on a belief, of the last check."""
        given = (self.handed_in, self.work.entries, self.before, self.correctness)
        rests = resting(*given)
        if rests is not None and not rests.besides:
            return of_resting(self.problem, rests)
        was = remembered(*given)
        half = None if was is None else self.throughout.of_half_mended(was)
        return half if half is not None or rests is None else of_resting(self.problem, rests)

    def _told_place(self, misleading: list[LineVerdict]) -> str | None:
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

    def _of_story(
        self, stories: list[Story], told: bool, misleading: list[LineVerdict]
    ) -> ReviewOutcome:
        best = stories[0]
        places = first_places(stories)
        sure: Sure = "certain" if self._beyond_doubt(stories) else "likely"
        accounts = [a for a in self._told(best) if not far_fetched(self.problem, a)]
        near = tuple(a for a in accounts if a.cost <= accounts[0].cost + EQUALLY_NAMED)
        if len(self.work.entries) == 1:
            near = ()
        near = self._from_value(best, near)
        by_lines = self._by_lines(best, misleading)
        if by_lines:
            near = by_lines
            sure = "certain" if len(places) == 1 else "likely"
        then: Sure = sure if len(best.turns) == 1 and not best.open else "likely"
        findings: dict[str, Finding] = {}
        enough = self._plain_enough(best.first)
        clear = told or (best.turns[0].cost < enough and not self.stories.unsettled)
        for k, turn in enumerate(best.turns):
            named, how = (near, sure) if k == 0 else (turn.accounts[:1], then)
            for name in turn.values:
                findings[name] = at_its_place(self.problem, self.wrong, name, named, how)
        for name, (place, equation) in best.follows.items():
            if clear or self._all_written(place, equation):
                findings[name] = Finding(name, "follows", None, then)
            else:
                findings[name] = Finding(name, "wrong", None, "unclear")
        for name in best.open:
            findings[name] = Finding(name, "wrong", None, "unclear")
        return ReviewOutcome(places, near, findings, clear)

    def _told(self, best: Story) -> Sequence[Account]:
        """What explains the first place; of a lone value no more than its figures can show."""
        turn, sheet = best.turns[0], self.reading.bodies[best.first]
        if len(turn.values) != 1 or not turn.accounts:
            return turn.accounts
        usual = self.stories.explained.usual(sheet)
        told = [a for a in turn.accounts if not fits_by_chance(a, sheet, usual)]
        return told or [of_the_value(self.problem, sheet, turn.values[0])]

    def _by_lines(self, best: Story, misleading: list[LineVerdict]) -> tuple[Account, ...]:
        """What the lines of the first place show: a wrong one, or a value that a right one does not give."""
        wrong = tuple(line_account(j) for j in misleading if j.place == best.first)
        body, values = self.handed_in[best.first], best.turns[0].values
        given = (self.desk, self.work, self.lines, body, values, self.amiss)
        return wrong or tuple(values_behind(*given))

    def _beyond_doubt(self, stories: list[Story]) -> bool:
        """Whether no other mistake and no belief may explain what the best story explains."""
        most = stories[0].cost + RIVAL
        return beyond_doubt(stories, self.handed_in) and not self.throughout.beliefs(most)

    def _all_written(self, place: str, equation: Vector) -> bool:
        """Whether the equation that a value follows by holds with written numbers alone."""
        parts = self.handed_in[place].part.values()
        return all(
            part.name in self.work.entries or abs(part.share(equation)) <= PARALLEL
            for part in parts
        )

    def _plain_enough(self, place: str) -> float:
        """What the account of a place may cost to make it clear: less where blanks stand between."""
        blank = blank_members(self.problem, self.handed_in[place])
        through = self.stories.forgotten and any(
            member.name not in self.work.entries for member in self.problem.members
        )
        return FARFETCHED if through or len(blank) >= MUCH_BLANK else UNEXPLAINED

    def _from_value(self, story: Story, near: tuple[Account, ...]) -> tuple[Account, ...]:
        """For a lone wrong value: what its own figures say as well, the sign or the rounding."""
        mistake = self._figures(self.wrong[0]) if len(self.wrong) == 1 else None
        if mistake is None:
            return near
        cost = cost_of(mistake.code) + BY_ITSELF
        own = Account(story.first, mistake, Value(self.wrong[0]), cost)
        others = [a for a in near if a.mistake.code not in ("arithmetic", mistake.code)]
        return tuple(sorted((*others, own), key=lambda account: account.cost))

    def _from_lines(self, misleading: list[LineVerdict]) -> ReviewOutcome:
        """Wrong lines beside values that are right all the same."""
        first = misleading[0]
        assert first.place is not None
        if order := self.work.order:
            steps = [WHOLE, *order] if WHOLE not in order else list(order)
            known = [j for j in misleading if j.place in steps]
            first = min(known, key=lambda j: steps.index(str(j.place)), default=first)
        accounts = tuple(line_account(j) for j in misleading if j.place == first.place)
        return ReviewOutcome((str(first.place),), accounts, {})

    def _figures(self, name: str) -> Mistake | None:
        """What a wrong value shows by itself: its sign, its unit or its rounding, or None."""
        if name not in self.work.entries:
            return None
        entry = self.work.entries[name]
        own = self.work.own(without=self.work.entries)
        verdict = self.desk.judge(Value(name), entry.text, own)
        if verdict.kind != "wrong" or verdict.mistakes[0].code not in VALUE_SLIPS:
            return None
        return verdict.mistakes[0]
