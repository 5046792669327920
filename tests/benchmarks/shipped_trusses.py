"""Which trusses are the lines about? Those that come with the program."""

from __future__ import annotations

from tutor.model import load_problem
from tutor.shipped import shipped_problems

SHIPPED = [
    load_problem(path)
    for path in sorted((shipped_problems() / "first-steps").glob("*.toml"))
    if path.name != "set.toml"
]
