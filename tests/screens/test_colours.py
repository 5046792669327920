"""Are all words readable, with colour and without?"""

from __future__ import annotations

import re
from itertools import product
from pathlib import Path

import pytest
from owning import TRIANGLE, by_letter, check, checking, drawing, enter, fill
from pressing import deed, enter_line, opened, press
from resuming import FREE_BODY, JOINTS, REACTIONS, Resumed
from rich.segment import Segment
from rich.style import Style
from textual.color import Color
from textual.geometry import Region
from textual.pilot import Pilot
from textual.screen import ModalScreen

from tutor.screens.filters import Uncoloured, ascii_text
from tutor.screens.marks import MARKS
from tutor.screens.themes import BADGES, BLUE, GREEN, ORANGE, PURPLE, SKY, THEMES, VERMILION, YELLOW

OKABE_ITO = {
    "#000000", "#E69F00", "#56B4E9", "#009E73", "#F0E442", "#0072B2", "#D55E00", "#CC79A7",
}  # fmt: skip
GREYS = re.compile(r"#([0-9A-F]{2})\1\1|#B4B8BD")
WORDS = ("ink", "quiet", "strong", "tension", "compression", "nothing", "load", "reaction")
LEAST = 4.5
"""WCAG 2.2, success criterion 1.4.3, level AA, for text of ordinary size."""


