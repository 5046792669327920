"""Does the judge's catalogue reach the homework through one module alone?"""

from __future__ import annotations

import ast
from pathlib import Path

import pytest

import tutor.homework

ROOM = Path(tutor.homework.__path__[0])
CATALOGUE = ("mistakes", "kind", "edits", "true_equation", "explain", "search", "costs")
DOOR = "slips.py"


@pytest.mark.parametrize("path", sorted(ROOM.glob("*.py")), ids=lambda path: path.name)
def test_only_the_door_knows_how_the_judge_looks_for_mistakes(path: Path) -> None:
    modules = {
        node.module or ""
        for node in ast.walk(ast.parse(path.read_text("utf-8")))
        if isinstance(node, ast.ImportFrom)
    }
    inside = {m for m in modules if m.startswith(tuple(f"tutor.judge.{c}" for c in CATALOGUE))}
    assert bool(inside) == (path.name == DOOR), inside
