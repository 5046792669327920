"""Laws of solved trusses."""

from dataclasses import replace
from fractions import Fraction

import pytest
import sympy
from families import down, fink, plain_problem, pratt, root, warren
from hypothesis import given
from hypothesis import strategies as st
from strategies import make_truss, trusses, wall_trusses

from tutor.model import Load, Support
from tutor.notation import Exact
from tutor.statics import (
    SUM_X,
    SUM_Y,
    Equilibrium,
    Moment,
    joint_body,
    part,
    residuals,
    solve,
    symbolic,
    whole,
)
from tutor.statics.system import joint_equations

ANY = st.one_of(trusses(), wall_trusses())


def size_of(answer) -> float:
    loads = [abs(v) for load in answer.problem.loads for v in load.vector]
    return max(*map(abs, answer.values.values()), *loads)


def triangle(**changes):
    problem = plain_problem(
        [("A", 0, 0), ("B", 4, 0), ("C", 2, Fraction(3, 2))],
        ["AB", "BC", "CA"],
        [Support("A", "pin"), Support("B", "roller")],
        [down("C", 12)],
    )
    return replace(problem, **changes)


@given(ANY)
def test_solved_forces_leave_nothing_over_at_any_joint(problem):
    answer = solve(problem)
    for left in residuals(problem, answer.values).values():
        assert left == pytest.approx((0, 0), abs=1e-9 * size_of(answer))


@given(trusses())
def test_the_equations_of_all_joints_are_those_of_each(problem):
    matrix, loads = joint_equations(problem)
    column = {name: k for k, name in enumerate(problem.unknowns)}
    for k, joint in enumerate(problem.joints):
        for axis in "xy":
            row = 2 * k + "xy".index(axis)
            forces = joint_body(problem, joint.name).forces
            unknown = {column[f.name]: getattr(f, axis) for f in forces if f.size is None}
            assert [unknown.get(c, 0.0) for c in range(len(column))] == matrix[row].tolist()
            assert sum(f.size * getattr(f, axis) for f in forces if f.size) == loads[row]


@given(ANY, st.data())
def test_solved_forces_satisfy_every_equation_of_every_part(problem, data):
    answer = solve(problem)
    names = [joint.name for joint in problem.joints]
    inside = data.draw(st.lists(st.sampled_from(names), min_size=1, unique=True))
    point = problem.joint[data.draw(st.sampled_from(names))].at
    for body in (whole(problem), part(problem, inside)):
        for sum_ in (SUM_X, SUM_Y, Moment(point)):
            terms = Equilibrium(body, sum_).terms
            parts = [
                t.coefficient * (1.0 if t.force.size else answer.values.get(t.force.name, 1.0))
                for t in terms
            ]
            spread = sum(t.spread for t in terms) or 1.0
            assert sum(parts) == pytest.approx(0, abs=1e-8 * spread * max(size_of(answer), 1.0))


@given(ANY)
def test_exact_forces_are_the_floats(problem):
    answer = solve(problem)
    for name, value in answer.values.items():
        assert float(answer.exact(name)) == pytest.approx(value, abs=1e-9 * size_of(answer))


@given(ANY, st.sampled_from([Fraction(3), Fraction(1, 7), Fraction(1000)]))
def test_loads_times_a_number_give_forces_times_that_number(problem, times):
    def scaled(load):
        pushes = tuple((way, Exact.of(size.fraction * times)) for way, size in load.pushes)
        size = None if load.size is None else Exact.of(load.size.fraction * times)
        return replace(load, pushes=pushes, size=size)

    answer = solve(problem)
    more = solve(replace(problem, loads=tuple(map(scaled, problem.loads))))
    expected = {name: float(times) * value for name, value in answer.values.items()}
    assert dict(more.values) == pytest.approx(expected, abs=1e-9 * size_of(more))


@given(ANY)
def test_forces_of_all_loads_are_the_sums_of_the_forces_of_each(problem):
    answer = solve(problem)
    each = [solve(replace(problem, loads=(load,))) for load in problem.loads]
    expected = {name: sum(one.values[name] for one in each) for name in answer.values}
    scale = max(map(size_of, [answer, *each]))
    assert dict(answer.values) == pytest.approx(expected, abs=1e-9 * scale)


@given(trusses())
def test_the_whole_body_alone_gives_the_same_three_reactions(problem):
    answer = solve(problem)
    rows = [symbolic(Equilibrium(whole(problem), s), problem) for s in (SUM_X, SUM_Y)]
    middle = problem.joints[0]
    rows.append(symbolic(Equilibrium(whole(problem), Moment(middle.at)), problem))
    unknowns = {r.name: sympy.Symbol(f"u{k}") for k, r in enumerate(problem.reactions)}
    sums = [sum(float(c) * unknowns.get(name, 1) for name, c in row.items()) for row in rows]
    (found,) = sympy.linsolve(sums, list(unknowns.values()))
    for name, value in zip(unknowns, found, strict=True):
        assert float(value) == pytest.approx(answer.reaction(name), abs=1e-8 * size_of(answer))


@given(ANY)
def test_exact_equations_are_the_floats_beside_them(problem):
    bodies = [whole(problem), *(joint_body(problem, joint.name) for joint in problem.joints)]
    for body in bodies:
        for sum_ in (SUM_X, SUM_Y, Moment(problem.joints[-1].at)):
            equation = Equilibrium(body, sum_)
            exact = symbolic(equation, problem)
            assert set(exact) == set(equation.linear)
            spread = max((term.spread for term in equation.terms), default=1.0)
            for name, value in equation.linear.items():
                assert float(exact[name]) == pytest.approx(value, rel=1e-9, abs=1e-9 * spread)


