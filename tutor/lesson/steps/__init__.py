"""The steps of a lesson: each module of this folder with a `STEP` is one, found by listing it."""

from __future__ import annotations

from collections.abc import Mapping
from importlib import import_module
from pkgutil import iter_modules

from tutor.lesson.step import LessonStep


def _found() -> list[LessonStep]:
    modules = [import_module(f"{__name__}.{module.name}") for module in iter_modules(__path__)]
    steps: list[LessonStep] = [module.STEP for module in modules if hasattr(module, "STEP")]
    return sorted(steps, key=lambda step: step.order)


STEP: Mapping[str, LessonStep] = {step.name: step for step in _found()}
"""By name, in the order of the walk."""
STEPS: tuple[str, ...] = tuple(STEP)
