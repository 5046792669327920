"""What can be typed beside a truss that is being drawn up?"""

from __future__ import annotations

from tutor.screens.dialogs.help import KEYS, LINE, rows_of
from tutor.screens.own_deeds import BENCH

TYPED = """\
WHAT CAN BE TYPED
Several things may stand in one line; ; parts statements. Small
letters will do.
    A 0 0  B 4 0  C 2 3/2   joints: name, x to the right, y up;
                            a name again moves the joint
    0 0  4 0  2 1.5         without names they are A, B, C ...
    D 3 right of A          also D 4 above B, D middle of AB,
                            D 3 right 4 up from A,
                            D 5 at 30 from A,
                            D 5 from A 4 from B
    "a" 0 0                 in quotes, a name in these letters
    AB BC CA                members; ABCD is AB, BC and CD;
                            longer names: U1-L2
    A pin  B roller         supports; B roller 150: its push, in
                            degrees from +x
    C link -1 4             a short link to that fixed point
    C 12 down 3 right       loads (d u l r will do)
    C D 5 down              the same load on both
    C 5 at 210              a load of 5 along 210 degrees
    spread 2 down AB BC     along members; by span, as snow;
                            in all, for the whole of it
    move D 7 1              also move D by 1 0, move load C to D
    copy B C D by 4 0       with the members between them; also
                            copy load C to D
    mirror   mirror about C   the other half; flip turns it over
    kN m                    units: kN N MN lb kip, m mm cm in ft
    title Lamp arm          what it is called
    drop C   drop AB   drop load C   drop support A
    rename A U1   clear   undo   redo
    Warren span 12 height 3 panels 4 load 10
                            also Pratt, Howe, Fink (4 or 8
                            panels), king post, queen post,
                            cantilever; in place of what is there
    grid 0.5   grid off     the grid for the mouse
    open arm.toml   save arm.toml   save, over its own file
A table of joints can be pasted from a spreadsheet: a name, x and
y in each row.
"""
MOUSE = """\
THE MOUSE
The numbers at the edges and the place on the border below say
where it is. A click on the grid puts a joint there; a click on a
joint chooses it, and one on a second joint puts a member between
them. A joint that is dragged moves.
"at a joint" on the bar holds, loads or drops the joint chosen.
"""


def bench_help() -> str:
    """What can be typed, the mouse, and the keys."""
    return "\n".join((TYPED, MOUSE, KEYS + rows_of(BENCH), LINE))
