"""What holds for every file, whatever is in it, and for every problem?"""

from __future__ import annotations

import re
import tomllib
from dataclasses import replace
from fractions import Fraction
from pathlib import Path
from tempfile import TemporaryDirectory
from unittest.mock import patch

from hypothesis import given
from hypothesis import strategies as st
from strategies import trusses
from test_model_defects import CASES, SOUND, text_of

from tutor.model import (
    Defect,
    Load,
    Problem,
    ProblemError,
    Tolerance,
    defects,
    load_problem,
    load_set,
    toml_lines,
    write_problem,
)
from tutor.model.toml_keys import key_lines
from tutor.model.toml_lines import tokens, toml_statements
from tutor.model.toml_read import read_toml
from tutor.notation import Exact

TEXTS = st.text(max_size=60)
WORDS = """[ ] { } " ' = , # . \\ [[ ]] A B joints loads at title 1 -1.5e3 nan true 3/2 AB é order
    2026-01-01 set members supports tolerance level"""
TOML = st.sampled_from(
    [*re.split(r"\s+", WORDS), '"""', "'''", "\n", " ", "\r", "\0", "\ud800", "\u202e"]
)
NUMBERS = st.builds(Fraction, st.integers(-(10**6), 10**6), st.integers(1, 999)).map(Exact.of)


@st.composite
def damaged(draw: st.DrawFn) -> str:
    """A sound or nearly sound file with something cut out and something put in."""
    text = draw(st.sampled_from((SOUND, *map(text_of, CASES[::4]))))
    for _ in range(draw(st.integers(1, 4))):
        start = draw(st.integers(0, len(text)))
        end = draw(st.integers(start, min(len(text), start + 12)))
        text = text[:start] + "".join(draw(st.lists(TOML, max_size=4))) + text[end:]
    return text


ANY_TEXT = st.one_of(TEXTS, st.lists(TOML, max_size=60).map("".join), damaged())


def read_bytes(content: bytes) -> Problem | tuple[Defect, ...]:
    """The problem in these bytes, or the defects for which it is refused."""
    with TemporaryDirectory() as folder:
        path = Path(folder, "x.toml")
        path.write_bytes(content)
        try:
            return load_problem(path)
        except ProblemError as error:
            return error.problems


@given(ANY_TEXT)
def test_no_text_raises_and_every_defect_is_on_a_line_of_the_text(text: str) -> None:
    found = defects(text)
    assert found == defects(text)
    assert [d.line for d in found] == sorted(d.line for d in found)
    for defect in found:
        assert 1 <= defect.line <= text.count("\n") + 1
        assert str(defect).isprintable()
        assert defect.message
        assert defect.cure


@given(st.one_of(st.binary(max_size=200), ANY_TEXT.map(lambda t: t.encode("utf-8", "replace"))))
def test_no_file_raises_anything_but_a_problem_error(content: bytes) -> None:
    read = read_bytes(content)
    if isinstance(read, Problem):
        assert read_bytes(write_problem(read).encode()) == read
    else:
        assert any(defect.severity == "error" for defect in read)


@given(ANY_TEXT)
def test_no_set_file_raises_or_costs_a_problem(text: str) -> None:
    with TemporaryDirectory() as folder:
        Path(folder, "a.toml").write_text(SOUND, "utf-8")
        Path(folder, "set.toml").write_bytes(text.encode("utf-8", "replace"))
        assert len(load_set(folder).problems) == 1


@given(ANY_TEXT)
def test_tokens_and_lines_cover_the_text(text: str) -> None:
    assert "".join(token.text for token in tokens(text)) == text
    for token in tokens(text):
        assert token.line == text.count("\n", 0, token.start) + 1


@given(ANY_TEXT)
def test_a_plain_line_is_cut_as_token_by_token(text: str) -> None:
    with patch.object(toml_lines, "PLAIN", re.compile("(?!)")):
        by_tokens = toml_statements(text)
    assert toml_statements(text) == by_tokens


@given(ANY_TEXT)
def test_a_key_has_the_same_line_whichever_is_asked_for_first(text: str) -> None:
    all_lines = dict(key_lines(toml_statements(text)).items())
    for path, line in list(all_lines.items())[::-3]:
        assert key_lines(toml_statements(text))[path] == line


@given(ANY_TEXT)
def test_a_text_that_toml_reads_has_no_defect_of_form_and_all_its_keys_have_lines(
    text: str,
) -> None:
    document = read_toml(text, "x")
    try:
        tomllib.loads(text)
    except (ValueError, RecursionError):
        assert document.findings.all()
    else:
        assert document.findings.all() == ()
        lines = key_lines(toml_statements(text.replace("\r\n", "\n")))
        assert all((key,) in lines for key in document.data)


@given(
    trusses(),
    st.text(max_size=30),
    st.text(max_size=80),
    st.sampled_from([None, 1, 5]),
    st.lists(st.text(min_size=1, max_size=8), max_size=3),
    st.sampled_from([(), ("reactions",)]),
    st.floats(0, 0.25),
    st.floats(0.25, 0.5),
    NUMBERS.filter(lambda number: number.value != 0),
)
def test_a_written_problem_loads_as_the_same_problem(
    truss: Problem,
    title: str,
    story: str,
    level: int | None,
    topics: list[str],
    known: tuple[str, ...],
    silent: float,
    remark: float,
    size: Exact,
) -> None:
    size = size if size.value > 0 else Exact.of(-(size.fraction or 0))
    problem = replace(
        truss,
        title="T" + title,
        story=story,
        level=level,
        topics=tuple(topics),
        given=known,
        tolerance=Tolerance(silent if silent > 1e-12 else 0.0, remark),
        loads=(*truss.loads, Load(truss.joints[0].name, (("left", size),))),
    )
    text = write_problem(problem)
    read = read_bytes(text.encode())
    assert isinstance(read, Problem)
    assert write_problem(read) == text
    assert read_bytes(text.encode()) == read
    assert (read.members, read.tolerance) == (problem.members, problem.tolerance)
    assert read.supports == problem.supports or any(s.anchor for s in problem.supports)
    for mine, theirs in zip(read.joints, problem.joints, strict=True):
        assert (mine.name, mine.x.text, mine.y.text) == (theirs.name, theirs.x.text, theirs.y.text)
    for one, other in zip(read.loads, problem.loads, strict=True):
        assert one == other


@given(st.text(max_size=40))
def test_any_title_that_loads_is_one_printable_line(title: str) -> None:
    raw = "".join(f"\\U{ord(c):08X}" for c in title if not 0xD800 <= ord(c) < 0xE000)
    read = read_bytes(SOUND.replace("Lamp arm", raw).encode())
    if isinstance(read, Problem):
        assert read.title == read.title.strip()
        assert not any(ord(c) < 32 or 0x7F <= ord(c) < 0xA0 for c in read.title)
        assert read_bytes(write_problem(read).encode()) == read
    else:
        assert [defect.message for defect in read] == ["the title is empty"]
