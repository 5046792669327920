"""Which colours? Okabe and Ito's, chosen by contrast, on a dark and on a light ground.

Source of the colours: M. Okabe and K. Ito, "Color Universal Design" (2008), from memory. Words need
4.5 : 1 on their ground (WCAG 2, level AA): on white only the blue has it, so words there are black
or blue, and a verdict is black on a coloured badge. Colour never stands alone.
"""

from __future__ import annotations

from collections.abc import Mapping

from textual.theme import Theme

BLACK, WHITE = "#000000", "#FFFFFF"
ORANGE, SKY, GREEN, YELLOW = "#E69F00", "#56B4E9", "#009E73", "#F0E442"
BLUE, VERMILION, PURPLE = "#0072B2", "#D55E00", "#CC79A7"

BADGES: Mapping[str, str] = {
    "right": f"bold {BLACK} on {SKY}",
    "wrong": f"bold {BLACK} on {ORANGE}",
    "remark": f"bold {BLACK} on {YELLOW}",
    "hint": f"bold {BLACK} on {PURPLE}",
    "note": "bold",
}
DARK_WORDS: Mapping[str, str] = {
    "ink": "#F2F2F2",
    "quiet": "#B4B8BD",
    "strong": SKY,
    "tension": SKY,
    "compression": ORANGE,
    "nothing": "#B4B8BD",
    "load": YELLOW,
    "reaction": "#CC79A7",
    "unknown": SKY,
    "lit": YELLOW,
}
LIGHT_WORDS: Mapping[str, str] = {
    "ink": BLACK,
    "quiet": "#595959",
    "strong": BLUE,
    "tension": BLUE,
    "compression": BLACK,
    "nothing": "#595959",
    "load": BLACK,
    "reaction": BLUE,
    "unknown": BLUE,
    "lit": BLUE,
}
DARK_GROUND, LIGHT_GROUND = "#121212", WHITE


def theme(name: str, words: Mapping[str, str], ground: str, raised: str, dark: bool) -> Theme:
    """A theme with two grounds, the plain and the raised one, and a named colour for every word."""
    return Theme(
        name=name,
        primary=words["strong"],
        secondary=words["strong"],
        accent=words["strong"],
        warning=words["ink"],
        error=words["ink"],
        success=words["strong"],
        foreground=words["ink"],
        background=ground,
        surface=ground,
        panel=raised,
        boost=raised,
        dark=dark,
        text_alpha=1.0,
        variables={
            **words,
            "raised": raised,
            "block-cursor-foreground": ground,
            "block-cursor-background": words["strong"],
            "input-cursor-background": words["ink"],
            "input-cursor-foreground": ground,
            "input-selection-background": raised,
            "footer-key-foreground": words["strong"],
            "scrollbar": words["quiet"],
            "scrollbar-hover": words["ink"],
            "scrollbar-active": words["ink"],
            "scrollbar-background": raised,
            "scrollbar-background-hover": raised,
            "scrollbar-background-active": raised,
            "scrollbar-corner-color": raised,
        },
    )


DARK = theme("dark", DARK_WORDS, DARK_GROUND, "#262626", True)
LIGHT = theme("light", LIGHT_WORDS, LIGHT_GROUND, "#F2F2F2", False)
THEMES: Mapping[str, Theme] = {"dark": DARK, "light": LIGHT}
