"""What stands on paper: all that a student needs and no answer on a sheet, every answer on a key?"""

from __future__ import annotations

import json
import re
import xml.etree.ElementTree as ET
from collections.abc import Iterable, Iterator
from dataclasses import replace
from html.parser import HTMLParser

import pytest
from every_problem import FILES, FORCES, problem_of

from tutor.figure import to_svg
from tutor.figure.svg import cramped, crossed
from tutor.model import Problem, load_problem
from tutor.model.caution import CAUTION
from tutor.model.read import read_text
from tutor.paper import PrintedSheet, key, sheet, worked_solution
from tutor.paper.blocks import PIXELS, Block, Paragraph, Picture, PrintedTable, SubHeading, Together
from tutor.paper.held import QUESTION
from tutor.paper.html import to_html
from tutor.paper.keys import class_key
from tutor.paper.lines import rounded
from tutor.paper.markdown import escaped, to_markdown
from tutor.paper.typst import literal, to_pdf, to_typst
from tutor.statics import determinacy, loose_joints, solve

PATHS = FORCES
SMALL = [path for path in PATHS if path.stem in ("lamp-arm", "boarding-boom", "ticket-hut-canopy")]
HOSTILE = 'A*_[x](http://e.test)<img src=x onerror=1> `#` "q" \\ $1$ #eval("1") & | ~ @ {{ }} &lt;'


def hostile(problem: Problem) -> Problem:
    return replace(problem, title=HOSTILE, story=HOSTILE + "\n\n# " + HOSTILE)


def texts(paper: PrintedSheet) -> str:
    html = to_html([paper], "x")
    return re.sub(r"<[^>]+>", " ", re.sub(r"(?s)<style>.*?</style>", "", html))


@pytest.mark.parametrize("path", PATHS, ids=lambda path: path.stem)
def test_a_sheet_tells_no_answer(path) -> None:
    problem = problem_of(path)
    told = set(re.findall(r"\d+(?:\.\d+)?", texts(sheet(problem))))
    without = replace(problem, given=())
    hidden = set(re.findall(r"\d+(?:\.\d+)?", texts(sheet(without)))) if problem.given else told
    mine = set(re.findall(r"\d+(?:\.\d+)?", to_svg_words(problem)))
    for value in solve(problem).values.values():
        size = rounded(abs(value))
        assert size not in hidden or size in mine or value == 0, size


ASKED = [path for path in FILES if problem_of(path).truss is not None]


@pytest.mark.parametrize("path", ASKED, ids=lambda path: path.stem)
def test_a_truss_that_is_asked_about_has_a_sheet_that_does_not_say_what_it_is(path) -> None:
    problem = problem_of(path)
    others = [replace(problem, truss=each) for each in ("determinate", "unstable", "indeterminate")]
    assert len({texts(sheet(each)) for each in others}) == 1
    assert QUESTION in " ".join(texts(sheet(problem)).split())


@pytest.mark.parametrize("path", ASKED, ids=lambda path: path.stem)
def test_the_key_of_a_truss_that_is_asked_about_says_what_it_is_and_why(path) -> None:
    problem = problem_of(path)
    count = determinacy(problem)
    for paper in (key(problem), class_key([("s1", problem), ("s2", problem)])):
        told = " ".join(texts(paper).split())
        assert problem.truss in told
        assert f"{count.members} + {count.reactions}" in told
        assert f"2j = {count.equations}" in told
    if problem.truss == "unstable":
        assert set(loose_joints(problem)) <= set(re.findall(r"\b[A-Z]\b", told))
    assert problem.truss in texts(worked_solution(problem))


def test_the_key_of_a_class_has_a_title_that_is_true_of_each_and_tables_of_like_width() -> None:
    problem = problem_of(next(path for path in PATHS if path.stem == "boat-shed-roof"))
    own = [replace(problem, title=f"Boom, on the {side} bank") for side in ("left", "right")]
    paper = class_key([("s1", own[0]), ("s2", own[1])])
    assert paper.title == "Boom: key"
    bare = [(s, replace(p, title=p.title.replace(",", ""))) for s, p in zip("ab", own, strict=True)]
    assert class_key(bare).title == "Boom on the …: key"
    assert class_key([("s1", own[0]), ("s2", own[0])]).title == "Boom, on the left bank: key"
    wide = [len(block.head) for block in paper.blocks if isinstance(block, PrintedTable)]
    assert sum(width - 1 for width in wide) == len(problem.unknowns)
    assert max(wide) - min(wide) <= 1


