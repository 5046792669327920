"""What must hold of every hint below the last: no number, no answer, no repetition, plain sentences.

Two ways: every mistake of the catalogue at every force of every shipped problem and of random trusses,
whether or not it can happen there; and the hints of what the judge finds in wrong lines and values.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from functools import cache, lru_cache
from random import Random

import pytest
from corpus import own_values, wrong_line
from every_problem import FORCES, USUAL, problem_of
from lines import abouts, figures, random_senses
from strategies import make_truss

from tutor.judge import Along, Equation, Fx, M, Mistake, Value, in_words, judge
from tutor.judge.headings import along_in_words
from tutor.judge.kind import Case, force_in_words
from tutor.judge.known_values import KnownValues
from tutor.judge.mistakes import KINDS
from tutor.judge.true_equation import TrueEquation
from tutor.model import Problem
from tutor.statics import solve

SLOW = pytest.mark.slow
SEEDS = range(6)
SHIPPED = [problem_of(path) for path in FORCES if path.stem in USUAL]
TRUSSES = [*(make_truss(seed, 3 + seed % 6) for seed in SEEDS), *SHIPPED]
MOST_LETTERS = 700
"""Room for three reasons, one behind the other, where three mistakes explain a line as well."""
NEVER_SAID = re.compile(r"slanting|upright|Or else|slope triangle|picture", re.IGNORECASE)
"""Words that are not the field's, and what need not be drawn where a hint is read."""
DIGIT = re.compile(r"[\d⁰¹²³⁴-⁹₀-₉]")
DECIMAL = re.compile(r"\d\.\d")
SENTENCE = re.compile(r"[A-ZΣ][^.?]*[.?](?: [A-ZΣ][^.?]*[.?])*")


@cache
def cases_on(place: int) -> tuple[Case, ...]:
    """Every case on one of the trusses."""
    return tuple(every_case(TRUSSES[place]))


def every_case(problem: Problem) -> Iterator[Case]:
    """Every force in every equation, one that does not act on the body, and the line as a whole."""
    elsewhere = problem.joints[-1].name
    for about in [*abouts(problem), M((1.5, -2.0)), Fx(part=(problem.joints[0].name,))]:
        true = TrueEquation(problem, about, KnownValues({}, {}))
        spots = (*true.unknowns.values(), *true.loads)
        acting = sum(1 for spot in spots if spot.true != 0.0)
        yield Case(problem, about, None, None, acting, Fx(elsewhere))
        yield Case(problem, about, None, None, acting)
        for spot in spots:
            yield Case(problem, about, spot.name, spot, acting)
        for member in problem.members[:2]:
            yield Case(problem, about, member.name, None, acting)


IN_MOMENTS = frozenset(
    {"arm", "arm-from", "arm-unit", "no-arm", "component-in-moment", "turning", "other-point"}
)
IN_SUMS = frozenset({"sign", "slope", "angle-mode"})
AT_JOINTS = frozenset({"stray-load", "stray-reaction", "pull-push"})
OF_VALUES = frozenset({"arithmetic", "symmetry", "tension-compression"})


def cases_of(code: str, place: int) -> Iterator[Case]:
    """The cases in which a mistake may be found on one of the trusses."""
    problem = TRUSSES[place]
    if code in OF_VALUES:
        yield from (Case(problem, Value(name), name) for name in problem.unknowns)
        return
    for case in cases_on(place):
        if (case.is_moment and code in IN_SUMS | AT_JOINTS) or (
            not case.is_moment and code in IN_MOMENTS
        ):
            continue
        if case.at_joint or code not in AT_JOINTS:
            yield case


def levels(kind, case: Case) -> tuple[str, str, str]:
    return kind.look(case).text, kind.reason(case), kind.place(case).text


def without_names(problem: Problem, about, text: str, *others: Equation) -> str:
    """A hint without the name of the equation asked for and without names of joints and forces."""
    for equation in (about, *others):
        text = text.replace(in_words(equation), "")
    case = Case(problem, about)
    for words in (case.point, case.direction):
        text = text.replace(words, "") if words else text
    return words_of((*problem.unknowns, *problem.joint)).sub("", text)


def without_direction(problem: Problem, text: str, *equations: Equation) -> str:
    """A hint without the member along which an equation asks for the sum, said as its direction."""
    for equation in equations:
        if isinstance(equation, Along):
            text = text.replace(along_in_words(problem, equation), "")
    return text


@lru_cache(maxsize=256)
def words_of(names: tuple[str, ...], not_beside: str = r"\w") -> re.Pattern[str]:
    """Finds any of the names, the longest first, where none of these characters is beside it."""
    any_name = "|".join(map(re.escape, sorted(names, key=len)[::-1]))
    return re.compile(rf"(?<![{not_beside}])(?:{any_name})(?![{not_beside}])")


def check(problem: Problem, about, told: tuple[str, str, str], *others: Equation) -> None:
    """What must hold of the three levels, whatever they are about."""
    for text in told:
        assert len(text) <= MOST_LETTERS, text
        assert not NEVER_SAID.search(text), text
        assert SENTENCE.fullmatch(DECIMAL.sub("", text)), text
        assert not re.search(r"  |\{|\}|None|\ba force\b.*\bNone\b", text), text
        assert not DIGIT.search(without_names(problem, about, text, *others)), text
    for text in told[:2]:
        alone = without_direction(problem, text, about, *others)
        assert not words_of(tuple(problem.unknowns), r"\w-").search(alone), text
        assert not re.search(r"the (?:horizontal |vertical )?load at \w", text), text
    sentences = [re.split(r"(?<=[.?]) ", text) for text in told]
    assert len({s for each in sentences for s in each}) == sum(len(set(s)) for s in sentences), told


