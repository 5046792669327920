"""Does a drawing say what an instructor would draw?"""

import re
from xml.etree import ElementTree

import pytest
from drawings import CANTILEVER, HANGING, INCLINED, LINKED, PANELS, TRIANGLE, WARREN, WARREN_FORCES
from every_problem import FILES, USUAL

from tutor.figure import (
    DARK,
    LIGHT,
    PAPER,
    Figure,
    Glyphs,
    Inks,
    joint_figure,
    moment_figure,
    result_figure,
    to_cells,
    to_svg,
    to_words,
    truss_figure,
)
from tutor.figure import test_card as card
from tutor.figure.layout import lay_out
from tutor.figure.parts import Arrow, DimensionChain, Glyph, Role, Slope, Stroke
from tutor.model import load_problem

SVG = "{http://www.w3.org/2000/svg}"
GLYPHS: tuple[Glyphs, ...] = ("braille", "blocks", "ascii")


def arrows(figure: Figure) -> dict[str, Arrow]:
    return {item.name: item for item in figure.items if isinstance(item, Arrow)}


def supports(figure: Figure) -> dict[str, Glyph]:
    return {
        item.name: item
        for item in figure.items
        if isinstance(item, Glyph) and item.role == "support"
    }


def find(lines: list[str], char: str) -> list[tuple[int, int]]:
    return [(r, c) for r, line in enumerate(lines) for c, one in enumerate(line) if one == char]


def test_a_load_on_top_stands_on_its_joint() -> None:
    lines = to_cells(truss_figure(TRIANGLE), 60, 16).text.split("\n")
    (head,) = find(lines, "↓")
    assert (head[0] + 1, head[1]) in find(lines, "○")


def test_a_load_under_a_bottom_joint_hangs_from_it() -> None:
    assert not arrows(truss_figure(WARREN))["load B"].pushes
    assert arrows(truss_figure(WARREN))["load D"].pushes


def test_a_load_along_a_straight_chord_is_drawn_beside_it() -> None:
    from families import plain_problem

    from tutor.model import Load, Support
    from tutor.notation import Exact

    problem = plain_problem(
        [("A", 0, 0), ("B", 4, 0), ("C", 8, 0), ("D", 4, 3)],
        ["AB", "BC", "AD", "CD", "BD"],
        [Support("A", "pin"), Support("C", "roller")],
        [Load("B", (("right", Exact.of(3)),))],
    )
    assert arrows(truss_figure(problem))["load B"].beside != 0


def test_a_reaction_takes_its_support_away_and_no_other() -> None:
    figure = truss_figure(TRIANGLE, reactions={"B_y": "up"})
    assert set(supports(figure)) == {"A"}
    assert set(arrows(figure)) == {"load C x", "load C y", "B_y"}


@pytest.mark.parametrize(
    ("sense", "toward"),
    [("left", (-1, 0)), ("right", (1, 0)), ("", (1, 0)), ("against", (-1, 0)), ("along", (1, 0))],
)
def test_a_reaction_is_drawn_in_the_sense_chosen(sense: str, toward: tuple[int, int]) -> None:
    assert arrows(truss_figure(TRIANGLE, reactions={"A_x": sense}))["A_x"].toward == toward


def test_an_inclined_reaction_is_drawn_along_its_direction() -> None:
    along = arrows(truss_figure(INCLINED, reactions={"R_B": "up"}))["R_B"].toward
    against = arrows(truss_figure(INCLINED, reactions={"R_B": "down"}))["R_B"].toward
    assert along == pytest.approx((-0.5, 0.8660254))
    assert against == pytest.approx((0.5, -0.8660254))


def test_a_link_that_pulls_points_to_its_fixed_point() -> None:
    x, y = arrows(truss_figure(LINKED, reactions={"R_D": "along"}))["R_D"].toward
    assert (x / y) == pytest.approx(-1 / (2 / 3))
    assert x < 0


def test_a_name_that_is_not_there_is_left_out() -> None:
    figure = truss_figure(TRIANGLE, reactions={"Z_x": "up"}, forces={"ZZ": 3}, highlight={"?"})
    assert figure.items == truss_figure(TRIANGLE).items


def test_a_roller_pushes_from_the_side_of_its_floor() -> None:
    assert supports(truss_figure(INCLINED))["B"].toward == pytest.approx((-0.5, 0.8660254))
    assert supports(truss_figure(CANTILEVER))["B"].toward == pytest.approx((1, 0))


def test_a_pin_high_at_the_end_of_a_truss_stands_on_the_wall() -> None:
    assert supports(truss_figure(CANTILEVER))["A"].toward == (1, 0)
    assert supports(truss_figure(TRIANGLE))["A"].toward == (0, 1)
    assert supports(truss_figure(HANGING))["A"].toward == (1, 0)


