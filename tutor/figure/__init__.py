"""What does it *look* like? Drawings as one display list, and writers for cells, SVG and words.

Makers: `truss_figure`, `result_figure`, `joint_figure`, `part_figure`, `moment_figure`. Writers: `to_cells`,
`to_svg`, `to_words`. A `Figure` is a list of parts in problem coordinates, each with a role; the
writers alone know colours, characters and sizes.
"""

from tutor.figure.card import test_card
from tutor.figure.cells import Cells, to_cells
from tutor.figure.free_body import joint_figure
from tutor.figure.moment import moment_figure
from tutor.figure.palette import DARK, LIGHT, PAPER, Inks
from tutor.figure.part import part_figure
from tutor.figure.parts import Figure, Role, plain
from tutor.figure.raster import Glyphs
from tutor.figure.svg import to_svg
from tutor.figure.truss import result_figure, truss_figure
from tutor.figure.words import to_words

__all__ = [
    "DARK",
    "LIGHT",
    "PAPER",
    "Cells",
    "Figure",
    "Glyphs",
    "Inks",
    "Role",
    "joint_figure",
    "moment_figure",
    "part_figure",
    "plain",
    "result_figure",
    "test_card",
    "to_cells",
    "to_svg",
    "to_words",
    "truss_figure",
]
