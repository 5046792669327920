"""Of what is a sheet of paper made, whatever it is written as?

All text is plain: each writer escapes it for itself.
"""

from __future__ import annotations

from dataclasses import dataclass

from tutor.figure import Figure, to_svg

PIXELS = 720.0
"""The width of a page, which sets how large letters are beside lines."""
LEAST = 0.6
"""The least part of it that is drawn for; what is to be smaller shrinks, letters and all."""


@dataclass(frozen=True)
class Heading:
    """A heading below the title."""

    text: str


@dataclass(frozen=True)
class Words:
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
        return to_svg(self.figure, paper=True, width=PIXELS * max(self.share, LEAST), alone=alone)


@dataclass(frozen=True)
class Lines:
    """Equations below one another: (heading such as "ΣF_x", line, remark), the last two may be ""."""

    rows: tuple[tuple[str, str, str], ...]


@dataclass(frozen=True)
class Grid:
    """A table: its head, its rows; empty cells are to be filled in by hand."""

    head: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


@dataclass(frozen=True)
class Room:
    """Empty room to work in: what is left of the page, and `pages` whole ones."""

    pages: int = 0


@dataclass(frozen=True)
class Together:
    """Blocks that stay on one page where they fit on one."""

    blocks: tuple[Block, ...]


Block = Heading | Words | Picture | Lines | Grid | Room | Together


@dataclass(frozen=True)
class Paper:
    """One sheet: a title, a line for whom it is, and its blocks. Each begins on a page of its own."""

    title: str
    whom: str
    blocks: tuple[Block, ...]
