"""What does it *look* like? Drawings as one display list, and writers for cells, SVG and words.

Makers: `truss_figure`, `result_figure`, `joint_figure`, `moment_figure`. Writers: `to_cells`,
`to_svg`, `to_words`. A `Figure` is a list of parts in problem coordinates, each with a role; the
writers alone know colours, characters and sizes.
"""

from tutor.figure.cells import Cells, to_cells
from tutor.figure.free_body import joint_figure
from tutor.figure.moment import moment_figure
from tutor.figure.parts import Figure, Role, plain
from tutor.figure.raster import Glyphs
from tutor.figure.truss import result_figure, truss_figure

__all__ = [
    "Cells",
    "Figure",
    "Glyphs",
    "Role",
    "joint_figure",
    "moment_figure",
    "plain",
    "result_figure",
    "to_cells",
    "truss_figure",
]
