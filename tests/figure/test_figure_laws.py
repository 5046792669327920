"""What holds for the drawing of every truss, at every size, in every glyph set?"""

import math
import unicodedata
from unittest import mock
from xml.etree import ElementTree

from families import pratt
from hypothesis import given
from hypothesis import strategies as st
from strategies import make_truss, trusses, wall_trusses

from tutor.figure import (
    Figure,
    Glyphs,
    joint_figure,
    layout,
    moment_figure,
    part_figure,
    placing,
    plain,
    result_figure,
    to_cells,
    to_svg,
    to_words,
    truss_figure,
)
from tutor.figure.layout import lay_out, place_all
from tutor.figure.parts import Arrow, Point, Tag
from tutor.figure.placing import Placed, PlacedWords, Slots, place
from tutor.model import Problem, load_problem
from tutor.model.caution import CAUTION
from tutor.shipped import shipped_problems
from tutor.statics.body import joint_body, part, whole

GLYPHS: tuple[Glyphs, ...] = ("braille", "blocks", "ascii")
ALLOWED = {
    "braille": set(map(chr, range(0x2800, 0x2900))) | set("○◉×←↑→↓↖↗↘↙↺↻├┼┤─┬┴│°"),
    "blocks": set("▘▝▀▖▌▞▛▗▚▐▜▄▙▟█○◉×←↑→↓↖↗↘↙↺↻├┼┤─┬┴│°"),
    "ascii": set(),
}
problems = st.one_of(trusses(), wall_trusses())
BRACKET = load_problem(shipped_problems() / "first-steps" / "lamp-arm.toml")


def parts_of(problem: Problem) -> st.SearchStrategy[set[str]]:
    return st.sets(st.sampled_from([joint.name for joint in problem.joints]), min_size=1)


@st.composite
def figures(draw: st.DrawFn) -> Figure:
    problem = draw(problems)
    kind = draw(st.sampled_from(("truss", "free body", "result", "joint", "part", "moment")))
    values = {name: draw(st.sampled_from((0.0, 12.5, -7.071, 1e7))) for name in problem.unknowns}
    senses = {r.name: draw(st.sampled_from(("along", "against", ""))) for r in problem.reactions}
    if kind == "truss":
        return truss_figure(problem)
    if kind == "free body":
        return truss_figure(problem, reactions=senses, turning="ccw", highlight=set(senses))
    if kind == "result":
        return result_figure(problem, values)
    joint = draw(st.sampled_from(problem.joints)).name
    if kind in ("joint", "part"):
        known = {n: v for n, v in values.items() if draw(st.booleans())}
        pushed = {m.name: "C" for m in problem.members if draw(st.booleans())}
        senses.update(pushed)
        if kind == "joint":
            return joint_figure(problem, joint, known=known, senses=senses)
        kept = draw(parts_of(problem))
        return part_figure(problem, kept, known=known, senses=senses, about=joint)
    force = draw(st.sampled_from(whole(problem).forces)).name
    return moment_figure(problem, force, joint, senses=senses)


sizes = st.tuples(st.integers(1, 130), st.integers(1, 50))


@given(figures(), sizes, st.sampled_from(GLYPHS))
def test_a_page_has_the_size_asked_for_in_single_width_characters_of_its_set(
    figure: Figure, size: tuple[int, int], glyphs: Glyphs
) -> None:
    columns, rows = size
    page = to_cells(figure, columns, rows, glyphs)
    assert page.columns == columns
    assert len(page.rows) == rows
    for row in page.rows:
        assert len(row) == columns
        for char, _ in row:
            assert len(char) == 1
            assert char in ALLOWED[glyphs] or (char.isascii() and char.isprintable())
            assert unicodedata.east_asian_width(char) not in "WF"
            assert not unicodedata.combining(char)


@given(figures(), sizes, st.sampled_from(GLYPHS))
def test_a_page_depends_on_its_arguments_alone(
    figure: Figure, size: tuple[int, int], glyphs: Glyphs
) -> None:
    assert to_cells(figure, *size, glyphs) == to_cells(figure, *size, glyphs)


@given(figures(), sizes)
def test_runs_and_text_say_the_same_as_the_cells(figure: Figure, size: tuple[int, int]) -> None:
    page = to_cells(figure, *size)
    for row, runs, line in zip(page.rows, page.runs, page.text.split("\n"), strict=True):
        joined = "".join(text for text, _ in runs)
        assert joined == "".join(char for char, _ in row)
        assert joined.rstrip() == line


