"""How do the tests run? Without deadlines, on some examples of each law, away from the user's own
lessons, alike on every run of continuous integration (elsewhere hypothesis looks at other examples
each time), and without reading the same problem file or looking for the same garbage again and again."""

from __future__ import annotations

import gc
import os
from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import settings

import tutor.model.read
from tutor.model.read import ReadProblem
from tutor.model.rules import Rules

EXAMPLES = 30
"""Of each law in every run; ten times as many with PINJOINT_THOROUGH set."""
settings.register_profile(
    "pinjoint",
    deadline=None,
    derandomize="CI" in os.environ,
    max_examples=EXAMPLES * (10 if "PINJOINT_THOROUGH" in os.environ else 1),
)
settings.load_profile("pinjoint")

read_text = tutor.model.read.read_text
SELDOM = 20_000
"""New objects between two looks for garbage: a screen makes thousands, and few of them in circles."""
MOST_READ = 512
READ: dict[object, ReadProblem] = {}


def read_once(
    text: str, file: str, source: Path | None = None, rules: Rules | None = None
) -> ReadProblem:
    """The same text read again is the same problem, of which much is remembered once found out."""
    key = (text, file, source, repr(rules))
    if key not in READ:
        if len(READ) >= MOST_READ:
            del READ[next(iter(READ))]
        READ[key] = read_text(text, file, source, rules)
    return READ[key]


tutor.model.read.read_text = read_once
gc.disable()


@pytest.hookimpl(optionalhook=True)
def pytest_xdist_auto_num_workers() -> int:
    """Half as many processes again as there are cores: a test of a screen waits now and then."""
    given = getattr(os, "sched_getaffinity", None)
    cores = len(given(0)) if given else os.cpu_count() or 1
    return cores + cores // 2


@pytest.hookimpl(trylast=True)
def pytest_collection_finish() -> None:
    """What stays until the end, thousands of tests among it, need not be gone through for garbage."""
    gc.collect()
    gc.freeze()
    gc.set_threshold(SELDOM, *gc.get_threshold()[1:])
    gc.enable()


@pytest.fixture(autouse=True, scope="session")
def nothing_of_the_user_is_touched(tmp_path_factory: pytest.TempPathFactory) -> Iterator[None]:
    """Lessons and choices that a test keeps in the usual place go to a temporary folder."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("XDG_DATA_HOME", str(tmp_path_factory.mktemp("data")))
        yield
