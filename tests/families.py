"""Which classic trusses do the tests try? Pratt, Howe, Warren and Fink, and the parts to build one."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Sequence
from fractions import Fraction
from itertools import pairwise

from tutor.model import Joint, Load, Member, Problem, Support
from tutor.notation import Exact
from tutor.notation.elements.tree import Binary, Call, Number, Span

Plain = int | Fraction


def exact(number: Plain | Exact) -> Exact:
    """`number` as the model keeps it."""
    return number if isinstance(number, Exact) else Exact.of(number)


def root(square: Plain, times: Plain = 1) -> Exact:
    """times * sqrt(square), as a file would write it; rational where it can be."""
    square, times = Fraction(square), Fraction(times)
    top, bottom = math.isqrt(square.numerator), math.isqrt(square.denominator)
    if top**2 == square.numerator and bottom**2 == square.denominator:
        return Exact.of(times * Fraction(top, bottom))
    if times == 0:
        return Exact.of(0)
    span = Span(0, 0)
    tree = Binary(
        "*",
        Number(times, Fraction(0), span),
        Call("sqrt", Number(square, Fraction(0), span), span),
        span,
    )
    return Exact(f"({times})*sqrt({square})", float(times) * math.sqrt(square), None, tree)


def member_name(one: str, other: str) -> str:
    """The one name of the member from `one` to `other`."""
    return one + other if len(one) == len(other) == 1 else f"{one}-{other}"


def plain_problem(
    joints: Iterable[tuple[str, Plain | Exact, Plain | Exact]],
    members: Iterable[str],
    supports: Iterable[Support],
    loads: Iterable[Load],
    *,
    title: str = "A truss",
    force: str = "kN",
    length: str = "m",
) -> Problem:
    """A problem from plain parts; members as a file names them, "AB" or "U1-L2"."""
    return Problem(
        title=title,
        force=force,
        length=length,
        joints=tuple(Joint(name, exact(x), exact(y)) for name, x, y in joints),
        members=tuple(Member(name, *_ends(name)) for name in members),
        supports=tuple(supports),
        loads=tuple(loads),
    )


def _ends(name: str) -> tuple[str, str]:
    one, other = name.split("-") if "-" in name else name
    return one, other


def down(joint: str, size: Plain | Exact) -> Load:
    """A load straight down."""
    return Load(joint, (("down", exact(size)),))


def _bridge(
    n: int, a: Plain, h: Plain, load: Plain, top: Sequence[tuple[str, Plain]], web: list[str]
) -> Problem:
    bottom = [(f"L{i}", a * i, 0) for i in range(n + 1)]
    chords = [f"L{i}-L{i + 1}" for i in range(n)]
    chords += [f"{one}-{other}" for (one, _), (other, _) in pairwise(top)]
    return plain_problem(
        bottom + [(name, x, h) for name, x in top],
        chords + web,
        [Support("L0", "pin"), Support(f"L{n}", "roller")],
        [down(f"L{i}", load) for i in range(1, n)],
        title="A parallel-chord truss",
    )


def _panels(n: int, slopes: Callable[[int], list[str]]) -> list[str]:
    posts = ["L0-U1", f"U{n - 1}-L{n}"] + [f"U{i}-L{i}" for i in range(1, n)]
    return posts + [name for i in range(1, n - 1) for name in slopes(i)]


def pratt(n: int, a: Plain, h: Plain, load: Plain) -> Problem:
    """n (even, 4 or more) panels a wide, h high, a load on each inner bottom joint; webs fall
    inward."""
    left = n // 2
    web = _panels(n, lambda i: [f"U{i}-L{i + 1}" if i < left else f"L{i}-U{i + 1}"])
    return _bridge(n, a, h, load, [(f"U{i}", a * i) for i in range(1, n)], web)


def howe(n: int, a: Plain, h: Plain, load: Plain) -> Problem:
    """As `pratt`, with webs that rise inward."""
    left = n // 2
    web = _panels(n, lambda i: [f"L{i}-U{i + 1}" if i < left else f"U{i}-L{i + 1}"])
    return _bridge(n, a, h, load, [(f"U{i}", a * i) for i in range(1, n)], web)


def warren(n: int, a: Plain, h: Plain, load: Plain) -> Problem:
    """n panels a wide without verticals: top joint Ui above the middle of panel i (from 1)."""
    web = [name for i in range(1, n + 1) for name in (f"L{i - 1}-U{i}", f"U{i}-L{i}")]
    top = [(f"U{i}", Fraction(2 * i - 1, 2) * a) for i in range(1, n + 1)]
    return _bridge(n, a, h, load, top, web)


def fink(panels: int, half: Plain, rise_squared: Plain, load: Plain) -> Problem:
    """A Fink roof of 4 or 8 rafter panels, a load on each inner rafter joint, struts
    square to the rafter.

    `half` is half the span, `rise_squared` the square of the rise (so 30 degrees stays exact).
    Joints, left half ("R" for "L" on the right): L0 the heel, L1, L2, ... up the rafter, T the
    top, LF the foot of the main strut on the tie; with 8 panels LM is the middle of the tie
    from heel to LF and LN the middle of the web tie from LF to T.
    """
    half, rise_squared = Fraction(half), Fraction(rise_squared)
    steps = panels // 2
    foot = (half + rise_squared / half) / 2
    joints: list[tuple[str, Plain | Exact, Plain | Exact]] = [("T", half, root(rise_squared))]
    members, loads = ["LF-RF"], [down("T", load)]
    for side in "LR":

        def put(name: str, x: Fraction, up: Fraction, side: str = side) -> None:
            joints.append((side + name, x if side == "L" else 2 * half - x, root(rise_squared, up)))

        for k in range(steps):
            put(str(k), half * k / steps, Fraction(k, steps))
        put("F", foot, Fraction(0))
        rafter = [f"{side}{k}" for k in range(steps)] + ["T"]
        pairs = list(pairwise(rafter))
        if panels == 4:
            pairs += [("0", "F"), ("1", "F"), ("F", "T")]
        else:
            put("M", foot / 2, Fraction(0))
            put("N", (foot + half) / 2, Fraction(1, 2))
            pairs += [("0", "M"), ("M", "F"), ("1", "M"), ("2", "F"), ("3", "N")]
            pairs += [("2", "M"), ("2", "N"), ("F", "N"), ("N", "T")]
        ends = [[e if e == "T" or e in rafter else side + e for e in pair] for pair in pairs]
        members += ["-".join(pair) for pair in ends]
        loads += [down(name, load) for name in rafter[1:-1]]
    supports = [Support("L0", "pin"), Support("R0", "roller")]
    return plain_problem(joints, members, supports, loads, title="A Fink roof")


SEED_HOUSE: Problem = plain_problem(
    [("A", 0, 0), ("B", 2, 1.5), ("C", 4, 3), ("D", 6, 1.5), ("E", 8, 0), ("F", 4, 0)],
    ("AB", "BC", "CD", "DE", "AF", "FE", "BF", "DF", "CF"),
    [Support("A", "pin"), Support("E", "roller")],
    [down("B", 6), down("C", 8), down("D", 4)],
)
"""A gable of our own, worked by hand: A_x = 0, E_y = 68/8 = 8.5, A_y = 9.5, AB = -9.5*5/3 = -15.83,
AF = 9.5*4/3 = 12.67, BC = CD = -10.83, BF = -5, CF = 5, DF = -3.33, DE = -14.17, FE = 11.33."""