@given(problems)
def test_every_joint_has_its_name_where_there_is_room(problem: Problem) -> None:
    page = to_cells(truss_figure(problem), 110, 44)
    shown = [
        "".join(char for char in text if char not in "○◉").split()
        for row in page.runs
        for text, role in row
        if role == "joint"
    ]
    assert sorted(n for names in shown for n in names) == sorted(j.name for j in problem.joints)


def placed_on(figure: Figure, columns: int, rows: int) -> tuple[list[Placed], set[tuple[int, int]]]:
    """What words went where, and the cells of joints, on a board with nothing else."""
    sheet = lay_out(figure, columns, rows, snap=True)
    board = Slots(columns, rows)
    joints = set()
    for sign in sheet.signs:
        if sign.symbol == "joint":
            board.take(*sign.at, 1)
            joints.add(board.corner(*sign.at, 1))
    return list(place_all(board, sheet)), joints


@given(figures(), sizes)
def test_words_cover_neither_each_other_nor_a_joint_nor_the_edge(
    figure: Figure, size: tuple[int, int]
) -> None:
    placed, joints = placed_on(figure, *size)
    board, taken = Slots(*size), set()
    for one in placed:
        column, row = board.corner(one.x, one.y, len(one.text))
        cells = {(column + i, row) for i in range(len(one.text))}
        assert not cells & joints
        assert not cells & taken
        assert all(0 <= c < size[0] and 0 <= r < size[1] for c, r in cells)
        taken |= cells


def crossed(board: Slots, x: float, y: float, words: PlacedWords, length: int) -> int | None:
    """How many cells of a line not their own words here would cover; None where they may not go."""
    if board.cost(x, y, length, words.owner) is None:
        return None
    column, row = board.corner(x, y, length)
    cells = range(row * board.width + column, row * board.width + column + length)
    return sum(bool(board.ink[c]) and not 0 < words.owner == board.owner[c] for c in cells)


@given(figures(), st.sampled_from(((32, 12), (48, 11), (60, 20), (100, 34))))
def test_words_lie_across_a_line_only_where_none_of_their_places_is_free(
    figure: Figure, size: tuple[int, int]
) -> None:
    def watched(board: Slots, words: PlacedWords) -> Placed | None:
        hard = bytes(board.hard)
        placed = place(board, words)
        after, board.hard[:] = bytes(board.hard), hard
        if placed is not None and crossed(board, placed.x, placed.y, words, len(placed.text)):
            places = next(spots for text, spots in words.texts if text == placed.text)
            free = [crossed(board, x, y, words, len(placed.text)) for x, y, _ in places]
            assert 0 not in free, placed
        board.hard[:] = after
        return placed

    with mock.patch.multiple(layout, place=watched), mock.patch.multiple(placing, place=watched):
        to_cells(figure, *size)


@given(figures(), st.sampled_from(((32, 12), (48, 9), (60, 20), (100, 34))))
def test_the_name_of_a_joint_is_nearest_to_it_and_on_its_side_of_every_member(
    figure: Figure, size: tuple[int, int]
) -> None:
    sheet = lay_out(figure, *size, snap=True)
    joints = [sign.at for sign in sheet.signs if sign.symbol == "joint"]
    for words in sheet.names:
        for x, y, _ in (spot for _, spots in words.texts for spot in spots):
            off = math.dist(words.anchor, (x, y))
            assert all(math.dist(joint, (x, y)) >= off - 1e-9 for joint in joints)
            way = [_between(words.anchor, (x, y), step / 40) for step in range(41)]
            for line in (line for line in sheet.lines if line.owner and line.start != line.end):
                if words.anchor not in (line.start, line.end):
                    assert not passed(way, line.start, line.end), (words, line)


def _between(one: Point, other: Point, part: float) -> Point:
    return one[0] + part * (other[0] - one[0]), one[1] + part * (other[1] - one[1])


def passed(way: list[Point], start: Point, end: Point) -> bool:
    """Whether points one after the other go through the line from start to end, to its other side."""
    dx, dy = end[0] - start[0], end[1] - start[1]
    beside = [dx * (y - start[1]) - dy * (x - start[0]) for x, y in way]
    along = [(dx * (x - start[0]) + dy * (y - start[1])) / (dx * dx + dy * dy) for x, y in way]
    return any(
        one * other < -1e-9 and 0.05 < part < 0.95
        for one, other, part in zip(beside, beside[1:], along, strict=False)
    )