def test_results_carry_size_and_letter_and_real_sense() -> None:
    figure = result_figure(WARREN, {**WARREN_FORCES, "C_y": -10.0})
    text = to_cells(figure, 90, 24).text
    for words in ("8.333 T", "13.89 C", "A_x = 0", "A_y = 20 kN", "C_y = 10 kN", "forces in kN"):
        assert words in text
    assert arrows(figure)["C_y"].toward == (0, -1)
    assert "A_x" not in arrows(figure)


@pytest.mark.parametrize("glyphs", GLYPHS)
def test_tension_compression_and_zero_differ_without_colour_or_letters(glyphs: Glyphs) -> None:
    roles: tuple[Role, ...] = ("member-tension", "member-compression", "member-zero")
    for end in ((8.0, 0.0), (0.0, 4.0), (8.0, 4.0), (8.0, -7.0)):
        looks = {
            to_cells(Figure("", (Stroke((0.0, 0.0), end, role),)), 40, 12, glyphs).text
            for role in roles
        }
        assert len(looks) == 3


def test_a_known_force_keeps_the_arrow_it_was_drawn_with_and_its_signed_value() -> None:
    drawn = arrows(joint_figure(TRIANGLE, "C", known={"CA": -5.0, "BC": 4.0}, senses={"BC": "C"}))
    assert drawn["CA"].toward == pytest.approx((-0.8, -0.6))
    assert not drawn["CA"].pushes
    assert drawn["CA"].texts[0] == "F_CA = -5 kN (C)"
    assert drawn["BC"].toward == pytest.approx((-0.8, 0.6))
    assert drawn["BC"].pushes
    assert drawn["BC"].texts[0] == "F_BC = -4 kN (T)"


def test_an_unknown_force_is_drawn_as_assumed_with_its_name() -> None:
    drawn = arrows(joint_figure(TRIANGLE, "C", senses={"BC": "C"}))
    assert not drawn["CA"].pushes
    assert drawn["BC"].pushes
    assert drawn["CA"].dashed
    text = to_cells(joint_figure(TRIANGLE, "C", senses={"BC": "C"}), 60, 16).text
    assert "F_CA = ?" in text
    assert "F_BC = ? (C)" in text


def test_a_reaction_against_its_arrow_keeps_it_and_says_which_way_it_acts() -> None:
    figure = joint_figure(TRIANGLE, "B", known={"B_y": -3}, senses={"B_y": "down"})
    assert arrows(figure)["B_y"].toward == (0.0, -1.0)
    assert arrows(figure)["B_y"].texts[0] == "B_y = -3 kN (acts up)"
    assert "Reaction B_y: drawn down, known, -3 kN; it acts up." in " ".join(figure.sentences)


def test_a_joint_drawing_gives_tidy_slopes_as_rise_and_run() -> None:
    text = to_cells(joint_figure(TRIANGLE, "C"), 76, 20).text
    assert " 4" in text
    assert "3" in text
    assert "3 down for 4 across" in " ".join(to_words(joint_figure(TRIANGLE, "C")))


def test_the_words_of_a_joint_give_place_members_and_load() -> None:
    (said,) = [s for s in to_words(truss_figure(TRIANGLE)) if s.startswith("Joint C 2 m")]
    assert said == (
        "Joint C 2 m right of A and 1.5 m above it: members CB down and right, 3 down for 4 across; "
        "CA down and left, 3 down for 4 across; load 3 kN right and load 12 kN down."
    )


def test_the_words_do_not_say_what_a_support_can_hold() -> None:
    said = " ".join(to_words(truss_figure(LINKED)) + to_words(truss_figure(TRIANGLE)))
    for name in ("A_x", "A_y", "B_y", "R_D", "vertical reaction", "both ways"):
        assert name not in said


def test_the_arm_runs_from_the_point_to_the_line_of_action_at_a_right_angle() -> None:
    items = moment_figure(INCLINED, "R_B", "A").items
    (arm,) = [i for i in items if isinstance(i, Stroke) and i.role == "moment-arm"]
    (line,) = [i for i in items if isinstance(i, Stroke) and i.role == "line-of-action"]
    a = (arm.end[0] - arm.start[0], arm.end[1] - arm.start[1])
    b = (line.end[0] - line.start[0], line.end[1] - line.start[1])
    assert a[0] * b[0] + a[1] * b[1] == pytest.approx(0)
    assert arm.start == (0, 0)
    assert any(isinstance(i, Glyph) and i.symbol == "right-angle" for i in items)


def test_a_force_through_the_point_has_no_arm() -> None:
    figure = moment_figure(TRIANGLE, "A_y", "A")
    assert not any(isinstance(i, Stroke) and i.role == "moment-arm" for i in figure.items)
    assert figure.sentences[-1] == "The line of action of A_y passes through A."


def test_equal_loads_are_written_alike_and_their_unit_is_said_once() -> None:
    text = to_cells(truss_figure(PANELS), 76, 20).text
    assert text.count("10 kN") == 0
    assert "forces in kN" in text


