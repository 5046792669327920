"""The fast way and the exact way never differ."""

from __future__ import annotations

from dataclasses import replace
from random import Random

from families import down, plain_problem
from hypothesis import given
from hypothesis import strategies as st
from lines import Style, abouts, pieces, plain, random_senses, written
from strategies import make_truss

from tutor.judge import Along, Fy, judge, judge_of
from tutor.judge.proof import proves
from tutor.model import Problem, Support, Tolerance
from tutor.notation import Unreadable, one_equation, read_line


def to_the_letter(problem: Problem) -> Problem:
    return replace(problem, tolerance=Tolerance(0.0, 0.0))


def exactly(problem, about, rng, line) -> str:
    """A line whose every coefficient is an integer, a fraction, or a run or rise over a root."""
    terms = []
    for piece in line:
        if piece.coefficient == 0.0:
            continue
        sign = "-" if piece.value < 0 else "+"
        size = "" if piece.size is None else f"*{plain(rng, abs(piece.size))}"
        name = f" {piece.symbol}" if piece.symbol and "-" not in piece.symbol else ""
        if piece.symbol and not name:
            name = f" F_{{{piece.symbol}}}"
        terms.append(f"{sign} {factor(problem, piece)}{size}{name}")
    return " ".join(terms) + " = 0"


def factor(problem, piece) -> str:
    if piece.force in problem.member and abs(piece.coefficient) < 1.0:
        member = problem.member[piece.force]
        (x1, y1), (x2, y2) = (problem.joint[n].at for n in (member.start, member.end))
        dx, dy = abs(x2 - x1), abs(y2 - y1)
        side = dx if abs(abs(piece.coefficient) - abs(piece.ux)) < 1e-9 else dy
        return f"{side:g}/sqrt({dx:g}^2 + {dy:g}^2)"
    return plain(Random(0), abs(piece.coefficient), 12)


@given(st.integers(0, 10**9), st.booleans())
def test_what_the_judge_calls_right_to_the_letter_is_just_what_can_be_proved(seed, changed):
    rng = Random(seed)
    problem = to_the_letter(make_truss(rng.randrange(10**6), rng.randint(3, 6)))
    senses = random_senses(rng, problem)
    about = rng.choice([a for a in abouts(problem) if not isinstance(a, Along)])
    line = pieces(problem, about, senses, {})
    if changed:
        i = rng.randrange(len(line))
        line[i] = replace(line[i], coefficient=line[i].coefficient * rng.choice((-1, 2, 0.5)))
    desk = judge_of(problem)
    text = exactly(problem, about, rng, line)
    reading = one_equation(read_line(text, desk.names))
    assert not isinstance(reading, Unreadable)
    proved = proves(problem, about, reading, desk.known_values(senses))
    if proved is not None:
        verdict = judge(problem, about, text, senses=senses)
        by_values = any(remark.code == "unrecorded" for remark in verdict.remarks)
        assert (verdict.right and not by_values) is proved


GABLE = plain_problem(
    [("A", 0, 0), ("B", 4, 0), ("C", 2, 1)],
    ("AB", "BC", "CA"),
    [Support("A", "pin"), Support("B", "roller")],
    [down("C", 12)],
)


def test_a_factor_with_a_root_is_proved_or_disproved_like_any_other():
    desk = judge_of(GABLE)
    for factor, proved in (("1/sqrt(5)", True), ("2/sqrt(5)", False), ("1/sqrt(6)", False)):
        text = f"-12 - {factor} F_CA - 1/sqrt(5) F_BC = 0"
        reading = one_equation(read_line(text, desk.names))
        assert not isinstance(reading, Unreadable)
        assert proves(GABLE, Fy("C"), reading, desk.known_values()) is proved


def test_a_force_that_does_not_act_at_the_joint_disproves_a_line_unless_it_goes_out_again():
    desk = judge_of(GABLE)
    for more, proved in (("+ F_AB", False), ("+ F_AB - F_AB", True)):
        text = f"-12 - 1/sqrt(5) F_CA - 1/sqrt(5) F_BC {more} = 0"
        reading = one_equation(read_line(text, desk.names))
        assert not isinstance(reading, Unreadable)
        assert proves(GABLE, Fy("C"), reading, desk.known_values()) is proved


def test_a_line_with_a_rounded_number_is_not_for_proof():
    problem = make_truss(3, 4)
    rng = Random(1)
    about = abouts(problem)[0]
    text = written(rng, problem, pieces(problem, about, {}, {}), Style(figures=3)) + " + 0.00"
    reading = one_equation(read_line(text, judge_of(problem).names))
    assert not isinstance(reading, Unreadable)
    rounded = any(term.radius for term in reading.terms)
    assert (proves(problem, about, reading, judge_of(problem).known_values()) is None) is rounded


def test_a_proof_follows_the_arrow_that_was_drawn():
    desk = judge_of(GABLE)
    for senses, sign in (({}, "-"), ({"CA": "C"}, "+")):
        for typed in "+-":
            text = f"-12 {typed} 1/sqrt(5) F_CA - 1/sqrt(5) F_BC = 0"
            reading = one_equation(read_line(text, desk.names))
            assert not isinstance(reading, Unreadable)
            own = desk.known_values(senses)
            assert proves(GABLE, Fy("C"), reading, own) is (typed == sign)
