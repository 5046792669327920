"""What holds for every text, and for every way of writing a line."""

from __future__ import annotations

import math
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path
from typing import Any

from hypothesis import given, reject
from hypothesis import strategies as st
from truss_names import LETTERED, NUMBERED

from tutor.notation import (
    Exact,
    Line,
    Names,
    Reading,
    Unreadable,
    ValueReading,
    one_equation,
    read_heading,
    read_line,
    read_number,
    value_of,
)
from tutor.notation.elements.characters import plain

PIECES = [
    "F_AB",
    "FAC",
    "ab",
    "A_x",
    "Ay",
    "R_D",
    "RD",
    "F_{U1-L2}",
    "U1-L2",
    "U1",
    "L2",
    "-",
    "-",
    "+",
    "*",
    "/",
    "^",
    "**",
    "(",
    ")",
    "[",
    "]",
    "{",
    "}",
    "=",
    "=",
    "1",
    "12",
    "12.5",
    ".5",
    "1,500",
    "12,5",
    "3/5",
    "1.2e3",
    "1e999",
    "cos",
    "sin^-1",
    "sqrt",
    "√",
    "atan",
    "cos²",
    "tan",
    "pi",
    "π",
    "°",
    "deg",
    "rad",
    "kN",
    "m",
    "mm",
    "N",
    "kip",
    "ft",
    "lb",
    "kNm",
    "lb-ft",
    "ΣF_x:",
    "ΣM_A:",
    "Σ",
    ":",
    "T",
    "C",
    "(T)",
    "left",
    "x",
    "θ",
    "F_AE",
    "foo",
    ",",
    ".",
    "'",
    "_",
    "\x1b",
    "\x00",
    "\u200b",
    "😀",
    "²",
    "³",
    "⁻¹",
    "⁹⁹⁹",
    "%",
    "IN",
    "FT",
    "MN",
    "½",
    "＋",
    "Ａ",
    "А",
]
pieces = st.lists(st.sampled_from([*PIECES, " ", " "]), max_size=25)
typed = st.one_of(st.text(max_size=60), pieces.map("".join), pieces.map(" ".join))
truss = st.sampled_from([LETTERED, NUMBERED])


def assert_sound(found: object, text: str) -> None:
    """A complaint that points into the text and can be printed, or finite numbers."""
    if isinstance(found, Unreadable):
        assert found.text == text
        assert 1 <= found.column <= len(text) + 1
        assert 0 <= found.length <= len(text) - found.column + 1
        assert found.message.isprintable()
        assert found.message.endswith(".")
        assert found.caret().replace("\n", "").isprintable()
    elif isinstance(found, Reading):
        for term in found.terms:
            assert abs(term.value) <= 1e12
            assert 0 <= term.radius < math.inf
            assert 0 <= term.span.start < term.span.end <= len(text)
    else:
        assert isinstance(found, ValueReading | Exact)
        assert abs(found.value) <= 1e12


@given(typed, truss, st.sampled_from(["degrees", "radians"]))
def test_any_text_is_read_or_complained_about(text: str, names: Names, angles: Any) -> None:
    assert_sound(one_equation(read_line(text, names, angles=angles)), text)
    assert_sound(value_of(read_line(text, names)), text)
    assert_sound(read_number(text), text)


HANDS = (Path(__file__).parent / "hands" / "lines.txt").read_text("utf-8").splitlines()
TYPED = [row.split(" | ", 2)[2] for row in HANDS if " | " in row]


@st.composite
def mixed(draw: Any) -> str:
    """Pieces of lines as people write them, cut anywhere and put together."""
    parts = []
    for _ in range(draw(st.integers(1, 3))):
        text = draw(st.sampled_from(TYPED))
        start = draw(st.integers(0, len(text)))
        parts.append(text[start : start + draw(st.integers(1, 40))])
        parts.append(draw(st.sampled_from(["", " ", *PIECES])))
    return "".join(parts)


@given(st.one_of(typed, mixed()), truss)
def test_any_text_is_read_as_a_line_and_as_a_heading_or_complained_about(
    text: str, names: Names
) -> None:
    for found in (read_line(text, names, said={"θ": 30.0}), read_heading(text, names)):
        if isinstance(found, Unreadable):
            assert_sound(found, text)
    line = read_line(text, names)
    if isinstance(line, Line):
        spans = [term.span for step in line.steps for side in step.sides for term in side.terms]
        assert all(0 <= span.start <= span.end <= len(text) for span in (*spans, *line.passed))


@given(
    st.sampled_from(["(", "(T) ", " ", "$", "Σ", "θ=", "so ", "-", ". ", "|a", "½", "\\frac{"]),
    st.integers(1, 500),
)
def test_a_long_run_of_one_thing_is_read_or_complained_about(piece: str, times: int) -> None:
    text = (piece * times)[:500]
    found = read_line(text, LETTERED)
    if isinstance(found, Unreadable):
        assert_sound(found, text)


