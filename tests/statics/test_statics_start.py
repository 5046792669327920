"""Is statics light to import? The first frame of the tutor waits for it."""

import subprocess
import sys

import pytest


@pytest.mark.parametrize("heavy", ["numpy", "sympy"])
def test_importing_statics_loads_no_heavy_library(heavy):
    code = f"import sys, tutor.statics; sys.exit({heavy!r} in sys.modules)"
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0