def some_for_each(parts: int) -> Iterator[object]:
    """Each mistake with every `parts`-th of the trusses, others for the next; the rest is slow."""
    for place, code in enumerate(KINDS):
        for part in range(parts):
            marks = [] if part == place % parts else [pytest.mark.slow]
            yield pytest.param(
                code, range(part, len(TRUSSES), parts), marks=marks, id=f"{code}-{part}"
            )


@pytest.mark.parametrize(("code", "places"), some_for_each(5))
def test_no_level_of_a_mistake_tells_a_number_or_repeats_another(code: str, places: range) -> None:
    for place in places:
        for case in cases_of(code, place):
            others = [] if case.true_of is None else [case.true_of]
            check(TRUSSES[place], case.about, levels(KINDS[code], case), *others)


@pytest.mark.parametrize(("code", "places"), some_for_each(3))
def test_the_hints_are_the_same_for_other_numbers_and_signs(code: str, places: range) -> None:
    """So no value, coefficient, arm or sign can be read from them."""
    for place in places:
        for case in cases_of(code, place):
            if case.spot is None:
                continue
            term = case.spot.term
            other = replace(
                case.spot,
                term=replace(term, coefficient=-3.7 * term.coefficient - 1.3),
                sense=-case.spot.sense,
                scale=2.9 * case.spot.scale,
            )
            assert levels(KINDS[code], case) == levels(KINDS[code], replace(case, spot=other))


@pytest.mark.parametrize("code", [c for c in KINDS if c not in ("other-point", "other-equation")])
def test_the_first_two_levels_are_the_same_whichever_force_of_the_line_is_wrong(code: str) -> None:
    kind = KINDS[code]
    for place in range(len(TRUSSES)):
        told: dict[str, set[tuple[str, str]]] = {}
        for case in cases_of(code, place):
            if case.force is not None:
                told.setdefault(in_words(case.about), set()).add(
                    (kind.look(case).text, kind.reason(case))
                )
        assert all(len(same) == 1 for same in told.values()), told


@pytest.mark.parametrize("code", [c for c in KINDS if c not in (
    "other-point", "other-equation", "pull-push", "dependent"
)])  # fmt: skip
def test_the_third_level_names_the_force(code: str) -> None:
    for place, problem in enumerate(TRUSSES):
        for case in cases_of(code, place):
            if case.force is not None:
                told = KINDS[code].place(case).text.lower()
                named = (force_in_words(problem, case.force).lower(), f"for {case.force.lower()} ")
                assert any(words in told for words in named), told


@pytest.mark.parametrize(
    "seeds",
    [pytest.param(range(40), id="some"), pytest.param(range(40, 200), id="more", marks=SLOW)],
)
@pytest.mark.parametrize("count", [1, 2, 3])
def test_the_hints_on_a_wrong_line_tell_no_number_and_repeat_nothing(
    count: int, seeds: range
) -> None:
    for seed in seeds:
        wrong = wrong_line(seed, count)
        if wrong is None:
            continue
        verdict = judge(
            wrong.problem, wrong.about, wrong.text, senses=wrong.senses, known=wrong.known
        )
        others = [] if verdict.true_of is None else [verdict.true_of]
        for mistake in verdict.mistakes:
            check(wrong.problem, wrong.about, told_of(mistake), *others)
        assert len({*map(told_of, verdict.mistakes)}) == len(verdict.mistakes), verdict.mistakes


def told_of(mistake: Mistake) -> tuple[str, str, str]:
    return mistake.text, mistake.reason, mistake.place


def wrong_values(seed: int) -> Iterator[tuple[Problem, str, str, dict[str, str], dict[str, str]]]:
    """(problem, unknown, text, senses, known): values wrong in the ways that can be named."""
    rng = Random(seed)
    problem = make_truss(rng.randrange(10**6), rng.randint(3, 8))
    senses = random_senses(rng, problem)
    values = solve(problem).values
    for unknown, value in values.items():
        known = own_values(rng, problem, senses, 0.5)
        known.pop(unknown, None)
        own = -value if senses.get(unknown) in ("left", "down", "C", "against") else value
        if not own:
            continue
        others = [float(text) for text in known.values()]
        for wrong in (-own, 1000 * own, own / 12, 1.31 * own, 0.6 * own, 4 * own, *others[:2]):
            yield problem, unknown, figures(wrong, 4), senses, known
        yield problem, unknown, figures(own, 1), senses, known
        if unknown in problem.member:
            letter = "C" if value > 0 else "T"
            yield problem, unknown, f"{figures(abs(value), 4)} {letter}", senses, known


@pytest.mark.parametrize(
    "seeds",
    [pytest.param(range(12), id="some"), pytest.param(range(12, 60), id="more", marks=SLOW)],
)
def test_the_hints_on_a_wrong_value_tell_no_number_and_repeat_nothing(seeds: range) -> None:
    seen = set()
    for seed in seeds:
        for problem, unknown, text, senses, known in wrong_values(seed):
            verdict = judge(problem, Value(unknown), text, senses=senses, known=known)
            for mistake in verdict.mistakes:
                seen.add(mistake.code)
                check(problem, Value(unknown), told_of(mistake))
                assert not re.search(r"\b(this|your) line\b", " ".join(told_of(mistake))), mistake
                assert re.search(rf"\b{re.escape(unknown)}\b", mistake.place), mistake
    assert {"sign", "sense", "tension-compression", "unit", "carried", "arithmetic"} <= seen
