"""Which colours? Okabe and Ito's, chosen by contrast, on a dark and on a light ground.

Source of the colours: M. Okabe and K. Ito, "Color Universal Design" (2008), from memory. Words need
4.5 : 1 on their ground (WCAG 2.2, 1.4.3), strokes and edges of fields 3 : 1 (1.4.11): on white only
the blue has it for words, so words there are black, grey or blue, and a verdict is black on a
coloured badge. Verdicts and forces share no colour: green and vermilion are for verdicts alone.
Colour never stands alone.
"""

from __future__ import annotations

from collections.abc import Mapping

from textual.app import App
from textual.theme import Theme

BLACK, WHITE = "#000000", "#FFFFFF"
ORANGE, SKY, GREEN, YELLOW = "#E69F00", "#56B4E9", "#009E73", "#F0E442"
BLUE, VERMILION, PURPLE = "#0072B2", "#D55E00", "#CC79A7"

BADGES: Mapping[str, str] = {
    "right": f"bold {BLACK} on {GREEN}",
    "wrong": f"bold {BLACK} on {VERMILION}",
    "remark": f"bold {BLACK} on #C8C8C8",
    "hint": f"bold {WHITE} on #5A5A5A",
    "note": "bold",
}
DARK_WORDS: Mapping[str, str] = {
    "ink": "#F2F2F2",
    "quiet": "#B4B8BD",
    "strong": WHITE,
    "tension": SKY,
    "compression": ORANGE,
    "nothing": "#B4B8BD",
    "load": YELLOW,
    "reaction": PURPLE,
    "unknown": "#F2F2F2",
    "lit": YELLOW,
}
LIGHT_WORDS: Mapping[str, str] = {
    "ink": BLACK,
    "quiet": "#595959",
    "strong": BLACK,
    "tension": BLUE,
    "compression": BLACK,
    "nothing": "#595959",
    "load": BLACK,
    "reaction": BLACK,
    "unknown": BLACK,
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
            "text-muted": words["quiet"],
            "text-disabled": words["quiet"],
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


def take_theme(app: App[int], chosen: str) -> None:
    """Begin with the theme that was chosen, or the dark one. Called before anything is styled: by
    setting `theme` the library would style everything twice."""
    for theme in THEMES.values():
        app.register_theme(theme)
    theme = THEMES.get(chosen, THEMES["dark"])
    app.remove_class(*(name for name in app.classes if name.startswith("-theme-")))
    app.add_class(f"-theme-{theme.name}")
    app.set_class(theme.dark, "-dark-mode").set_class(not theme.dark, "-light-mode")
    app.set_reactive(App.theme, theme.name)
    app.stylesheet.set_variables(app.get_css_variables())