@given(st.text(alphabet="()[]+-^*/=1 FAB_cosqrt.,", min_size=100, max_size=700))
def test_long_texts_are_read_or_complained_about(text: str) -> None:
    assert_sound(one_equation(read_line(text, LETTERED)), text)


@given(st.sampled_from(["(", "[", "-", "cos ", "sqrt(", "2^(", "((1+", "1/("]), st.integers(1, 400))
def test_deep_nesting_is_read_or_complained_about(opening: str, depth: int) -> None:
    text = opening * depth + "F_AB" + ")" * depth + " = 1"
    assert_sound(one_equation(read_line(text, LETTERED)), text)


# a printer of lines whose meaning is known


@dataclass(frozen=True)
class Printed:
    """A term, or a bracket of terms, as text, and what it adds to the left side."""

    text: str
    means: dict[str | None, Fraction]


FACTORS = [
    ("cos 60", Fraction(1, 2)),
    ("sin(30)", Fraction(1, 2)),
    ("tan 45°", Fraction(1)),
    ("cos(atan(3/4))", Fraction(4, 5)),
    ("sin(tan^-1(3/4))", Fraction(3, 5)),
    ("sqrt(4)", Fraction(2)),
    ("√9", Fraction(3)),
    ("2^2", Fraction(4)),
    ("3²", Fraction(9)),
    ("sin^2 30", Fraction(1, 4)),
    ("(1/2 + 1/4)", Fraction(3, 4)),
    ("4/sqrt(4^2 + 3^2)", Fraction(4, 5)),
]
UNITS = [("kN", Fraction(1)), ("N", Fraction(1, 1000)), ("lb", Fraction(44482216152605, 10**16))]


@st.composite
def numbers(draw: Any) -> tuple[str, Fraction]:
    """A positive number in one of its spellings."""
    top, bottom = draw(st.integers(1, 99)), draw(st.sampled_from([1, 1, 2, 3, 4, 5, 8, 13]))
    value = Fraction(top, bottom)
    spellings = [
        f"{top}/{bottom}",
        f"({top}/{bottom})",
        f"{top} / {bottom}",
        f"{2 * top}/{2 * bottom}",
    ]
    if bottom == 1:
        spellings += [str(top), f"({top})", f"{top}.0", f"{top}.", f"{top}e0", f"({top + 3} - 3)"]
    if bottom in (2, 4, 5, 8):
        decimal = f"{top / bottom:.3f}"
        spellings += [decimal, f"{top / bottom:.4f}", decimal.lstrip("0")]
    text = draw(st.sampled_from(spellings))
    if draw(st.booleans()):
        factor, size = draw(st.sampled_from(FACTORS))
        times = draw(st.sampled_from(["*", " * ", " ", "·", " × "]))
        if times == " " and factor[0].isdigit():
            times = "*"
        text, value = f"{text}{times}{factor}", value * size
    return text, value


@st.composite
def spellings(draw: Any) -> tuple[str, str]:
    """An unknown and one way to write it."""
    name = draw(st.sampled_from(LETTERED.unknowns))
    if "_" in name:
        base, sub = name.split("_")
        return name, draw(st.sampled_from([name, base + sub, f"{base}_{{{sub}}}"]))
    pair = draw(st.sampled_from([name, name[::-1]]))
    letter = draw(st.sampled_from("FSNT"))
    forms = [
        f"{letter}_{pair}",
        f"{letter}_{{{pair}}}",
        f"{letter}{pair}",
        pair,
        f"F_{pair.lower()}",
    ]
    text = draw(st.sampled_from(forms))
    return name, text if text.lower() not in ("in", "sin", "tin", "ni") else f"F_{pair}"


@st.composite
def terms(draw: Any) -> Printed:
    """One term without a sign in front of it."""
    text, value = draw(numbers())
    if draw(st.integers(0, 3)) == 0:
        if draw(st.booleans()) and "/" not in text:
            unit, size = draw(st.sampled_from(UNITS))
            return Printed(f"{text} {unit}", {None: value * size})
        return Printed(text, {None: value})
    name, spelled = draw(spellings())
    forms = [f"{text} {spelled}", f"{text}*{spelled}", f"{spelled}*{text}", f"({text})({spelled})"]
    if "/" not in text and "." not in text:
        forms += [f"{spelled}({text})", f"{spelled} × {text}"]
    return Printed(draw(st.sampled_from(forms)), {name: value})


