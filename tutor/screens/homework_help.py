"""What can be typed onto the paper of a homework?"""

from __future__ import annotations

from tutor.screens.dialogs.help import EVERYWHERE, KEYS, SIGNS, rows_of
from tutor.screens.own_deeds import HOMEWORK

TYPED = """\
WHAT CAN BE TYPED
Into the row at hand; enter goes on to the next row, up and down
to the rows beside it, and typing replaces what stands there:
    7.5 C     -7.5     12 kN T     12 left     0     7,5 C
An empty row is not done yet, and is not checked.
Of another row, or several at once:
    AB = 7.5 C     B_y = 4, AB = 7.5 C     A_y = B_y = 6
    Joint A: FAB = 2,500 lb (T), FAC = 900 C
A line, with the equation it is:
    ΣFx at C: 3/5 F_AC - 12 = 0     ΣM_A: 4 B_y - 24 = 0
    line 2, emptied, is struck out
Your arrows, where they are not +x, +y or pulling; your order:
    A_x drawn left     AC drawn push     order C D A
A table can be pasted from a spreadsheet: a name and a value in
each row, parted by tabs, commas or semicolons; the decimal sign
may be a point or a comma.
The words check, hint, walk, undo, clear, save, help and leave do
what their keys do.
"""
FOUND = """\
WHAT IS SAID
    right      and it was found on a sound way
    wrong      with the kind of mistake, where one explains it
    follows    wrong in value, but right with your earlier error
The first wrong place is named. After mending it, check again: the
next one comes. Hints say more step by step; only the last, which
is asked for twice, shows a right line.
"""


def homework_help() -> str:
    """What can be typed, what is said, the signs, and the keys."""
    return "\n".join((TYPED, FOUND, SIGNS, KEYS + rows_of(HOMEWORK), EVERYWHERE))
