"""Which characters does this terminal show well? A small picture to judge by eye."""

from __future__ import annotations

from tutor.figure.cells import to_cells
from tutor.figure.parts import Arrow, Figure, Glyph, Item, Point, Role, Stroke, Tag
from tutor.figure.raster import Glyphs

COLUMNS, ROWS = 36, 9


def test_card(glyphs: Glyphs) -> str:
    """A picture of three members under a load in one glyph set, with every kind of stroke."""
    return to_cells(_picture(), COLUMNS, ROWS, glyphs).text


def _picture() -> Figure:
    left, right, top = (0.0, 0.0), (12.0, 0.0), (12.0, 5.0)
    members: tuple[tuple[Point, Point, Role, str], ...] = (
        (left, right, "member-zero", "0"),
        (left, top, "member-tension", "13 T"),
        (top, right, "member-compression", "5 C"),
    )
    items: list[Item] = [Stroke(start, end, role) for start, end, role, _ in members]
    for start, end, role, text in members:
        middle = ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2)
        items.append(Tag(middle, (text,), role, along=(start, end)))
    items.append(Glyph(left, "pin", "support"))
    items.append(Glyph(right, "roller", "support"))
    items.append(Arrow(top, (1.0, 0.0), "load", ("12 kN",)))
    names: tuple[tuple[Point, str, Point], ...] = (
        (left, "A", (-1.0, 0.0)),
        (right, "B", (1.0, 0.0)),
        (top, "D", (0.0, 1.0)),
    )
    for at, name, away in names:
        items.append(Glyph(at, "joint", "joint", name=name))
        items.append(Tag(at, (name,), "joint", away))
    return Figure("Test card", tuple(items))
