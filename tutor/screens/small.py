"""Is the window too small for pictures beside lines, and what is there to do about it?"""

from __future__ import annotations

from textual.geometry import Size

SMALLEST = Size(60, 20)


def is_small(size: Size) -> bool:
    """Whether a window of this size shows the lines or the picture, but never both."""
    return size.width < SMALLEST.width or size.height < SMALLEST.height


def offer(size: Size) -> str:
    """The sentence that offers another way in a window of this size."""
    return (
        f"This window is small ({size.width}x{size.height}): pinjoint --plain takes the lesson line "
        "by line."
    )
