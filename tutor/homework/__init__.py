"""What does a whole homework show? A student's own numbers and lines, checked and never given away.

`work` reads what was handed in, `sheet` puts the numbers on the free bodies, `chain` finds which
value follows from which, `reading` tells what may have stood in the blanks, `accounts` explains a
body that does not close by the catalogue of mistakes, `places` finds where it went wrong first and
`stories` does so for every reading. `rounding` says what is right to the figures and the steps,
`beliefs` (and `spread_beliefs`) look through `lenses` for one belief that runs through the page,
`misdrawn` for another truss that all numbers fit, `mended` for what rests on a value put right
since, `half_mended` for what rests on a belief then; `throughout` weighs what runs through a page
against slips, `certainty` says what is beyond doubt; `slips` is the one door to the judge's
catalogue, `check` puts the review together. `table` reads what was pasted, `paper` and `typed` take
what is typed line by line, `hints` says more step by step, `report` writes what can be handed in.
"""

from tutor.homework.account import Account
from tutor.homework.check import review
from tutor.homework.closing import Closure
from tutor.homework.findings import Finding, Review
from tutor.homework.hints import LEVELS, hint, right_lines
from tutor.homework.kept import lines_of
from tutor.homework.page import Written
from tutor.homework.paper import Paper
from tutor.homework.report import markdown
from tutor.homework.sheet import place_in_words
from tutor.homework.table import Pasted, read_table
from tutor.homework.typed import write_line
from tutor.homework.whole_page import read_paper
from tutor.homework.work import Entry, LeftOut

__all__ = [
    "LEVELS",
    "Account",
    "Closure",
    "Entry",
    "Finding",
    "LeftOut",
    "Paper",
    "Pasted",
    "Review",
    "Written",
    "hint",
    "lines_of",
    "markdown",
    "place_in_words",
    "read_paper",
    "read_table",
    "review",
    "right_lines",
    "write_line",
]
