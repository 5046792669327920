"""Does the reference on problem files say what is so? Its examples are read and run."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from strategies import make_truss

from tutor import variant
from tutor.model import defects, load_problem, load_set, write_problem
from tutor.model.read import KEYS
from tutor.model.read_vary import KEYS as VARY_KEYS
from tutor.model.read_words import FORCES, LENGTHS
from tutor.model.set_file import KEYS as SET_KEYS
from tutor.statics import solve

TEXT = (Path(__file__).parents[1] / "docs" / "problem-files.md").read_text("utf-8")
BLOCKS = [(kind, body) for kind, body in re.findall(r"^```(.+)\n([\s\S]*?)^```$", TEXT, re.M)]
PROBLEMS = [body for kind, body in BLOCKS if kind == "toml"]


def code(kind: str) -> str:
    (body,) = (body for name, body in BLOCKS if name == kind)
    return body


def test_the_reference_has_problems_a_set_and_a_script() -> None:
    assert len(PROBLEMS) >= 3


@pytest.mark.parametrize("text", PROBLEMS, ids=lambda text: text.splitlines()[0])
def test_every_problem_of_the_reference_loads_stands_and_is_written_back(
    tmp_path: Path, text: str
) -> None:
    assert defects(text) == ()
    path = tmp_path / "arm.toml"
    path.write_text(text, "utf-8")
    problem = load_problem(path)
    assert solve(problem)
    path.write_text(write_problem(problem), "utf-8")
    assert load_problem(path) == problem


def test_the_set_of_the_reference_orders_its_files(tmp_path: Path) -> None:
    (tmp_path / "set.toml").write_text(code("toml set"), "utf-8")
    for name in ("boom", "gangway", "lamp-arm"):
        text = PROBLEMS[0].replace("Lamp arm over the ferry steps", name)
        (tmp_path / f"{name}.toml").write_text(text, "utf-8")
    read = load_set(tmp_path)
    assert not read.broken
    assert [problem.title for problem in read.problems] == ["lamp-arm", "gangway", "boom"]
    assert read.title == "First steps at the harbour"


def test_the_rules_of_the_reference_are_those_of_a_set(tmp_path: Path) -> None:
    (tmp_path / "set.toml").write_text(code("toml set rules"), "utf-8")
    for name in ("boom", "gangway", "lamp-arm"):
        (tmp_path / f"{name}.toml").write_text(PROBLEMS[0], "utf-8")
    read = load_set(tmp_path)
    assert not read.broken
    assert read.rules.after == {"boom": ("lamp-arm", "gangway")}
    assert {key for key in SET_KEYS if f"{key} = " not in code("toml set rules")} == {"order"}


def test_every_key_of_a_set_and_of_vary_stands_in_the_reference() -> None:
    for key in (*SET_KEYS, *VARY_KEYS):
        assert re.search(rf"^\| `{key}` \|", TEXT, re.M), key


def test_the_problem_of_the_reference_that_varies_does_so_for_a_class(tmp_path: Path) -> None:
    (text,) = (body for body in PROBLEMS if "[vary]" in body)
    (tmp_path / "hoist.toml").write_text(text, "utf-8")
    found = {
        write_problem(variant(tmp_path / "hoist.toml", student=f"s{i}", set="week-3"))
        for i in range(30)
    }
    assert len(found) > 8


def test_the_script_of_the_reference_runs(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "arm.toml").write_text(PROBLEMS[0], "utf-8")
    (tmp_path / "broken.toml").write_text(PROBLEMS[0].replace("12", "0"), "utf-8")
    monkeypatch.chdir(tmp_path)
    exec(compile(code("python"), "problem-files.md", "exec"), {})
    first, second = capsys.readouterr().out.splitlines()
    assert first.startswith("broken.toml:17: the push down of the load at C is 0")
    assert second


def test_every_key_and_unit_stands_in_the_reference() -> None:
    table = TEXT[: TEXT.index("## Joints")]
    for key in KEYS:
        assert re.search(rf"^\| `\[*{key}\]*` \|", table, re.M), key
    for unit in (*FORCES, *LENGTHS):
        assert f'`"{unit}"`' in table


def test_the_line_for_editors_is_the_one_that_is_written_and_names_what_is_printed() -> None:
    first, title = code("toml start").splitlines()
    assert write_problem(make_truss(7, 5)).splitlines()[0] == first
    assert defects(PROBLEMS[0].replace(title, f"{first}\n{title}")) == ()
    name = first.removeprefix("#:schema ./")
    assert f"pinjoint schema > {name}" in TEXT


def test_every_support_of_the_reference_puts_the_unknowns_it_says(tmp_path: Path) -> None:
    rows = re.findall(r"^\| `([A-C] = [^`]+)` \|.*\| ([^|]+) \|$", TEXT, re.M)
    assert len(rows) >= 5
    for written, unknowns in rows:
        text = PROBLEMS[0].replace('A = { roller = 0 }\nB = "pin"', written)
        (tmp_path / "a.toml").write_text(text, "utf-8")
        names = [reaction.name for reaction in load_problem(tmp_path / "a.toml").reactions]
        assert names == re.findall(r"`(\w+)`", unknowns)
