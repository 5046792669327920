"""What is handed out on paper? Sheets to work on, keys to mark by, and worked solutions.

`worked` finds the way through a truss and `lines` writes its equations; `sheets` makes of a problem
one `PrintedSheet`, a list of blocks (`blocks`); `markdown`, `html` and `typst` write it down; `roster` reads
for whom; `hand_out` puts it all into a folder.
"""

from tutor.paper.blocks import PrintedSheet
from tutor.paper.roster import Person, read_roster
from tutor.paper.sheets import key, sheet, worked_solution
from tutor.paper.way_through import Worked, WrittenStep, worked

__all__ = [
    "Person",
    "PrintedSheet",
    "Worked",
    "WrittenStep",
    "key",
    "read_roster",
    "sheet",
    "worked",
    "worked_solution",
]