@st.composite
def sums(draw: Any, most: int = 3) -> Printed:
    """Terms and brackets of terms with signs, in any order."""
    text, means = "", {None: Fraction(0)}
    for _ in range(draw(st.integers(1, most))):
        part = draw(terms())
        if most == 3 and draw(st.integers(0, 4)) == 0:
            inner = draw(sums(most=2))
            number, size = draw(numbers())
            part = draw(
                st.sampled_from(
                    [
                        Printed(f"{number}*({inner.text})", _scaled(inner.means, size)),
                        Printed(f"[{inner.text}] × ({number})", _scaled(inner.means, size)),
                        Printed(f"({inner.text})/({number})", _scaled(inner.means, 1 / size)),
                        Printed(f"({inner.text})", inner.means),
                    ]
                )
            )
        sign = draw(st.sampled_from(["+", "-", "−"]))
        space = draw(st.sampled_from(["", " ", "  "]))
        if text or sign != "+":
            text += f"{space}{sign}{space}"
        text += part.text
        for name, value in part.means.items():
            means[name] = means.get(name, Fraction(0)) + (value if sign == "+" else -value)
    return Printed(text, means)


def read_printed(text: str) -> tuple[Reading, ...]:
    """What a printed line says, in every way that is as good: `(2) cos 60 = 1` may be number 2."""
    line = read_line(text, LETTERED)
    if isinstance(line, Unreadable) and line.code in ("too-many", "too-long"):
        reject()
    assert isinstance(line, Line), (text, line)
    return tuple(one.result.links[0] for one in (line, *line.alternatives))


def _scaled(means: dict[str | None, Fraction], by: Fraction) -> dict[str | None, Fraction]:
    return {name: value * by for name, value in means.items()}


@given(sums(), sums(), st.sampled_from(["", "ΣF_x: ", "sum of moments about A : "]))
def test_the_reading_of_a_printed_line_is_the_line(
    left: Printed, right: Printed, label: str
) -> None:
    text = f"{label}{left.text} = {right.text}"
    expected = dict(left.means)
    for name, value in right.means.items():
        expected[name] = expected.get(name, Fraction(0)) - value
    assert any(says(reading, expected) for reading in read_printed(text)), text


def says(reading: Reading, expected: dict[str | None, Fraction]) -> bool:
    """Whether a reading is what was printed, quickly and exactly."""
    if set(reading.names) | {None} != set(expected):
        return False
    form = reading.exact_form()
    return all(
        math.isclose(reading.coefficient(name)[0], value, rel_tol=1e-9, abs_tol=1e-9)
        and Fraction(int(form[name].p), int(form[name].q)) == value
        for name, value in expected.items()
    )


@given(sums(), sums())
def test_a_span_holds_the_name_of_its_term(left: Printed, right: Printed) -> None:
    text = f"{left.text} = {right.text}"
    for term in (term for reading in read_printed(text) for term in reading.terms):
        inside = plain(text[term.span.start : term.span.end]).upper()
        if term.name is not None:
            letters = term.name.replace("_", "").upper()
            bare = inside.replace("_", "").replace("{", "").replace("}", "")
            assert letters in bare or letters[::-1] in bare


constants = st.recursive(
    st.integers(0, 99).map(str) | st.decimals(0, 99, places=2).map(str) | st.just("pi rad"),
    lambda inner: st.one_of(
        st.tuples(
            st.sampled_from(["{}+{}", "({} - {})", "({})*({})", "({})/({})"]), inner, inner
        ).map(lambda parts: parts[0].format(*parts[1:])),
        st.tuples(
            st.sampled_from(
                ["sin({})", "cos({})", "tan({})", "sqrt({})", "atan({})", "cos(asin({}))", "({})^2"]
            ),
            inner,
        ).map(lambda parts: parts[0].format(parts[1])),
    ),
    max_leaves=5,
)


@given(constants)
def test_the_fast_way_and_the_exact_way_agree(text: str) -> None:
    reading = one_equation(read_line(f"({text}) F_AB = 0", LETTERED))
    if isinstance(reading, Unreadable):
        return
    fast, exact = reading.coefficient("AB")[0], complex(reading.exact_form()["AB"].evalf(20))
    assert abs(exact - fast) <= 1e-6 * max(1.0, abs(fast))


@given(st.integers(1, 999), st.integers(0, 3), st.booleans())
def test_the_true_number_lies_in_the_interval_of_its_rounding(
    thousandths: int, places: int, angle: bool
) -> None:
    true = thousandths / 10
    typed = f"{true:.{places}f}"
    function = math.cos if angle else (lambda x: math.sqrt(math.degrees(x) + 1))
    text = f"F_AB cos({typed})" if angle else f"F_AB sqrt({typed} + 1)"
    reading = one_equation(read_line(f"{text} = 0", LETTERED))
    assert isinstance(reading, Reading)
    value, radius = reading.coefficient("AB")
    if radius:
        assert abs(function(math.radians(true)) - value) <= radius * 1.001 + 1e-12


@given(typed)
def test_plain_characters_stay_where_they_were(text: str) -> None:
    assert len(plain(text)) == len(text)
    assert plain(plain(text)) == plain(text)
