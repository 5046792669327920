"""What are the equations and forces in exact numbers?

Numbers are sympy expressions, exact where the problem file is: rationals, surds, and sines of odd
angles left as they stand. Senses and units are those of the floats beside them.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any

from tutor.model import Direction, Load, Problem
from tutor.statics.body import Equilibrium, Force, Moment, Projection

SURDS_IN_A_FIELD = 2  # with more, working in an algebraic number field is slower than with symbols


def symbolic(
    equation: Equilibrium, problem: Problem | None = None, point: tuple[Any, Any] | None = None
) -> dict[str | None, Any]:
    """The equation's linear form in exact sympy numbers; as `Equation.linear`.

    Joint coordinates, needed for moments, come from `problem`; without it, from the floats as they
    print. `point` is the exact moment point; by default the joint of `problem` that is there, and
    else the floats of the equation as they print.
    """
    sums: dict[str | None, Any] = {None: _sympy().Integer(0)}
    for term in equation.terms:
        name = term.force.name if term.force.size is None else None
        if term.coefficient != 0.0:
            exact = _contribution(equation.sum, term.force, problem, point)
            sums[name] = sums.get(name, 0) + exact
    sums = {name: _sympy().expand(value) for name, value in sums.items()}
    return {name: value for name, value in sums.items() if name is None or value != 0}


def _sympy() -> Any:
    import sympy  # here, not at the top: the first frame must not wait for sympy

    return sympy


def _contribution(
    sum_: Projection | Moment,
    force: Force,
    problem: Problem | None,
    point: tuple[Any, Any] | None,
) -> Any:
    x, y = _vector(force)
    if isinstance(sum_, Projection):
        ax, ay = _axis(sum_.degrees)
        return x * ax + y * ay
    px, py = point or _place(sum_.point, problem, None)
    fx, fy = _place(force.at, problem, force.joint)
    return (fx - px) * y - (fy - py) * x


def _vector(force: Force) -> tuple[Any, Any]:
    """The unit vector of an unknown, or the whole vector of a load's part."""
    if isinstance(force.source, Load):
        x, y = force.source.sympy()
        if force.source.size is not None:
            return x, y
        return (x, y * 0) if force.y == 0.0 else (x * 0, y)
    if isinstance(force.source, Direction):
        x, y = force.source.sympy()
        return x, y
    size = 1.0 if force.size is None else force.size
    return printed(force.x * size), printed(force.y * size)


def _axis(degrees: float) -> tuple[Any, Any]:
    angle = printed(degrees) * _sympy().pi / 180
    return _sympy().cos(angle), _sympy().sin(angle)


def _place(at: tuple[float, float], problem: Problem | None, joint: str | None) -> tuple[Any, Any]:
    if problem is not None:
        for candidate in problem.joints:
            if candidate.name == joint or (joint is None and candidate.at == at):
                return candidate.x.sympy(), candidate.y.sympy()
    return printed(at[0]), printed(at[1])


def printed(number: float) -> Any:
    """The rational that `number` prints as: 0.1 is 1/10."""
    return _sympy().Rational(repr(float(number)))


def exact_values(problem: Problem) -> Mapping[str, Any]:
    """Every unknown of a statically determinate and stable problem, in exact numbers.

    The unknowns of the system are force densities (force over length), so that its matrix is
    rational wherever the coordinates are; only the last step brings in the lengths.
    """
    sympy = _sympy()
    entries, lengths = _density_equations(problem)
    loads = _split_loads(problem)
    kinds = list(dict.fromkeys(kind for row in loads for kind in row)) or [sympy.Integer(1)]
    domain, convert, back = _field({value for row in entries for value in row.values()})
    width = len(lengths)
    rows = {}
    for k, (row, load) in enumerate(zip(entries, loads, strict=True)):
        rows[k] = {column: convert(value) for column, value in row.items()}
        rows[k].update({width + kinds.index(kind): convert(-load[kind]) for kind in load})
    columns = _solved(rows, width, len(kinds), domain)
    return {
        name: sympy.expand(
            lengths[k]
            * sum((back(value) * kinds[n] for n, value in columns[k].items()), sympy.Integer(0))
        )
        for k, name in enumerate(problem.unknowns)
    }


def _solved(
    rows: dict[int, dict[int, Any]], width: int, right: int, domain: Any
) -> list[dict[int, Any]]:
    """For every unknown its value for each right-hand column, zeros left out."""
    from sympy.polys.matrices import DomainMatrix  # here for start-up time

    matrix = DomainMatrix(rows, (len(rows), width + right), domain)
    reduced, pivots = matrix.rref()
    if tuple(pivots) != tuple(range(width)):
        raise ArithmeticError("the joint equations are singular in exact numbers")
    table = reduced.to_sparse().rep
    return [
        {n: table[k][width + n] for n in range(right) if width + n in table.get(k, {})}
        for k in range(width)
    ]


