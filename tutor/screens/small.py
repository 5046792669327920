"""Is the window too small for pictures beside lines, and what is there to do about it?"""

from __future__ import annotations

from typing import Any

from textual.geometry import Size
from textual.screen import Screen

SMALLEST = Size(60, 20)
SHORT = 32
"""In fewer rows the parts stand without frames."""


def is_small(size: Size) -> bool:
    """Whether a window of this size shows the lines or the picture, but never both."""
    return size.width < SMALLEST.width or size.height < SMALLEST.height


def offer(size: Size) -> str:
    """The sentence that offers another way in a window of this size."""
    return (
        f"This window is small ({size.width}x{size.height}): pinjoint --plain takes the lesson line "
        "by line."
    )


def fit(screen: Screen[Any], size: Size) -> None:
    """Arrange the parts of a screen for a window of this size."""
    screen.set_class(size.width < SMALLEST.width, "-narrow")
    screen.set_class(size.height < SMALLEST.height, "-low")
    screen.set_class(size.height < SHORT, "-short")
    screen.set_class(size.height >= SHORT, "-tall")
