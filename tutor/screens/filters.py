"""What may leave for the terminal? Nothing that steers it; without colour under NO_COLOR, in ASCII where there is no more."""

from __future__ import annotations

import re
from functools import lru_cache

from rich.segment import Segment
from rich.style import Style
from textual.color import Color
from textual.filter import LineFilter

HARMFUL = re.compile("[\x00-\x1f\x7f-\x9f\u200e\u200f\u2028-\u202e\u2066-\u2069\ud800-\udfff]")
PLAIN = str.maketrans(
    {
        **dict.fromkeys("─━═╌╍┄┅┈┉", "-"),
        **dict.fromkeys("│┃║╎╏┆┇┊┋▌▐▎▏▕", "|"),
        **dict.fromkeys("▂▃▄▅▆▇█▀▊▉", "#"),
        **dict.fromkeys("┌┐└┘├┤┬┴┼╭╮╰╯┏┓┗┛┠┨┯┷┿╔╗╚╝", "+"),
        "Σ": "S", "°": "d", "·": "*", "×": "x", "÷": "/", "−": "-", "–": "-", "—": "-", "√": "V",
        "²": "2", "³": "3", "…": "~", "“": '"', "”": '"', "‘": "'", "’": "'", "›": ">", "✓": "+",
        "✗": "x", "●": "*", "◆": "?", "π": "p", "▔": "-", "▁": "_",
    }
)  # fmt: skip


class Harmless(LineFilter):
    """The last gate: a control or direction character that came this far becomes a question mark."""

    def apply(self, segments: list[Segment], background: Color) -> list[Segment]:
        return [
            Segment(HARMFUL.sub("?", text), style, control) if HARMFUL.search(text) else segment
            for segment in segments
            for text, style, control in (segment,)
        ]


class Uncoloured(LineFilter):
    """Takes every colour off and leaves the rest: bold, underline, reverse."""

    def apply(self, segments: list[Segment], background: Color) -> list[Segment]:
        return [
            Segment(text, None if style is None else _without_colour(style), control)
            for text, style, control in segments
        ]


class AsciiOnly(LineFilter):
    """One ASCII character for each other one, so that nothing shifts."""

    def apply(self, segments: list[Segment], background: Color) -> list[Segment]:
        return [Segment(ascii_text(text), style, control) for text, style, control in segments]


@lru_cache(2048)
def _without_colour(style: Style) -> Style:
    return style.without_color


@lru_cache(8192)
def ascii_text(text: str) -> str:
    """`text` with one ASCII character for each character; a question mark where none is like it."""
    if text.isascii():
        return text
    return text.translate(PLAIN).encode("ascii", "replace").decode("ascii")
