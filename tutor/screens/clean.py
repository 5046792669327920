"""Which characters may reach a row of the screen?"""

from __future__ import annotations

from tutor.text import visible


def one_line(text: str) -> str:
    """`text` for one row of the screen."""
    return " ".join(visible(text).split())
