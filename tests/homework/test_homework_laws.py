"""What must hold of every review: it never raises, and it gives nothing away."""

from __future__ import annotations

import re
from datetime import UTC, datetime
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from lines import figures
from strategies import make_truss
from students_work import Homework, homework

from tutor.homework import LEVELS, Review, hint, markdown, read_table, review, right_lines
from tutor.model.caution import CAUTION
from tutor.statics import solve

WHEN = datetime(2031, 5, 6, 7, 8, tzinfo=UTC)
ANYTHING = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=30),
    lambda inner: (
        st.lists(inner, max_size=4)
        | st.dictionaries(st.text(max_size=6), inner, max_size=4)
        | st.tuples(inner, inner)
    ),
    max_leaves=12,
)


def said(done: Homework, result: Review) -> str:
    """Every text that may be shown before an answer is asked for, and the review as Python shows it."""
    hints = [hint(result, level) for level in LEVELS]
    report = markdown(done.problem, result, WHEN).replace("2031-05-06 07:08", "")
    closing = [closure.said for closure in result.closures]
    shown = "\n".join([repr(result), str(result), result.said, report, *hints, *closing])
    return re.sub(r"name=\d+|Span\(start=\d+, end=\d+\)|- line \d+:", "", shown)


def numbers(text: str) -> set[str]:
    return set(re.findall(r"(?<![A-Za-z\d.])\d+(?:\.\d+)?(?![\d.])", text))


@given(st.integers(0, 10**9), st.sampled_from((1, 2)), st.sampled_from(("", "order", "lines")))
@settings(max_examples=100)
def test_no_true_value_is_told(seed: int, mistakes: int, part: str) -> None:
    both = homework(seed, mistakes)
    if both is None:
        return
    done = both[0]
    rng = Random(seed)
    more = {"order": done.order} if part == "order" else {}
    if part == "lines":
        more = {"lines": done.written_lines(rng)}
    work = done.work(**more)
    result = review(done.problem, work)
    told = numbers(said(done, result)) - numbers(repr(done.problem)) - numbers(repr(work))
    own = {f"{abs(v):g}" for v in done.values.values()}
    for name, value in solve(done.problem).values.items():
        for count in (3, 4, 5, 6, 12, 17):
            text = figures(abs(value), count)
            hidden = {text, text.rstrip("0").rstrip("."), repr(abs(value))} - own - {"0", "1"}
            assert not hidden & told, (name, hidden & told)


@given(st.integers(0, 10**9))
@settings(max_examples=50)
def test_a_report_and_three_hints_hold_no_number_of_a_force_at_all(seed: int) -> None:
    both = homework(seed)
    if both is None:
        return
    done = both[0]
    result = review(done.problem, done.work())
    given_numbers = numbers(repr(done.problem)) | {"0.5", "90"}
    for level in LEVELS:
        assert numbers(hint(result, level)) <= given_numbers
    report = markdown(done.problem, result, WHEN)
    body = report.replace("2031-05-06 07:08", "").replace(done.problem.title, "")
    assert numbers(body) <= {str(n) for n in range(40)}
    assert CAUTION in report


@given(ANYTHING)
@settings(max_examples=200)
def test_no_work_makes_the_review_raise(work: object) -> None:
    assert isinstance(review(make_truss(7, 5), work), Review)


@given(
    st.dictionaries(
        st.sampled_from(("reactions", "forces", "lines", "senses", "order")), ANYTHING, max_size=5
    )
)
@settings(max_examples=200)
def test_no_part_of_the_work_makes_the_review_raise(work: object) -> None:
    assert isinstance(review(make_truss(11, 6), work), Review)


@given(st.integers(0, 10**6), st.data())
@settings(max_examples=100)
def test_any_values_at_all_are_reviewed(seed: int, data: st.DataObject) -> None:
    problem = make_truss(seed, data.draw(st.integers(3, 8)))
    value = st.one_of(
        st.floats(-1e6, 1e6),
        st.integers(-(10**6), 10**6),
        st.sampled_from(("", "-", "12 C", "7,5 T", "3/0", "x", "1e99", "0", "-0", "12 kN left")),
    )
    names = data.draw(st.lists(st.sampled_from(problem.unknowns), unique=True))
    forces = {name: data.draw(value) for name in names}
    result = review(problem, {"forces": forces, "reactions": forces})
    states = {f.name: f.state for f in result.findings}
    assert set(states.values()) <= {"right", "wrong", "follows", "unchecked"}
    assert (result.first is None) == (not {"wrong", "follows"} & set(states.values()))
    hint(result, "look")
    right_lines(problem, {"forces": forces}, result)


@given(st.text(max_size=200))
@settings(max_examples=200)
def test_no_table_raises(text: str) -> None:
    problem = make_truss(7, 5)
    pasted = read_table(problem, text)
    assert isinstance(review(problem, pasted.work), Review)
    for refused in pasted.refused:
        assert refused.message.isprintable()
        assert refused.text.isprintable()


@pytest.mark.parametrize("seed", range(20))
def test_what_is_left_blank_makes_nothing_wrong_of_what_is_right(seed: int) -> None:
    both = homework(seed)
    if both is None:
        return
    right = both[1]
    rng = Random(seed)
    work = right.work()
    for part in ("reactions", "forces"):
        entries = work[part]
        assert isinstance(entries, dict)
        for name in list(entries):
            if rng.random() < 0.4:
                entries[name] = rng.choice(("", None, "-"))
    result = review(right.problem, work)
    assert {f.state for f in result.findings} <= {"right"}
    assert result.first is None