@given(ANY)
def test_exact_forces_satisfy_the_exact_equations(problem):
    answer = solve(problem)
    joint = problem.joints[-1].name
    for sum_ in (SUM_X, SUM_Y):
        row = symbolic(Equilibrium(joint_body(problem, joint), sum_), problem)
        left = sum(c * (1 if name is None else answer.exact(name)) for name, c in row.items())
        assert sympy.N(left, 40) == pytest.approx(0, abs=1e-25 * size_of(answer))


def test_forces_come_by_either_order_of_the_joints_or_by_name():
    answer = solve(triangle())
    assert answer.force("A", "C") == answer.force("C", "A") == answer.force("AC")
    assert answer.force("CA") == answer.value("CA") == pytest.approx(-10)
    assert answer.exact_force("A", "C") == -10
    assert (answer.exact_reaction("A_y"), answer.exact("AB")) == (6, 8)
    assert answer.force("A", "B") > 0, "the tie of a loaded triangle is in tension"


def test_long_joint_names_need_a_dash_between_them():
    answer = solve(pratt(4, 3, 4, 8))
    assert answer.force("U1-L1") == answer.force("L1", "U1") == answer.force("L1-U1")


@pytest.mark.parametrize("ask", [("A", "D"), ("AD",), ("A",), (), ("A", "B", "C")])
def test_a_member_that_is_not_there_is_refused_with_those_that_are(ask):
    answer = solve(triangle())
    with pytest.raises(KeyError, match="is no member here; the members are AB, BC, CA"):
        answer.force(*ask)


def test_an_unknown_reaction_or_value_is_refused_with_those_that_are():
    answer = solve(triangle())
    with pytest.raises(KeyError, match="the reactions are A_x, A_y, B_y"):
        answer.reaction("B_x")
    with pytest.raises(KeyError, match="no unknown here; there are A_x"):
        answer.value("BB")


def test_a_force_that_cancels_is_zero_and_not_almost():
    answer = solve(fink(8, 7, Fraction(49, 3), Fraction(1, 3)))
    assert answer.reaction("L0_x") == 0.0
    assert solve(pratt(6, 3, 7, 11)).force("U3", "L3") == 0.0


def test_a_link_pulls_along_its_own_line_when_positive():
    hung = triangle(
        supports=(Support("A", "pin"), Support("B", "link", anchor=(Exact.of(4), Exact.of(9))))
    )
    answer = solve(hung)
    assert answer.reaction("R_B") == pytest.approx(6)
    stood = replace(
        hung, supports=(hung.supports[0], Support("B", "link", anchor=(Exact.of(4), Exact.of(-9))))
    )
    assert solve(stood).reaction("R_B") == pytest.approx(-6)


def test_an_inclined_roller_pushes_along_its_stated_direction():
    answer = solve(
        triangle(supports=(Support("A", "pin"), Support("B", "roller", angle=Exact.of(120))))
    )
    assert answer.exact_reaction("R_B") == 4 * sympy.sqrt(3)
    assert answer.exact_reaction("A_x") == 2 * sympy.sqrt(3)


def test_several_loads_on_one_joint_add_up():
    one = solve(triangle(loads=(down("C", 12),)))
    two = solve(triangle(loads=(down("C", 5), down("C", 7))))
    assert dict(one.values) == pytest.approx(dict(two.values))


def test_surds_in_coordinates_and_loads_stay_exact():
    problem = triangle(
        joints=(*triangle().joints[:2], replace(triangle().joints[2], y=root(3, 2))),
        loads=(Load("C", (("down", root(2, 3)),)),),
    )
    answer = solve(problem)
    assert answer.exact_force("AC") == -sympy.sqrt(6)
    assert answer.exact_force("AB") == sympy.sqrt(6) / 2


@pytest.mark.parametrize("angle", ["36.87", "22.5", "101.3"])
def test_odd_angles_stay_symbols_and_still_come_out(angle):
    slope = Exact(angle, float(angle), Fraction(angle))
    problem = triangle(
        supports=(Support("A", "pin"), Support("B", "roller", angle=slope)),
        loads=(Load("C", size=Exact.of(9), angle=Exact("211.7", 211.7, Fraction("211.7"))),),
    )
    answer = solve(problem)
    for name, value in answer.values.items():
        assert float(answer.exact(name)) == pytest.approx(value, rel=1e-12, abs=1e-12)


def test_many_kinds_of_surds_at_once_still_come_out():
    base = warren(6, 4, 3, 10)
    squares = [2, 3, 5, 7, 11, 13]
    joints = tuple(
        replace(joint, y=root(squares[int(joint.name[1:]) % 6], 2))
        if joint.name[0] == "U"
        else joint
        for joint in base.joints
    )
    answer = solve(replace(base, joints=joints))
    for name, value in answer.values.items():
        assert float(answer.exact(name)) == pytest.approx(value, rel=1e-9, abs=1e-9)


def test_moments_take_a_point_given_exactly():
    problem = triangle()
    equation = Equilibrium(whole(problem), Moment((1 / 3, 0.1)))
    exact = symbolic(equation, problem, point=(sympy.Rational(1, 3), sympy.Rational(1, 10)))
    assert exact["B_y"] == sympy.Rational(11, 3)
    assert symbolic(Equilibrium(whole(problem), Moment((1.0, 0.1))))["A_x"] == sympy.Rational(1, 10)


def test_twenty_joints_solve_exactly_and_in_floats_alike():
    for seed in range(3):
        answer = solve(make_truss(seed, 20))
        for name, value in answer.values.items():
            assert float(answer.exact(name)) == pytest.approx(value, abs=1e-9 * size_of(answer))