def test_the_key_of_a_class_has_one_table_where_a_page_has_room_for_it() -> None:
    """As a page of A4 has it with margins of 2.5 cm: some hundred letters of 9 points."""
    problem = problem_of(next(path for path in PATHS if path.stem == "baggage-landing"))
    for whom, tables in (("s1", 1), ("s" * 80, 4)):
        grids = [b for b in class_key([(whom, problem)]).blocks if isinstance(b, PrintedTable)]
        assert len(grids) == tables
        assert [n for grid in grids for n in grid.head[1:]] == list(problem.unknowns)


def to_svg_words(problem: Problem) -> str:
    """What the file itself says: numbers of the story, the loads and the picture."""
    from tutor.figure import truss_figure

    return problem.title + problem.story + re.sub(r"<[^>]+>", " ", to_svg(truss_figure(problem)))


@pytest.mark.parametrize("path", PATHS, ids=lambda path: path.stem)
def test_a_key_has_every_force_with_its_letter(path) -> None:
    problem = problem_of(path)
    (reactions, members) = (b for b in key(problem).blocks if isinstance(b, PrintedTable))
    forces = solve(problem).values
    assert [row[0] for row in (*reactions.rows, *members.rows)] == list(problem.unknowns)
    for name, value, letter in members.rows:
        assert float(value) == pytest.approx(abs(forces[name]), rel=1e-3, abs=1e-9)
        assert letter == ("–" if forces[name] == 0 else "T" if forces[name] > 0 else "C")
    for name, value, way in reactions.rows:
        assert float(value.replace("−", "-")) == pytest.approx(forces[name], rel=1e-3, abs=1e-9)
        assert (way != "–") == (forces[name] != 0)


@pytest.mark.parametrize("path", PATHS, ids=lambda path: path.stem)
def test_a_sheet_has_room_for_two_reactions_at_each_support_and_for_every_member(path) -> None:
    problem = problem_of(path)
    grids = [block for block in sheet(problem).blocks if isinstance(block, PrintedTable)]
    if "reactions" in problem.given:
        assert len(grids) == 1
    else:
        rows = grids[0].rows
        assert [row[0] for row in rows] == [support.joint for support in problem.supports]
        assert {len(row) for row in rows} == {7}
        assert not any(cell for row in rows for cell in row[1:])
    members = [row[at] for at in (0, 3) for row in grids[-1].rows]
    assert [name for name in members if name] == list(problem.member)


@pytest.mark.parametrize("path", PATHS, ids=lambda path: path.stem)
def test_the_arrows_of_a_result_have_room_for_head_and_bar(path) -> None:
    (picture,) = (block for block in key(problem_of(path)).blocks if isinstance(block, Picture))
    assert not cramped(picture.figure, picture.share * PIXELS)


def test_no_cell_of_a_key_is_left_to_be_filled_in() -> None:
    problem = load_problem(next(p for p in PATHS if p.stem == "creek-footbridge"))
    assert 0.0 in solve(problem).values.values()
    assert all(
        c for b in key(problem).blocks if isinstance(b, PrintedTable) for row in b.rows for c in row
    )


def test_the_name_of_a_reaction_is_set_with_its_index_whatever_its_joint_is_called() -> None:
    problem = load_problem(next(p for p in PATHS if p.stem == "creek-footbridge"))
    html = to_html([key(problem)], "x")
    assert "<i>L0</i><sub>y</sub>" in html
    assert ">L0<tspan" in html
    assert "L0_y" not in re.sub(r"(?s)<desc.*?</desc>", "", html)


def test_a_worked_solution_visits_every_joint() -> None:
    problem = load_problem(next(p for p in PATHS if p.stem == "linkspan"))
    said = texts(worked_solution(problem))
    assert all(f"Joint {joint} " in said or f"Joint {joint}\n" in said for joint in problem.joint)