@given(st.sampled_from(("left", "right")), st.sampled_from(((47, 9), (47, 11), (50, 12), (76, 20))))
def test_the_name_of_a_reaction_keeps_clear_of_the_members_at_its_joint(
    sense: str, size: tuple[int, int]
) -> None:
    senses = {"A_x": sense, "B_x": sense}
    for forces in (None, {"A_x": 360.0, "B_x": 360.0}):
        page = to_cells(truss_figure(BRACKET, reactions=senses, forces=forces), *size).text
        for name in ("A_x", "B_x"):
            row = next(row for row in page.split("\n") if name in row)
            name += " = 360 N" if f"{name} = 360 N" in row else ""
            before, _, behind = f" {row} ".partition(name)
            assert before[-1] == behind[0] == " ", row


@given(problems, st.sampled_from(((60, 16), (76, 20), (120, 40))))
def test_a_truss_keeps_its_true_proportions(problem: Problem, size: tuple[int, int]) -> None:
    sheet = lay_out(truss_figure(problem), *size, snap=True)
    places = [sign.at for sign in sheet.signs if sign.symbol == "joint"]
    for joint, (x, y) in zip(problem.joints, places, strict=True):
        for other, (u, v) in zip(problem.joints, places, strict=True):
            apart = math.dist(joint.at, other.at) * sheet.page.scale
            assert abs(math.hypot(u - x, v - y) - apart) <= math.hypot(1.0, 2.0)


@given(figures(), st.booleans(), st.booleans(), st.sampled_from((200, 480, 720, 1200)))
def test_an_svg_is_well_formed_and_fetches_nothing(
    figure: Figure, dark: bool, paper: bool, width: int
) -> None:
    text = to_svg(figure, dark=dark, paper=paper, width=width)
    root = ElementTree.fromstring(text)
    assert root.tag == "{http://www.w3.org/2000/svg}svg"
    assert text.count("http") == 1
    for element in root.iter():
        assert element.tag.rpartition("}")[2] not in ("script", "image", "use", "style", "a")
        assert not any("href" in key or key.startswith("on") for key in element.attrib)
    title, about = root[0], root[1]
    assert title.text == figure.title
    assert about.text == " ".join((*figure.sentences, CAUTION))


@given(problems)
def test_the_words_name_every_joint_member_and_support(problem: Problem) -> None:
    said = " ".join(to_words(truss_figure(problem)))
    for joint in problem.joints:
        assert f"Joint {joint.name} " in said
        for member in problem.meeting[joint.name]:
            far = member.other(joint.name)
            assert f"{joint.name}{far} " in said or f"{joint.name}-{far} " in said
    for support in problem.supports:
        assert f"Joint {support.joint} is " in said


@given(problems, st.data())
def test_the_words_of_a_joint_say_each_force_once(problem: Problem, data: st.DataObject) -> None:
    joint = data.draw(st.sampled_from(problem.joints)).name
    values = {name: data.draw(st.floats(-99, 99)) for name in problem.unknowns}
    known = {n: v for n, v in values.items() if data.draw(st.booleans())}
    figure = joint_figure(problem, joint, known=known)
    assert len(figure.sentences) == 1 + len(joint_body(problem, joint).forces)


@given(problems, st.data(), st.booleans())
def test_a_part_shows_every_force_on_it_once_and_no_other(
    problem: Problem, data: st.DataObject, found: bool
) -> None:
    kept = data.draw(parts_of(problem))
    values = {n: data.draw(st.sampled_from((0.0, 12.5, -7.5))) for n in problem.unknowns}
    figure = part_figure(problem, kept, known=values if found else {})
    acting = [force.name for force in part(problem, kept).forces]
    arrows = [item.name for item in figure.items if isinstance(item, Arrow)]
    nothing = [n for n in acting if found and values.get(n) == 0.0]
    assert sorted(arrows + nothing) == sorted(acting)
    texts = [item.texts[0] for item in figure.items if isinstance(item, Arrow | Tag)]
    for name in {*nothing}:
        written = f"F_{name}" if name in problem.member and "-" not in name else name
        assert texts.count(f"{written} = 0") == 1