def _density_equations(problem: Problem) -> tuple[list[dict[int, Any]], list[Any]]:
    """Rows (x and y of each joint) over the densities of all unknowns, and each unknown's length."""
    sympy = _sympy()
    row = {joint.name: 2 * k for k, joint in enumerate(problem.joints)}
    place = {joint.name: (joint.x.sympy(), joint.y.sympy()) for joint in problem.joints}
    rows: list[dict[int, Any]] = [{} for _ in range(2 * len(problem.joints))]
    lengths: list[Any] = []
    for reaction in problem.reactions:
        (x, y), length = _ray(reaction.direction)
        _put(rows, row[reaction.joint], len(lengths), x, y)
        lengths.append(length)
    for member in problem.members:
        x, y = (
            sympy.expand(there - here)
            for here, there in zip(place[member.start], place[member.end], strict=True)
        )
        _put(rows, row[member.start], len(lengths), x, y)
        _put(rows, row[member.end], len(lengths), -x, -y)
        lengths.append(sympy.sqrt(sympy.expand(x**2 + y**2)))
    return rows, lengths


def _put(rows: list[dict[int, Any]], row: int, column: int, x: Any, y: Any) -> None:
    for k, value in enumerate((x, y)):
        if value != 0:
            rows[row + k][column] = value


def _ray(direction: Direction) -> tuple[tuple[Any, Any], Any]:
    """A vector along the direction, as simple as can be, and its length."""
    sympy = _sympy()
    if direction.vector is not None:
        x, y = (sympy.expand(part.sympy()) for part in direction.vector)
        return (x, y), sympy.sqrt(sympy.expand(x**2 + y**2))
    x, y = direction.sympy()
    if x == 0 or y == 0:
        return (x, y), sympy.Integer(1)
    slope = sympy.radsimp(sympy.expand(y / x))
    return (sympy.Integer(1), slope), sympy.radsimp(1 / x)


def _split_loads(problem: Problem) -> list[dict[Any, Any]]:
    """The loads of each row by kind of number: {1: 5, sqrt(3): 1/2} for 5 + sqrt(3)/2."""
    sympy = _sympy()
    row = {joint.name: 2 * k for k, joint in enumerate(problem.joints)}
    sums = [sympy.Integer(0)] * (2 * len(problem.joints))
    for load in problem.loads:
        for k, value in enumerate(load.sympy()):
            sums[row[load.joint] + k] += value
    return [_kinds(value) for value in sums]


def _kinds(value: Any) -> dict[Any, Any]:
    """The number as a sum of rational multiples: kind of number to its rational coefficient."""
    sympy = _sympy()
    found: dict[Any, Any] = {}
    for part in sympy.Add.make_args(sympy.expand(value)):
        coefficient, kind = part.as_coeff_Mul(rational=True)
        if coefficient != 0:
            found[kind] = found.get(kind, 0) + coefficient
    return {kind: coefficient for kind, coefficient in found.items() if coefficient != 0}


def _field(values: Iterable[Any]) -> tuple[Any, Any, Any]:
    """A field that holds `values`: its sympy domain, the way into it and the way back.

    The rationals, or these with one or two square roots, or with a symbol for each other number.
    A symbol stands for any value, so what holds for it holds for its number.
    """
    from sympy import QQ, Dummy, Integer, primefactors, sqrt  # here for start-up time

    kinds = sorted({kind for value in values for kind in _kinds(value)} - {1}, key=str)
    if not kinds:
        return QQ, QQ.from_sympy, QQ.to_sympy
    radicands = [kind**2 for kind in kinds]
    if all(radicand.is_Integer and radicand > 0 for radicand in radicands):
        primes = sorted({p for radicand in radicands for p in primefactors(int(radicand))})
        if len(primes) <= SURDS_IN_A_FIELD:
            field = QQ.algebraic_field(*(sqrt(Integer(p)) for p in primes))
            return field, field.from_sympy, field.to_sympy
    symbols = {kind: Dummy(f"t{k}") for k, kind in enumerate(kinds)}
    field = QQ.frac_field(*symbols.values())
    known = {symbol: kind for kind, symbol in symbols.items()}

    def into(value: Any) -> Any:
        parts = _kinds(value).items()
        return field.from_sympy(
            sum((c * symbols.get(kind, Integer(1)) for kind, c in parts), Integer(0))
        )

    def back(value: Any) -> Any:
        return field.to_sympy(value).xreplace(known)

    return field, into, back
