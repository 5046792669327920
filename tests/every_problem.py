"""Which of the shipped problems does a costly test take? Each, but most of them only with `-m slow`.

`USUAL` is a share with every set, support, unit and level in it; `test_shipped_problems.py` says so.
"""

from __future__ import annotations

import pytest

from tutor.shipped import shipped_problems

FILES = sorted(path for path in shipped_problems().rglob("*.toml") if path.name != "set.toml")
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
        "long-trestle",
    }
)
SHARED = [
    pytest.param(path, id=path.stem, marks=() if path.stem in USUAL else pytest.mark.slow)
    for path in FILES
]
"""Every file, for `parametrize`; those that are not `USUAL` are slow."""
