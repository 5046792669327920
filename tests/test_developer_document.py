"""Is the developers' page true to the code? What it names is there, and what is there is named."""

from __future__ import annotations

import re
import tomllib
from pathlib import Path

import pytest

from tutor.lesson import STEPS
from tutor.lesson.steps import STEP

ROOT = Path(__file__).parents[1]
TEXT = (ROOT / "DEVELOPERS.md").read_text("utf-8")
ROOMS = [path for path in (ROOT / "tutor").iterdir() if (path / "__init__.py").exists()]


def section(title: str) -> str:
    return TEXT.partition(f"## {title}\n")[2].partition("\n## ")[0]


@pytest.mark.parametrize("room", ROOMS, ids=lambda path: path.name)
def test_every_room_is_on_the_map_once(room: Path) -> None:
    assert section("The rooms").count(f"\n| `tutor/{room.name}/` |") == 1


def test_every_room_of_the_notation_is_on_its_map_once() -> None:
    inside = [
        path for path in (ROOT / "tutor/notation").iterdir() if (path / "__init__.py").exists()
    ]
    assert len(inside) > 5
    assert all(section("How to add").count(f"\n| `{path.name}/` |") == 1 for path in inside)


def test_every_module_beside_the_rooms_is_on_the_map() -> None:
    for path in (ROOT / "tutor").glob("*.py"):
        assert path.name == "__init__.py" or f"`tutor/{path.name}`" in section("The rooms")


def test_every_dependency_has_its_reason() -> None:
    project = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]
    wanted = [*project["dependencies"], *project["optional-dependencies"]["test"]]
    for each in wanted:
        name = re.match(r"[\w-]+", each)[0]
        assert re.search(rf"^\|[^|]*\b{name}\b[^|]*\| \w", section("Dependencies"), re.M), name


def test_every_file_named_is_there() -> None:
    named = re.findall(r"`((?:\.ci|docs|problems|tests|tutor)/[\w./-]*)`", TEXT)
    named += [f"tutor/{path}" for path in re.findall(r"`(\w+/\w+\.(?:py|lark))`", TEXT)]
    assert len(named) > 25
    built = {"tutor/problems/"}
    for path in set(named) - built:
        assert (
            (ROOT / path).exists()
            or (ROOT / path.removeprefix("tutor/")).exists()
            or (ROOT / path.replace("tutor/steps", "tutor/lesson/steps")).exists()
        ), path


def test_every_module_named_alone_is_there() -> None:
    there = {path.name for path in (ROOT / "tutor").rglob("*.py")}
    there |= {path.name for path in (ROOT / "tests").rglob("*.py")}
    named = set(re.findall(r"`(\w+\.py)`", TEXT))
    assert len(named) > 30
    assert named <= there, named - there


def test_every_shared_file_of_the_tests_is_named() -> None:
    shared = {p.name for p in (ROOT / "tests").glob("*.py") if not p.name.startswith("test_")}
    for name in shared - {"conftest.py"}:
        assert f"`{name}`" in section("Where a test goes"), name


def test_every_step_has_its_file_and_entry() -> None:
    assert tuple(STEP) == STEPS
    for step in STEPS:
        assert (ROOT / f"tutor/lesson/steps/{step.replace(' ', '_')}.py").exists()


def test_every_function_named_on_the_way_of_a_line_stands_in_the_file_before_it() -> None:
    rows = section("The way of a typed line")
    named = re.findall(r"`([\w/]+\.py)`: `(\w+)`", rows)
    assert len(named) > 8
    for file, name in named:
        text = (ROOT / "tutor" / file).read_text("utf-8")
        assert re.search(rf"^ *(?:def|class) {name}\b", text, re.M), (file, name)