def test_a_chain_of_dimensions_is_cut_down_to_what_fits() -> None:
    figure = truss_figure(PANELS)
    assert to_cells(figure, 120, 20, "ascii").text.count("3 m") == 12
    assert "12 @ 3 m = 36 m" in to_cells(figure, 44, 14, "ascii").text


def test_a_force_at_a_joint_can_be_pointed_out() -> None:
    name = TRIANGLE.meeting["C"][0].name
    plainly, lit = (joint_figure(TRIANGLE, "C", highlight=names) for names in ((), {name}))
    assert plainly.sentences == lit.sentences
    changed = [b for a, b in zip(plainly.items, lit.items, strict=True) if a != b]
    assert changed
    assert all(item.lit for item in changed)
    assert to_cells(plainly, 60, 16).runs != to_cells(lit, 60, 16).runs


def test_a_highlight_shows_without_colour() -> None:
    assert "[C]" in to_cells(truss_figure(TRIANGLE, highlight={"C"}), 60, 16).text
    plainly = to_cells(truss_figure(TRIANGLE), 60, 16).text
    assert to_cells(truss_figure(TRIANGLE, highlight={"AB"}), 60, 16).text != plainly


def test_the_turning_direction_is_marked() -> None:
    assert "↺ +" in to_cells(truss_figure(TRIANGLE, turning="ccw"), 60, 16).text
    assert "+ cw" in to_cells(truss_figure(TRIANGLE, turning="cw"), 60, 16, "ascii").text


@pytest.mark.parametrize("size", [(0, 0), (0, 5), (5, 0), (-3, 4)])
def test_a_page_without_room_is_empty(size: tuple[int, int]) -> None:
    assert to_cells(truss_figure(TRIANGLE), *size).text.strip() == ""


def test_the_test_card_differs_between_glyph_sets() -> None:
    assert len({card(glyphs) for glyphs in GLYPHS}) == 3
    assert card("ascii").isascii()


def test_an_svg_escapes_what_it_is_given() -> None:
    from dataclasses import replace

    hostile = replace(TRIANGLE, title="<script>&\x1b[31m\u202e]]>\"'", force="<b>&")
    text = to_svg(truss_figure(hostile))
    root = ElementTree.fromstring(text)
    assert root.find(f"{SVG}title").text == "<script>&[31m]]>\"'"  # type: ignore[union-attr]
    assert not list(root.iter(f"{SVG}script"))
    assert any("<b>&" in "".join(t.itertext()) for t in root.iter(f"{SVG}text"))


def luminance(colour: str) -> float:
    parts = [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    red, green, blue = (p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    high, low = sorted((luminance(one), luminance(other)), reverse=True)
    return (high + 0.05) / (low + 0.05)


@pytest.mark.parametrize("palette", [LIGHT, DARK, PAPER])
def test_words_and_lines_reach_the_contrast_that_wcag_asks_for(palette: Inks) -> None:
    """WCAG 2.2, success criteria 1.4.3 (text, 4.5 : 1) and 1.4.11 (graphics, 3 : 1)."""
    for colour in (palette.ink, *palette.words.values()):
        assert contrast(colour, palette.ground) >= 4.5
    for colour in palette.lines.values():
        assert contrast(colour, palette.ground) >= 3.0


def narrowest_or_usual(narrowest: tuple[int, int], *sizes: tuple[int, int]) -> list[object]:
    """Every problem at the narrowest size, the usual ones at each; the others are slow there."""
    return [
        pytest.param(
            path,
            size,
            id=f"{path.stem}-{size[0]}x{size[1]}",
            marks=() if size == narrowest or path.stem in USUAL else pytest.mark.slow,
        )
        for path in FILES
        for size in (narrowest, *sizes)
    ]


@pytest.mark.parametrize(("path", "size"), narrowest_or_usual((78, 10), (78, 14), (60, 12)))
def test_dimensions_are_given_rather_than_a_larger_drawing(path, size) -> None:
    figure = truss_figure(load_problem(path))
    axes = {item.axis for item in figure.items if isinstance(item, DimensionChain)}
    chains = lay_out(figure, *size, snap=True).chains
    assert {"y" if chain.upright else "x" for chain in chains} == axes
    assert all(chain.words or chain.after for chain in chains)


@pytest.mark.parametrize(("path", "size"), narrowest_or_usual((78, 8), (78, 14), (60, 20)))
def test_every_slope_at_a_joint_can_be_read(path, size) -> None:
    problem = load_problem(path)
    for joint in problem.joints:
        figure = joint_figure(problem, joint.name)
        page = to_cells(figure, *size)
        shown = " ".join(text for row in page.runs for text, role in row if role == "slope")
        for item in figure.items:
            if isinstance(item, Slope):
                words = f"{item.rise} in {item.run}"
                numbers = set(re.findall(r"[0-9]+", shown))
                assert words in shown or {item.rise, item.run} <= numbers, words
