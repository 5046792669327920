"""What is not an equation gets one sentence with a place and a cure, and nothing raises."""

from __future__ import annotations

from random import Random

import pytest
from broken import (
    COMBINING,
    HOSTILE,
    MARKS,
    assert_one_sentence,
    broken,
    confused,
    marked,
    prefixes,
)
from lines import Style, abouts, pieces, written
from strategies import make_truss
from truss_names import CLASHING

from tutor.judge import M
from tutor.notation import (
    Names,
    Reading,
    Unreadable,
    ValueReading,
    one_equation,
    read_line,
    value_of,
)
from tutor.notation.elements.characters import UNSEEN

LINES = 50


def right(seed: int) -> tuple[str, Names]:
    """A right line about a truss of its own, and the names of that truss."""
    rng = Random(seed)
    problem = make_truss(rng.randrange(10**6), rng.randint(3, 9))
    about = rng.choice(abouts(problem))
    style = Style(figures=rng.choice((3, 4, 5)), units=not isinstance(about, M))
    return written(rng, problem, pieces(problem, about, {}, {}), style), problem.names


RIGHT = [right(seed) for seed in range(LINES)]


def said(text: str, names: Names) -> Reading | Unreadable:
    """The reading of a text, or the one sentence about it; the same as a value, where it is none."""
    value = value_of(read_line(text, names))
    if not isinstance(value, ValueReading):
        assert_one_sentence(value, text)
    found = one_equation(read_line(text, names))
    if isinstance(found, Unreadable):
        assert_one_sentence(found, text)
    return found


def test_the_lines_that_are_broken_are_right_before() -> None:
    assert all(isinstance(one_equation(read_line(text, names)), Reading) for text, names in RIGHT)


def test_two_thousand_broken_lines_get_one_sentence_each() -> None:
    found = [
        said(broken(seed, RIGHT[seed % LINES][0]), RIGHT[seed % LINES][1]) for seed in range(2000)
    ]
    assert sum(isinstance(one, Unreadable) for one in found) > 1200


@pytest.mark.slow
@pytest.mark.parametrize("start", range(2000, 42_000, 4000))
def test_forty_thousand_broken_lines_get_one_sentence_each(start: int) -> None:
    for seed in range(start, start + 4000):
        text, names = RIGHT[seed % LINES]
        said(broken(seed, text), names)


@pytest.mark.parametrize("text", HOSTILE)
def test_a_hostile_line_gets_one_sentence(text: str) -> None:
    names = RIGHT[0][1]
    assert_one_sentence(one_equation(read_line(text, names)), text)  # type: ignore[arg-type]


@pytest.mark.parametrize(("text", "names"), RIGHT)
def test_every_half_typed_line_is_read_or_gets_one_sentence(text: str, names: Names) -> None:
    found = [said(half, names) for half in prefixes(text)]
    before_the_sign = text.index("=") + 1
    assert all(isinstance(one, Unreadable) for one in found[:before_the_sign])


@pytest.mark.parametrize(("text", "names"), RIGHT)
def test_a_look_alike_is_read_as_what_it_looks_like_or_named(text: str, names: Names) -> None:
    plain = one_equation(read_line(text, names))
    assert isinstance(plain, Reading)
    rng = Random(text)
    for _ in range(20):
        other = confused(rng, text)
        found = said(other, names)
        if isinstance(found, Reading):
            assert found.terms == plain.terms, other


@pytest.mark.parametrize("mark", MARKS + COMBINING)
def test_a_mark_that_shows_nothing_is_named_unless_it_says_nothing_either(mark: str) -> None:
    rng = Random(ord(mark))
    for text, names in RIGHT[:10]:
        typed = marked(rng, text, mark)
        found = said(typed, names)
        if UNSEEN.sub("", typed) == text:
            same = said(text, names)
            assert isinstance(found, Reading), typed
            assert isinstance(same, Reading), text
            assert [t[:3] for t in found.terms] == [t[:3] for t in same.terms]
        else:
            assert isinstance(found, Unreadable), typed
            assert found.text[found.column - 1 : found.column - 1 + found.length].count(mark), found


@pytest.mark.parametrize("text", ["M_x + 3*R_{C[} = 12", "R_{C(} = 3"])
def test_a_bracket_within_a_name_hides_no_equals_sign(text: str) -> None:
    found = said(text, CLASHING)
    assert isinstance(found, Unreadable)
