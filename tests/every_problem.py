"""Which of the shipped problems does a costly test take? Each, but most of them only with `-m slow`.

`USUAL` is a share with every set, support, unit and level in it; `test_shipped_problems.py` says so.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from tutor.model import Problem, load_problem
from tutor.shipped import shipped_problems

FILES = sorted(path for path in shipped_problems().rglob("*.toml") if path.name != "set.toml")


@cache
def problem_of(path: Path) -> Problem:
    """A shipped problem, read once."""
    return load_problem(path)


FORCES = [path for path in FILES if problem_of(path).truss in (None, "determinate")]
"""Those of which the forces are asked for."""
USUAL = frozenset(
    {
        "lamp-arm",
        "drying-rail",
        "linkspan",
        "mirror-prop",
        "radio-mast",
        "fern-ramp",
        "drill-clamp",
        "wire-girder",
        "fly-tower",
        "guild-hall",
        "farm-bridge",
        "log-derrick",
        "cabin-rack",
        "prompt-box",
        "hall-roof",
        "long-trestle",
    }
)
SHARED = [
    pytest.param(path, id=path.stem, marks=() if path.stem in USUAL else pytest.mark.slow)
    for path in FORCES
]
"""Every file of `FORCES`, for `parametrize`; those that are not `USUAL` are slow."""