@given(problems, st.data())
def test_what_is_cut_pulls_away_from_the_part_or_pushes_where_it_was_drawn_so(
    problem: Problem, data: st.DataObject
) -> None:
    kept = data.draw(parts_of(problem))
    pushed = data.draw(st.sets(st.sampled_from([m.name for m in problem.members])))
    figure = part_figure(problem, kept, senses=dict.fromkeys(pushed, "C"))
    for item in figure.items:
        if isinstance(item, Arrow) and item.name in problem.member:
            member = problem.member[item.name]
            inside, outside = sorted((member.start, member.end), key=lambda n: n not in kept)
            (x, y), (u, v) = problem.joint[inside].at, problem.joint[outside].at
            along = item.toward[0] * (u - x) + item.toward[1] * (v - y)
            assert item.at == (x, y)
            assert inside in kept
            assert outside not in kept
            assert item.pushes == (item.name in pushed) == (along < 0)


@given(problems, st.data())
def test_the_words_of_a_part_say_each_force_and_each_of_its_joints(
    problem: Problem, data: st.DataObject
) -> None:
    kept = data.draw(parts_of(problem))
    said = part_figure(problem, kept).sentences
    for name in kept:
        assert sum(sentence.startswith(f"Joint {name} ") for sentence in said) == 1
    cut = [f for f in part(problem, kept).forces if f.kind == "member"]
    assert sum(sentence.startswith("Member ") for sentence in said) == len(cut)
    for reaction in problem.reactions:
        told = [s for s in said if f": {reaction.name} drawn " in s]
        assert len(told) == (reaction.joint in kept)


@given(problems, st.data())
def test_a_moment_drawing_never_writes_the_length_of_the_arm(
    problem: Problem, data: st.DataObject
) -> None:
    force = data.draw(st.sampled_from(whole(problem).forces)).name
    joint = data.draw(st.sampled_from(problem.joints)).name
    reactions = dict.fromkeys(problem.reaction, "")
    bare = truss_figure(problem, reactions=reactions, highlight={force})
    drawn = moment_figure(problem, force, joint)
    added = drawn.items[len(bare.items) :]
    assert drawn.items[: len(bare.items)] == bare.items
    assert not any(isinstance(item, Tag) for item in added)
    (said,) = drawn.sentences[len(bare.sentences) :]
    assert said.replace(force, "").replace(joint, "").isascii()
    assert not any(c.isdigit() for c in said.replace(force, "").replace(joint, ""))


def test_two_hundred_joints_are_drawn_at_every_size() -> None:
    figure = truss_figure(pratt(100, 3, 4, 10))
    for size in ((20, 6), (76, 20), (200, 60)):
        assert len(to_cells(figure, *size).rows) == size[1]
    assert ElementTree.fromstring(to_svg(figure)) is not None


@given(st.text())
def test_plain_text_is_one_line_without_anything_hidden(text: str) -> None:
    kept = plain(text)
    assert plain(kept) == kept
    assert not any(unicodedata.category(char)[0] == "C" for char in kept)
    assert "\n" not in kept
    if text.isascii() and text.isprintable():
        assert kept == text


@given(st.text(), st.text(), sizes, st.sampled_from(GLYPHS))
def test_no_text_of_a_file_leaves_a_control_character_anywhere(
    title: str, unit: str, size: tuple[int, int], glyphs: Glyphs
) -> None:
    made = make_truss(3, 4)
    problem = Problem(title, unit, unit, made.joints, made.members, made.supports, made.loads)
    figure = truss_figure(problem)
    for row in to_cells(figure, *size, glyphs).rows:
        for char, _ in row:
            assert len(char) == 1
            assert unicodedata.category(char)[0] != "C"
            assert unicodedata.east_asian_width(char) not in "WF"
            assert glyphs != "ascii" or char.isascii()
    assert ElementTree.fromstring(to_svg(figure)) is not None
    for sentence in to_words(figure):
        assert plain(sentence) == sentence


def test_a_shorter_wording_is_taken_where_only_that_lies_clear_of_an_arrow() -> None:
    for crossed, shown in ((None, "F_BD = -680 lb (C)"), (3.5, "F_BD = -680 (C)"), (17.5, "")):
        board = Slots(20, 3)
        if crossed is not None:
            board.line((crossed, 0.0), (crossed, 6.0), placing.SIGN)
        texts = ("F_BD = -680 lb (C)", "F_BD = -680 (C)")
        spots = tuple((text, ((20 - len(text) / 2, 3.0, 0.0),)) for text in texts)
        placed = place(board, PlacedWords(spots, "member", (10.0, 3.0)))
        assert placed is not None
        assert placed.text == (shown or texts[0])
