"""The names of the trusses that the notation tests type into."""

from __future__ import annotations

from tutor.notation import Names

LETTERED = Names.of(
    [(pair, *pair) for pair in ("AB", "AC", "BC", "BD", "CD", "IN")],
    ["A_x", "A_y", "R_D"],
    "ABCDIN",
    "kN",
    "m",
)
NUMBERED = Names.of(
    [("U1-L2", "U1", "L2"), ("U1-U2", "U1", "U2"), ("L1-L2", "L1", "L2")],
    ["L1_x", "L1_y", "R_L2"],
    ["U1", "U2", "L1", "L2"],
    "kip",
    "ft",
)
CLASHING = Names.of(
    [("RC", "R", "C"), ("MN", "M", "N"), ("CM", "C", "M")],
    ["R_C", "M_x", "M_y"],
    "RCMN",
    "kN",
    "m",
)
