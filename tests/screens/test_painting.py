"""Does the terminal show the same as if every frame were painted whole, for fewer bytes?"""

from __future__ import annotations

import re

from hypothesis import given
from hypothesis import strategies as st
from rich.console import Console
from rich.segment import Segment
from rich.style import Style
from textual._compositor import LayoutUpdate
from textual.geometry import Region, Size
from textual.strip import Strip

from tutor.screens.painting import Painter

SIZE = Size(12, 4)
CONSOLE = Console(color_system="truecolor", force_terminal=True, width=SIZE.width)
STYLES = [Style.parse(s) for s in ("#F2F2F2 on #121212", "bold #56B4E9 on #121212", "reverse", "")]
STEP = re.compile(r"\x1b\[(\d+);(\d+)H|\x1b\[([\d;]*)m|(.)", re.DOTALL)
WIDE = "漢"


class Grid:
    """A terminal that knows places, styles and double-width characters."""

    def __init__(self) -> None:
        self.cells = [[(" ", "")] * SIZE.width for _ in range(SIZE.height)]

    def write(self, output: str) -> None:
        x = y = 0
        codes = ""
        for row, column, style, char in STEP.findall(output):
            if row:
                y, x = int(row) - 1, int(column) - 1
            elif char == "\n":
                y, x = y + 1, 0
            elif char:
                self.cells[y][x] = (char, codes)
                if char == WIDE:
                    self.cells[y][x + 1] = ("", codes)
                x += 2 if char == WIDE else 1
            else:
                codes = "" if style in ("0", "") else style


def looks(grid: Grid) -> list[list[tuple[str, str]]]:
    """What is seen: the letters of a blank's own colour are not."""
    ground = re.compile(r"(?:^|;)48;2;\d+;\d+;\d+")
    return [
        [
            (c, s)
            if c.strip() or "7" in s.split(";")
            else (c, "".join(ground.findall(s)).strip(";"))
            for c, s in row
        ]
        for row in grid.cells
    ]


ROWS = st.lists(
    st.tuples(st.text(alphabet="ab ○漢", max_size=6), st.sampled_from(STYLES)), max_size=4
).map(lambda runs: Strip([Segment(text, style) for text, style in runs]).adjust_cell_length(12))
FRAMES = st.lists(st.lists(ROWS, min_size=4, max_size=4), min_size=1, max_size=4)


def whole(frame: list[Strip]) -> LayoutUpdate:
    return LayoutUpdate([[strip] for strip in frame], Region(0, 0, *SIZE))


@given(FRAMES)
def test_what_is_painted_in_parts_looks_as_if_painted_whole(frames: list[list[Strip]]) -> None:
    painter, shown = Painter(), Grid()
    for frame in frames:
        shown.write(painter.changes(whole(frame), SIZE, CONSOLE).render_segments(CONSOLE))
        wanted = Grid()
        wanted.write(whole(frame).render_segments(CONSOLE))
        assert looks(shown) == looks(wanted)


@given(st.lists(ROWS, min_size=4, max_size=4))
def test_what_is_shown_already_costs_nothing(frame: list[Strip]) -> None:
    painter = Painter()
    painter.changes(whole(frame), SIZE, CONSOLE)
    assert painter.changes(whole(frame), SIZE, CONSOLE).render_segments(CONSOLE) == ""


def test_all_goes_out_again_once_the_terminal_may_show_anything() -> None:
    painter = Painter()
    frame = [Strip([Segment("abc" * 4, STYLES[0])])] * 4
    first = painter.changes(whole(frame), SIZE, CONSOLE).render_segments(CONSOLE)
    painter.forget()
    assert painter.changes(whole(frame), SIZE, CONSOLE).render_segments(CONSOLE) == first
    other = Size(12, 5)
    assert painter.changes(whole(frame), other, CONSOLE).render_segments(CONSOLE) == first
