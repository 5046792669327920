"""Does each name mean one thing, and is what the program knows passed on as a value, never read off a sentence?"""

from __future__ import annotations

import ast
from collections import defaultdict
from collections.abc import Iterator
from functools import cache
from pathlib import Path

ROOT = Path(__file__).parents[1]
PACKAGE = ROOT / "tutor"
CORE = ("model", "statics", "notation", "judge", "lesson", "records")
OF_ITSELF = {
    "judge/mistakes": {"look", "reason", "place", "variants", "shows"},
    "lesson/steps": {"ask", "hints", "typed", "choose", "asked_for", "statements"},
}
"""What each file of a folder says of itself, under one name in all: a mistake, a step."""
AT_THE_BOARD = ("lesson/watching/first_moves.py", "lesson/steps/")
"""Where a lecturer's move has the name of the event that answers the same question."""


@cache
def parsed(path: Path) -> ast.Module:
    return ast.parse(path.read_text(encoding="utf-8"))


def modules(*rooms: str) -> Iterator[tuple[str, ast.Module]]:
    """Each module by its place in the package; all of it, or these rooms."""
    for path in sorted(PACKAGE.rglob("*.py")):
        name = path.relative_to(PACKAGE).as_posix()
        if not rooms or name.split("/")[0] in rooms:
            yield name, parsed(path)


def meanings(name: str, places: set[str]) -> set[str]:
    """The places that give a name a meaning of its own."""
    for folder, own in OF_ITSELF.items():
        inside = {place for place in places if place.startswith(f"{folder}/")}
        if name in own and len(inside) > 1:
            places = places - inside | {folder}
    board, steps = AT_THE_BOARD
    if board in places and any(place.startswith(steps) for place in places):
        places = places - {board}
    return places


def test_no_name_of_a_class_or_a_function_means_two_things_in_the_core() -> None:
    found: dict[str, set[str]] = defaultdict(set)
    for place, module in modules(*CORE):
        for node in module.body:
            if isinstance(node, ast.ClassDef | ast.FunctionDef) and not node.name.startswith("_"):
                found[node.name].add(place)
    assert len(found) > 1000
    twice = {name: at for name, places in found.items() if len(at := meanings(name, places)) > 1}
    assert twice == {}


def test_no_class_has_the_name_of_another() -> None:
    found: dict[str, list[str]] = defaultdict(list)
    for place, module in modules():
        for node in module.body:
            if isinstance(node, ast.ClassDef) and not node.name.startswith("_"):
                found[node.name].append(place)
    assert len(found) > 400
    assert {name: places for name, places in found.items() if len(places) > 1} == {}


def test_nothing_of_the_program_is_imported_under_another_name() -> None:
    renamed = [
        (place, alias.name, alias.asname)
        for place, module in modules()
        for node in ast.walk(module)
        if isinstance(node, ast.ImportFrom) and (node.module or "").startswith("tutor")
        for alias in node.names
        if alias.asname not in (None, alias.name)
    ]
    assert renamed == []


SENTENCES = {
    *("text", "said", "message", "reason", "place", "cure", "why", "how", "words"),
    *("look", "where", "question", "sentence", "title", "note"),
}
"""Fields that hold what the program says to people, or the words that somebody typed."""
TAKEN_APART = {
    *("startswith", "endswith", "removeprefix", "removesuffix", "split", "rsplit", "splitlines"),
    *("partition", "rpartition", "replace", "find", "rfind", "index", "strip", "lstrip", "rstrip"),
}
SEARCHED = {"search", "match", "fullmatch", "sub", "findall", "finditer", "split"}
READERS = ("notation/", "drafting/", "model/toml_")
"""Rooms and files whose business is to read what was typed or stands in a file."""
AS_TYPED = {
    "figure/svg.py": "the blanks around a label",
    "homework/unheaded.py": "whether a typed line has a heading",
    "judge/by_symmetry.py": "whether a typed line speaks of symmetry",
    "judge/declared.py": "which senses a typed line assumes",
    "judge/in_size.py": "whether a typed line speaks of sizes",
    "judge/passed_over.py": "what of a typed line was not read",
    "judge/proportion.py": "whether a typed line speaks of a ratio",
    "judge/spoken.py": "which words of a typed line are names",
    "judge/working.py": "at which joint a typed line says that a force is zero",
    "judge/way_unread.py": "what a typed line says behind its value",
    "lesson/steps/shares_typed.py": "joints with what they take, as they are typed",
    "lesson/steps/symmetry.py": "the value behind a typed equality",
    "paper/roster.py": "the first row of a roster",
    "screens/homework.py": "a line as it was typed",
    "screens/widgets/line_input.py": "what was pasted into a line",
    "screens/widgets/paste_line.py": "what was pasted into a line",
    "screens/workbench.py": "a line as it was typed",
}
"""Other files that look into a text, and into which."""


def holds_words(node: ast.expr) -> bool:
    return isinstance(node, ast.Attribute) and node.attr in SENTENCES


def looks_into(node: ast.AST) -> bool:
    """Whether words are taken apart, searched or looked for in a field that holds some."""
    if isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute):
        taken = node.func.attr in TAKEN_APART and holds_words(node.func.value)
        return taken or (node.func.attr in SEARCHED and any(map(holds_words, node.args[:2])))
    if isinstance(node, ast.Compare):
        sought = zip(node.ops, node.comparators, strict=True)
        return any(isinstance(op, ast.In | ast.NotIn) and holds_words(at) for op, at in sought)
    return False


def test_no_logic_looks_into_a_text_but_where_what_was_typed_is_read() -> None:
    found = {
        place
        for place, module in modules()
        if not place.startswith(READERS) and any(map(looks_into, ast.walk(module)))
    }
    assert found == set(AS_TYPED)


def test_a_look_into_a_text_is_seen_however_it_is_written() -> None:
    for code in ('say.text.startswith("Right")', "re.search(x, defect.message)", "x in line.said"):
        assert any(map(looks_into, ast.walk(ast.parse(code)))), code
    for code in ("say.text", "name.startswith(x)", "x in names", "say.text == other.text"):
        assert not any(map(looks_into, ast.walk(ast.parse(code)))), code
