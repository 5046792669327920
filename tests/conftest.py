"""How do the tests run? Without deadlines, on some examples of each law, away from the user's own
lessons, and alike on every run of continuous integration (elsewhere hypothesis looks at other
examples each time)."""

from __future__ import annotations

import os
from collections.abc import Iterator

import pytest
from hypothesis import settings

EXAMPLES = 30
"""Of each law in every run; ten times as many with PINJOINT_THOROUGH set."""
settings.register_profile(
    "pinjoint",
    deadline=None,
    derandomize="CI" in os.environ,
    max_examples=EXAMPLES * (10 if "PINJOINT_THOROUGH" in os.environ else 1),
)
settings.load_profile("pinjoint")


@pytest.fixture(autouse=True, scope="session")
def nothing_of_the_user_is_touched(tmp_path_factory: pytest.TempPathFactory) -> Iterator[None]:
    """Lessons and choices that a test keeps in the usual place go to a temporary folder."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("XDG_DATA_HOME", str(tmp_path_factory.mktemp("data")))
        yield
