"""Of what is a sheet of paper made, whatever it is written as?

All text is plain: each writer escapes it for itself.
"""

from __future__ import annotations

from dataclasses import dataclass

from tutor.figure import Figure, to_svg
from tutor.figure.svg import cramped, crossed, height

PIXELS = 720.0
"""The width of a page, which sets how large letters are beside lines."""
SMALL = (0.62, 0.54, 0.46), 280.0
"""How wide a picture beside lines may be, best first, and how high at most, on the same measure."""
LARGE = (0.9, 0.75), 330.0
"""The same of a picture that stands by itself."""


@dataclass(frozen=True)
class SubHeading:
    """A heading below the title."""

    text: str


@dataclass(frozen=True)
class Paragraph:
    """A paragraph."""

    text: str


@dataclass(frozen=True)
class Picture:
    """A drawing; `words` say what it shows, `share` is its part of the width of the page."""

    figure: Figure
    words: str
    share: float = 1.0

    def svg(self, alone: bool = False) -> str:
        """Its SVG in black on white; `alone` in a file of its own, with the caution in it."""
        return to_svg(self.figure, paper=True, width=PIXELS * self.share, alone=alone)


def fitted(figure: Figure, words: str, sizes: tuple[tuple[float, ...], float]) -> Picture:
    """A picture in the first of some sizes (`SMALL`, `LARGE`) in which it is not too high: narrower
    where it would be high, its letters always as large as in any other; but not so narrow that its
    arrows are cramped, or words lie across them where another size has room."""
    shares, high = sizes
    fitting = [share for share in shares if height(figure, PIXELS * share) <= high]
    roomy = [share for share in (*fitting, *shares) if not cramped(figure, PIXELS * share)]
    found = (*roomy, *fitting, shares[-1])
    share = next((share for share in found if not crossed(figure, PIXELS * share)), found[0])
    return Picture(figure, words, share)


@dataclass(frozen=True)
class Lines:
    """Equations below one another: (heading such as "ΣF_x", line, remark), the last two may be ""."""

    rows: tuple[tuple[str, str, str], ...]


@dataclass(frozen=True)
class PrintedTable:
    """A table: its head, its rows; empty cells are to be filled in by hand."""

    head: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


@dataclass(frozen=True)
class WorkingSpace:
    """Empty room to work in: what is left of the page, and `pages` whole ones."""

    pages: int = 0


@dataclass(frozen=True)
class Together:
    """Blocks that stay on one page where they fit on one."""

    blocks: tuple[Block, ...]


Block = SubHeading | Paragraph | Picture | Lines | PrintedTable | WorkingSpace | Together


@dataclass(frozen=True)
class PrintedSheet:
    """One sheet: a title, a line for whom it is, and its blocks. Each begins on a page of its own."""

    title: str
    whom: str
    blocks: tuple[Block, ...]
