"""What can be typed, and which keys are there? The text of the help screen."""

from __future__ import annotations

from collections.abc import Iterable
from textwrap import wrap

from tutor.screens.deeds import Deed

WIDE = 66
"""So wide is the text at 80 columns, beside its scroll bar."""
TYPED = """\
WHAT CAN BE TYPED
An equation has one = and may stand in any order, on any side,
simplified or not:
    3/5 F_AB + F_AC - 12 = 0        12 = F_AC + 0.6FAB
    B_y(9 m) = 12 kN * 3 m          F_AB cos 36.87° + F_AC = 12
    F_AB*2/sqrt(2^2+1.5^2) - 5 = 0
A heading says which equation it is:
    ΣFx: …     sum Fy: …     ΣM_A: …
The heading alone chooses it:  Fx   Fy   M A
A value is an unknown, = and a number; members take T or C:
    B_y = 4 kN      F_AB = 12 C      AB = -12      CD = 0
Unknowns: A_x, Ax; R_C; F_AB, FBA, AB (also S, N or T for F); for
longer names F_{U1-L2}.
Numbers: 12, 12.5, 12,5, .5, 1.2e3, 3/5. Angles are in degrees;
0.64 rad says radians.
Functions: sin cos tan asin acos atan sqrt. Signs: + - * / ^ and
√ ² ³ · × ÷ too.
"""
SIGNS = """\
SIGNS
x is to the right, y is up. A member force is drawn pulling on
the joint: plus is tension (T), minus is compression (C). A
reaction is plus along the arrow you drew. Any sense may be drawn.
"""
KEYS = """\
KEYS
tab, shift+tab    to the next or the last part of the screen
escape            from the line to the bar of deeds and back; then
                  one letter does it:
"""
HISTORY = """\
up, down          in the line: the lines entered before
"""
EVERYWHERE = """\
page up, down     scroll what was said
left, right       on the list: to the set before or after
space             reads on here, and on the list in what is told
                  beside it
ctrl+p            a list of all that can be done, to search in
ctrl+q            ends the program at once; all is kept
The mouse does all of it too. With shift held, most terminals let
you mark and copy text.
"""
LINE = HISTORY + EVERYWHERE


def help_text(deeds: Iterable[Deed]) -> str:
    """What can be typed, the signs, and the keys of these deeds."""
    return "\n".join((TYPED, SIGNS, KEYS + rows_of(deeds), LINE))


def rows_of(deeds: Iterable[Deed]) -> str:
    """A row for each deed with its letter."""
    rows = []
    for deed in deeds:
        chord = f"  (or {deed.chord})" if deed.chord else ""
        does = wrap(
            f"{deed.does}{chord}",
            WIDE,
            initial_indent=f"    {deed.letter}   ",
            subsequent_indent=" " * 8,
        )
        rows.append("\n".join(does))
    return "\n".join(rows)
