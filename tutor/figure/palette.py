"""Which colour has each role? Okabe and Ito's colours, chosen by contrast, for light and for dark.

Source of the colours: M. Okabe and K. Ito, "Color Universal Design" (2008), set of eight, from
memory. On white only their blue reaches the contrast of 4.5 : 1 that WCAG 2 asks for text (level
AA), so words are black or blue there; lines need 3 : 1. Colour never stands alone: tension and
compression differ by stroke and letter too.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from tutor.figure.parts import Role

BLUE, SKY, GREEN = "#0072B2", "#56B4E9", "#009E73"
VERMILION, ORANGE, PURPLE = "#D55E00", "#E69F00", "#CC79A7"


@dataclass(frozen=True)
class Inks:
    """Colours of one ground; roles that are not named have the plain ink."""

    ground: str
    ink: str
    lines: Mapping[Role, str] = field(default_factory=dict)
    words: Mapping[Role, str] = field(default_factory=dict)

    def line(self, role: Role) -> str:
        """The colour of a line or a sign."""
        return self.lines.get(role, self.ink)

    def word(self, role: Role) -> str:
        """The colour of words."""
        return self.words.get(role, self.ink)


LIGHT = Inks(
    "#FFFFFF",
    "#000000",
    {
        "member": "#333333",
        "member-tension": BLUE,
        "member-zero": "#666666",
        "support": "#333333",
        "load": VERMILION,
        "reaction": GREEN,
        "unknown": BLUE,
        "dimension": "#666666",
        "slope": "#666666",
        "moment-point": VERMILION,
        "line-of-action": "#666666",
        "moment-arm": VERMILION,
        "highlight": BLUE,
    },
    {"unknown": BLUE, "highlight": BLUE, "dimension": "#444444"},
)
DARK = Inks(
    "#121212",
    "#F2F2F2",
    {
        "member": "#C8C8C8",
        "member-tension": SKY,
        "member-zero": "#9A9A9A",
        "support": "#C8C8C8",
        "load": ORANGE,
        "reaction": GREEN,
        "unknown": SKY,
        "dimension": "#9A9A9A",
        "slope": "#9A9A9A",
        "moment-point": ORANGE,
        "line-of-action": "#9A9A9A",
        "moment-arm": ORANGE,
        "highlight": PURPLE,
    },
    {"unknown": SKY, "highlight": PURPLE, "dimension": "#BBBBBB"},
)
PAPER = Inks("#FFFFFF", "#000000")
