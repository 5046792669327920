"""Which loads act elsewhere than on the body that a line is about?"""

from __future__ import annotations

import math
from collections.abc import Collection

from tutor.judge.same import are_same
from tutor.model import Problem


def loaded_elsewhere(problem: Problem, own: Collection[str]) -> list[str]:
    """The joints with a load that are none of one's `own`, those next to these before the others."""
    near = {
        m.other(joint) for joint in own if joint in problem.joint for m in problem.meeting[joint]
    }
    loaded = dict.fromkeys(load.joint for load in problem.loads if load.joint not in own)
    return sorted(loaded, key=lambda joint: joint not in near)


def is_load_elsewhere(problem: Problem, own: Collection[str], size: float) -> bool:
    """Whether a load at none of one's `own` joints has this size, or a component that has."""
    loads = (load.vector for load in problem.loads if load.joint not in own)
    parts = (part for x, y in loads for part in (abs(x), abs(y), math.hypot(x, y)) if part)
    return any(are_same(size, part) for part in parts)