class Reader(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.tags: list[tuple[str, dict[str, str | None]]] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append((tag, dict(attrs)))


@pytest.mark.parametrize("make", [sheet, key, worked_solution])
@pytest.mark.parametrize("path", SMALL, ids=lambda path: path.stem)
def test_html_needs_nothing_beside_it_and_holds_no_markup_of_a_file(path, make) -> None:
    problem = hostile(problem_of(path))
    html = to_html([make(problem, HOSTILE), make(problem, "")], HOSTILE)
    reader = Reader()
    reader.feed(html)
    names = {tag for tag, _ in reader.tags}
    assert not names & {"script", "img", "link", "iframe", "object", "embed", "a", "base"}
    for _, attributes in reader.tags:
        assert not {"src", "href", "onerror", "onload"} & set(attributes)
    assert "url(" not in html
    ids = [a["id"] for _, a in reader.tags if "id" in a]
    assert len(ids) == len(set(ids))
    assert html.count(CAUTION) >= 2


@pytest.mark.parametrize("make", [sheet, key, worked_solution])
def test_markdown_takes_nothing_of_a_file_for_markup(make) -> None:
    problem = hostile(load_problem(SMALL[0]))
    text, pictures = to_markdown([make(problem, HOSTILE)], "a")
    assert set(re.findall(r"!\[[^]]*\]\(([^)]+)\)", re.sub(r"\\.", "", text))) == set(pictures)
    for picture in pictures.values():
        assert ET.fromstring(picture).tag.endswith("svg")
        assert CAUTION in picture
    for line in text.splitlines():
        plain = re.sub(r"\\.", "", line)
        assert not re.search(r"[`<$]|\]\(http", plain), line
    assert escaped(CAUTION) in text


@pytest.mark.parametrize(
    ("text", "written"),
    [
        ("# a", r"\# a"),
        ("1. a", r"1\. a"),
        ("- a", r"\- a"),
        ("a | b", r"a \| b"),
        ("_x_", r"\_x\_"),
    ],
)
def test_plain_text_stays_plain_in_markdown(text: str, written: str) -> None:
    assert escaped(text) == written


@pytest.mark.parametrize("text", [HOSTILE, 'a"b', "a\\b", "#x", "a\nb", "ΣF_x − √2"])
def test_text_is_a_string_for_typst(text: str) -> None:
    assert json.loads(literal(text)) == " ".join(text.split())


@pytest.mark.parametrize("make", [sheet, key, worked_solution])
def test_pages_are_set_whatever_a_file_holds(make) -> None:
    pytest.importorskip("typst")
    problem = hostile(load_problem(SMALL[0]))
    paper = make(problem, HOSTILE)
    assert to_pdf([paper, paper]).startswith(b"%PDF")
    source, pictures = to_typst([paper])
    assert source.count("#image") + source.count("image(") >= len(pictures)


@pytest.mark.parametrize("make", [sheet, key, worked_solution])
def test_each_page_bears_the_caution_and_each_later_one_says_whose_it_is(make) -> None:
    """Pages are torn apart; each has to say for itself what it is and what it is not for."""
    problem = load_problem(SMALL[0])
    whom = ("Dov Marle", "Juno Pask")
    source, _ = to_typst([make(problem, name) for name in whom])
    pages = [line for line in source.splitlines() if line.startswith("#set page(header:")]
    for name, page in zip(whom, pages, strict=True):
        assert name in page.partition(" footer: ")[0]
        assert CAUTION in page.partition(" footer: ")[2]
    html = to_html([make(problem, name) for name in whom], "a")
    later = re.findall(r'<div class="room page"><p>([^<]*)</p>', html)
    assert all(any(name in told for name in whom) for told in later)
    assert bool(later) == (make is sheet)


def test_given_reactions_stand_on_the_sheet() -> None:
    problem = load_problem(next(p for p in PATHS if p.stem == "ticket-hut-canopy"))
    (told,) = (
        b.text
        for b in sheet(problem).blocks
        if isinstance(b, Paragraph) and "known" in b.text and "=" in b.text
    )
    for name in problem.reaction:
        assert f"{name} = {rounded(solve(problem).value(name))}" in told


def test_a_sheet_says_for_whom_it_is() -> None:
    problem = load_problem(SMALL[0])
    assert "Dov Marle (s1041)" in texts(sheet(problem, "Dov Marle (s1041)"))
    assert not any(isinstance(b, SubHeading) for b in sheet(problem).blocks)


LOFT = """\
title = "Loft over the tow path"
force = "kN"
length = "m"
members = ["AB", "BC", "AD", "DB", "DE", "EB", "EC"]
[joints]
A = [24, 0]
B = [12, 0]
C = [0, 0]
D = [18, 4]
E = [6, 4]
[supports]
A = "pin"
C = "roller"
[[loads]]
at = "D"
down = 16
[[loads]]
at = "E"
down = 12
left = 9
"""


def pictures_in(blocks: Iterable[Block]) -> Iterator[Picture]:
    for block in blocks:
        if isinstance(block, Together):
            yield from pictures_in(block.blocks)
        elif isinstance(block, Picture):
            yield block


def test_the_forces_of_a_joint_are_named_clear_of_its_arrows() -> None:
    read = read_text(LOFT, "loft.toml")
    assert read.problem is not None
    pictures = list(pictures_in(worked_solution(read.problem).blocks))
    assert not any(crossed(each.figure, PIXELS * each.share) for each in pictures)
    assert any(crossed(each.figure, PIXELS * 0.46) for each in pictures)
