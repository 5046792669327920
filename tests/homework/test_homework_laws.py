"""What must hold of every review: it never raises, and it gives nothing away."""

from __future__ import annotations

import contextlib
import io
import logging
import re
from collections.abc import Callable, Mapping
from datetime import UTC, datetime
from random import Random
from typing import cast

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from lines import figures
from strategies import make_truss
from students_work import Homework, homework

from tutor.figure import to_words, truss_figure
from tutor.homework import (
    LEVELS,
    Paper,
    Review,
    hint,
    lines_of,
    markdown,
    read_table,
    review,
    right_lines,
    write_line,
)
from tutor.homework.report import BesideCheck
from tutor.judge import Fx, Fy, M
from tutor.model import Problem
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
    return uncounted(re.sub(r"name=\d+|Span\(start=\d+, end=\d+\)", "", shown))


def uncounted(text: str) -> str:
    """A text without the numbers of its lines, which say nothing of a force."""
    return re.sub(r"^- Line \d+(?=,| is | was )", "", text, flags=re.MULTILINE)


def numbers(text: str) -> set[str]:
    return set(re.findall(r"(?<![A-Za-z\d.])\d+(?:\.\d+)?(?![\d.])", text))


PARTS = ("", "order", "lines", "no reactions", "blanks", "blanks and order")


def handed_in(done: Homework, part: str, rng: Random) -> dict[str, object]:
    """The homework with its order or lines, or with something left blank."""
    work = done.work()
    if "order" in part:
        work["order"] = done.order
    if part == "lines":
        work["lines"] = done.written_lines(rng)
    if part == "no reactions":
        del work["reactions"]
    if "blanks" in part:
        for name in ("reactions", "forces"):
            entries = cast("dict[str, str]", work[name])
            work[name] = {n: v for n, v in entries.items() if rng.random() > 0.3}
    return work


def kept(problem: Problem, work: Mapping[str, object]) -> str:
    """The lines of the file in which a homework is kept."""
    paper = Paper()
    for name in ("reactions", "forces"):
        for unknown, text in cast("dict[str, str]", work.get(name, {})).items():
            paper = write_line(problem, paper, f"{unknown} = {text}").paper
    return "\n".join(lines_of(problem, paper))


def watched(call: Callable[[], Review]) -> tuple[Review, str]:
    """What comes of a review, and whatever it wrote to a log or an output beside it."""
    beside = io.StringIO()
    handler = logging.StreamHandler(beside)
    root = logging.getLogger()
    level = root.level
    root.addHandler(handler)
    root.setLevel(logging.DEBUG)
    try:
        with contextlib.redirect_stdout(beside), contextlib.redirect_stderr(beside):
            return call(), beside.getvalue()
    finally:
        root.removeHandler(handler)
        root.setLevel(level)


@given(st.integers(0, 10**9), st.sampled_from((1, 2)), st.sampled_from(PARTS))
@settings(max_examples=10)
def test_no_true_value_is_told(seed: int, mistakes: int, part: str) -> None:
    both = homework(seed, mistakes)
    if both is None:
        return
    done = both[0]
    work = handed_in(done, part, Random(seed))
    result, beside = watched(lambda: review(done.problem, work))
    assert beside == ""
    written = numbers(repr(done.problem)) | numbers(repr(work))
    told = numbers(said(done, result) + kept(done.problem, work)) - written
    own = {f"{abs(v):g}" for v in numbers_of(work)}
    for name, value in solve(done.problem).values.items():
        for count in (3, 4, 5, 6, 12, 17):
            text = figures(abs(value), count)
            hidden = {text, text.rstrip("0").rstrip("."), repr(abs(value))} - own
            assert not hidden & told, (name, hidden & told)


def numbers_of(work: Mapping[str, object]) -> list[float]:
    return [float(text) for text in numbers(repr(work))]


@given(st.integers(0, 10**9), st.sampled_from(("no reactions", "blanks")))
@settings(max_examples=10)
def test_a_row_left_blank_says_as_little_as_one_that_is_not_there(seed: int, part: str) -> None:
    both = homework(seed)
    if both is None:
        return
    done = both[0]
    work = handed_in(done, part, Random(seed))
    full = {
        "reactions": dict.fromkeys((r.name for r in done.problem.reactions), ""),
        "forces": dict.fromkeys((m.name for m in done.problem.members), ""),
    }
    for name, rows in full.items():
        rows.update(cast("dict[str, str]", work.get(name, {})))
    result = review(done.problem, full)
    assert all(str(f.name) in repr(work) for f in result.findings)
    assert said(done, result) == said(done, review(done.problem, work))


@given(st.integers(0, 10**9))
@settings(max_examples=10)
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
    assert not numbers(body)
    truss = to_words(truss_figure(done.problem))
    beside = BesideCheck(truss, lines=[Fx(), Fy()], hints=(1, 2, 3))
    told = markdown(done.problem, result, WHEN, beside)
    rest = told.replace("2031-05-06 07:08", "").replace(done.problem.title, "")
    rest = uncounted(rest).replace("the principle (1), the place (2), the right line (3)", "")
    assert numbers(rest) <= numbers(" ".join(truss))
    assert CAUTION in report


FIVE_JOINTS, SIX_JOINTS = make_truss(7, 5), make_truss(11, 6)


@given(ANYTHING)
@settings(max_examples=66)
def test_no_work_makes_the_review_raise(work: object) -> None:
    assert isinstance(review(FIVE_JOINTS, work), Review)


@given(
    st.dictionaries(
        st.sampled_from(("reactions", "forces", "lines", "senses", "order")), ANYTHING, max_size=5
    )
)
@settings(max_examples=66)
def test_no_part_of_the_work_makes_the_review_raise(work: object) -> None:
    assert isinstance(review(SIX_JOINTS, work), Review)


@given(st.integers(0, 10**6), st.data())
@settings(max_examples=33)
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
@settings(max_examples=66)
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
    true = solve(right.problem).values
    largest = max(map(abs, true.values()))
    for finding in result.findings:
        name = str(finding.name)
        size = abs(true[name])
        most = 0.02 * size if size > 1e-6 * largest else 0.005 * largest
        far = abs(right.values[name] - true[name]) > most + 1e-6 * largest
        assert finding.state == "right" or (far and finding.state == "unchecked")
    assert result.first is None


@given(st.integers(0, 10**9), st.sampled_from((1, 2)))
@settings(max_examples=20)
def test_no_hint_speaks_of_a_line_where_none_was_typed(seed: int, mistakes: int) -> None:
    both = homework(seed, mistakes)
    if both is None:
        return
    done = both[0]
    result = review(done.problem, done.work())
    texts = [hint(result, level) for level in LEVELS]
    texts += [finding.cause.text for finding in result.findings if finding.cause is not None]
    for text in texts:
        assert not re.search(r"\b(this|your) line\b", text, re.IGNORECASE), text
    look = hint(result, "look")
    assert look.count(f"t joint {result.first}") <= 1 or "not at joint" in look, look


@given(st.integers(0, 10**9))
@settings(max_examples=20)
def test_no_values_are_explained_by_moments_about_a_joint_without_support_or_load(
    seed: int,
) -> None:
    both = homework(seed)
    if both is None:
        return
    problem = both[0].problem
    usual = {s.joint for s in problem.supports} | {load.joint for load in problem.loads}
    result = review(problem, both[0].work())
    assert all(a.about.at in usual for a in result.accounts if isinstance(a.about, M))
