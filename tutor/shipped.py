"""Where are the problem sets that come with the program?"""

from __future__ import annotations

from pathlib import Path

HERE = Path(__file__).resolve().parent


def shipped_problems() -> Path:
    """The folder of the shipped sets: inside the installed package, else beside it in the sources."""
    inside = HERE / "problems"
    return inside if inside.is_dir() else HERE.parent / "problems"