def luminance(colour: str) -> float:
    """Relative luminance as WCAG 2 defines it."""
    parts = [part / 255 for part in Color.parse(colour).rgb]
    red, green, blue = (p / 12.92 if p <= 0.03928 else ((p + 0.055) / 1.055) ** 2.4 for p in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """The contrast ratio of two colours, from 1 to 21."""
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


class TestContrast:
    def test_is_computed_as_the_standard_says(self) -> None:
        assert contrast("#FFFFFF", "#000000") == pytest.approx(21.0)
        assert contrast("#777777", "#FFFFFF") == pytest.approx(4.48, abs=0.01)

    @pytest.mark.parametrize(("name", "word"), list(product(THEMES, (*WORDS, "unknown", "lit"))))
    def test_of_every_word_on_both_grounds_is_enough(self, name: str, word: str) -> None:
        theme = THEMES[name]
        for ground in (theme.background, theme.variables["raised"]):
            assert ground is not None
            assert contrast(theme.variables[word], ground) >= LEAST

    @pytest.mark.parametrize("badge", [b for b in BADGES.values() if " on " in b])
    def test_of_every_badge_is_enough(self, badge: str) -> None:
        ink, ground = re.findall("#[0-9A-F]{6}", badge)
        assert contrast(ink, ground) >= LEAST

    def test_leaves_only_one_colour_for_words_on_white(self) -> None:
        fit = {c for c in OKABE_ITO - {"#000000"} if contrast(c, "#FFFFFF") >= LEAST}
        assert fit == {BLUE}


VERDICTS = ("right", "wrong", "remark", "hint")
FORCES = ("tension", "compression", "load", "reaction", "unknown", "nothing")
STROKE = re.compile("[\u2500-\u259f\u2800-\u28ff○◉●△▲←→↑↓⠤]")
LEAST_STROKE = 3.0
"""WCAG 2.2, success criterion 1.4.11, level AA, for strokes of pictures and edges of fields."""


class TestVerdictsAndForces:
    @pytest.mark.parametrize("name", THEMES)
    def test_share_no_colour(self, name: str) -> None:
        grounds = {
            colour for b in VERDICTS for colour in re.findall("on (#[0-9A-F]{6})", BADGES[b])
        }
        forces = {THEMES[name].variables[word] for word in FORCES}
        assert not grounds & forces

    def test_stand_on_badges_that_differ_in_more_than_hue(self) -> None:
        assert len({MARKS[tone].word for tone in ("right", "wrong", "remark", "hint")}) == 4


def poor(pilot: Pilot[int]) -> list[tuple[str, str, str]]:
    """The characters that stand out too little, each run with its two colours.

    What lies dimmed behind a dialog cannot be used, and the standard leaves it out.
    """
    screen = pilot.app.screen
    top = screen.region
    if isinstance(screen, ModalScreen):
        top = Region.from_union([part.region for part in screen.query("*") if part.region.area])
    found = []
    for strip in screen._compositor.render_strips()[top.y : top.bottom]:
        for text, style, _ in strip.crop(top.x, top.right):
            if not text.strip() or style is None or style.color is None or style.bgcolor is None:
                continue
            ink, ground = (Color.from_rich_color(c).hex for c in (style.color, style.bgcolor))
            least = LEAST_STROKE if STROKE.sub("", text).strip() == "" else LEAST
            if contrast(ink, ground) < least:
                found.append((text.strip(), ink, ground))
    return found


async def in_every_theme(pilot: Pilot[int]) -> dict[str, list[tuple[str, str, str]]]:
    """What stands out too little on this screen, by theme; nothing is left out where nothing does."""
    found = {}
    for theme in THEMES:
        pilot.app.theme = theme
        await pilot.pause(0.1)
        found |= {theme: there} if (there := poor(pilot)) else {}
    return found


class TestOnTheScreen:
    async def test_nothing_of_a_walk_stands_out_too_little(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, REACTIONS) as pilot:
            await enter_line(pilot, "Fx: A_x + B_x = 0")
            await press(pilot, "ctrl+t")
            assert not await in_every_theme(pilot)
            await press(pilot, "escape", "right")
            assert not await in_every_theme(pilot)
            await press(pilot, "enter", "ctrl+l")
            await pilot.pause(0.1)
            assert not await in_every_theme(pilot)

    async def test_nothing_of_the_list_or_the_palette_stands_out_too_little(
        self, tmp_path: Path
    ) -> None:
        async with opened(tmp_path) as pilot:
            assert not await in_every_theme(pilot)
            await pilot.press("ctrl+p")
            await pilot.pause(0.3)
            assert not await in_every_theme(pilot)

    async def test_nothing_of_the_counts_stands_out_too_little(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, FREE_BODY[:1]) as pilot:
            await press(pilot, "3", "tab")
            assert not await in_every_theme(pilot)

    async def test_nothing_of_the_table_stands_out_too_little(self, tmp_path: Path) -> None:
        async with Resumed(tmp_path, JOINTS) as pilot:
            await deed(pilot, "t")
            assert not await in_every_theme(pilot)
            await press(pilot, "s")
            await pilot.pause(0.1)
            assert not await in_every_theme(pilot)

    @pytest.mark.parametrize("size", [(80, 24), (120, 40)])
    async def test_nothing_of_a_homework_stands_out_too_little(
        self, tmp_path: Path, size: tuple[int, int]
    ) -> None:
        async with checking(tmp_path, size=size) as pilot:
            await fill(pilot, ["360", "150", "36", "150 C"])
            await check(pilot)
            assert not await in_every_theme(pilot)
            await by_letter(pilot, "f")
            assert not await in_every_theme(pilot)

    async def test_nothing_of_ones_own_truss_stands_out_too_little(self, tmp_path: Path) -> None:
        async with drawing(tmp_path) as pilot:
            assert not await in_every_theme(pilot)
            await enter(pilot, TRIANGLE)
            assert not await in_every_theme(pilot)
            await enter(pilot, "nonsense 3")
            assert not await in_every_theme(pilot)


class TestColours:
    def test_are_those_of_okabe_and_ito_or_greys(self) -> None:
        assert {BLUE, GREEN, ORANGE, PURPLE, SKY, VERMILION, YELLOW} < OKABE_ITO
        for theme in THEMES.values():
            for word in (*WORDS, "unknown", "lit", "raised"):
                colour = theme.variables[word]
                assert colour in OKABE_ITO or GREYS.fullmatch(colour), (theme.name, word)

    def test_never_set_tension_against_compression_as_red_and_blue(self) -> None:
        for theme in THEMES.values():
            assert VERMILION not in (theme.variables["tension"], theme.variables["compression"])

    def test_are_not_what_tells_two_marks_apart(self) -> None:
        for ascii_only in (False, True):
            shown = [mark.shown(ascii_only) for mark in MARKS.values()]
            assert len(shown) == len(set(shown))
        assert all(mark.plain.isascii() and len(mark.sign) == 1 for mark in MARKS.values())


class TestTheFilters:
    def test_take_off_every_colour_and_leave_the_rest(self) -> None:
        style = Style.parse("bold reverse underline #56B4E9 on #121212")
        (segment,) = Uncoloured().apply([Segment("7.5 C", style)], Color.parse("#121212"))
        assert segment.style is not None
        assert segment.style.color is None
        assert segment.style.bgcolor is None
        assert segment.style.bold
        assert segment.style.reverse
        assert segment.style.underline

    @pytest.mark.parametrize("text", ["ΣF_x · √2 – 30°", "✓ right", "╭─╮│╰╯", "⢸⠤", "F² ½ é 漢"])
    def test_put_one_ascii_character_for_each(self, text: str) -> None:
        assert ascii_text(text).isascii()
        assert len(ascii_text(text)) == len(text)
