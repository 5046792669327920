"""The students of tests/students work here as a class."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest

sys.path.append(str(Path(__file__).parents[1] / "students"))
sys.path.append(str(Path(__file__).parent))


@pytest.fixture(scope="session")
def course_folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A set of two problems, one of which varies."""
    from classroom import make_set

    return make_set(tmp_path_factory.mktemp("course") / "my-set")
