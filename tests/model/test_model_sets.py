"""Does a folder give its problems in order, whatever is wrong with one of them?"""

from __future__ import annotations

from pathlib import Path

import pytest
from test_model_defects import SOUND

from tutor.model import ProblemError, load_set, load_sets

SHIPPED = Path(__file__).parents[2] / "problems"


def put(folder: Path, name: str, text: str) -> Path:
    folder.mkdir(parents=True, exist_ok=True)
    (folder / name).write_text(text, "utf-8")
    return folder / name


def titled(title: str) -> str:
    return SOUND.replace("Lamp arm", title)


def messages(error: ProblemError) -> list[tuple[int, str]]:
    return [(defect.line, defect.message) for defect in error.problems]


def test_the_order_is_the_set_files_own(tmp_path: Path) -> None:
    for name in ("a", "b", "c"):
        put(tmp_path, f"{name}.toml", titled(name))
    put(tmp_path, "set.toml", 'title = "Harbour"\norder = ["c", "a.toml", "b"]')
    read = load_set(tmp_path)
    assert (read.title, [p.title for p in read.problems]) == ("Harbour", ["c", "a", "b"])
    assert not read.broken
    assert not read.warnings


def test_without_a_set_file_the_order_is_by_name_and_the_title_the_folders(tmp_path: Path) -> None:
    folder = tmp_path / "first-steps"
    for name in ("b", "a", "c"):
        put(folder, f"{name}.toml", titled(name))
    put(folder, ".hidden.toml", "?")
    put(folder, "notes.txt", "?")
    read = load_set(folder)
    assert (read.title, [p.title for p in read.problems]) == ("First steps", ["a", "b", "c"])
    assert not read.broken


def test_a_broken_file_leaves_the_rest_usable(tmp_path: Path) -> None:
    put(tmp_path, "a.toml", titled("a"))
    broken = put(tmp_path, "b.toml", SOUND.replace("level = 2", "level = 9"))
    put(tmp_path, "c.toml", titled("c"))
    (tmp_path / "d.toml").mkdir()
    read = load_set(tmp_path)
    assert [p.title for p in read.problems] == ["a", "c"]
    assert list(read.broken) == [broken, tmp_path / "d.toml"]
    assert messages(read.broken[broken]) == [(4, "level is 9")]


def test_every_defect_of_a_set_file_is_reported_and_the_problems_kept(tmp_path: Path) -> None:
    for name in ("arm", "boom", "crane"):
        put(tmp_path, f"{name}.toml", titled(name))
    text = 'tilte = "X"\norder = [\n  "boom",\n  "crain",\n  "boom",\n  3,\n]'
    path = put(tmp_path, "set.toml", text)
    read = load_set(tmp_path)
    assert [p.title for p in read.problems] == ["boom", "arm", "crane"]
    assert messages(read.broken[path]) == [
        (1, '"tilte" is an unknown key'),
        (1, "there is no title"),
        (2, 'order leaves out "arm"'),
        (2, 'order leaves out "crane"'),
        (4, 'order names "crain", which is not there'),
        (5, 'order names "boom" twice'),
        (6, "order holds a number, not only texts"),
    ]
    assert 'did you mean "crane"?' in read.broken[path].problems[4].cure


@pytest.mark.parametrize(
    "text", ["", 'title = ""', "title = 3", "title = [", 'title = "x"\norder = "a"', "\x00", "é: ("]
)
def test_a_set_file_that_cannot_be_used_costs_no_problem(tmp_path: Path, text: str) -> None:
    put(tmp_path, "a.toml", titled("a"))
    path = put(tmp_path, "set.toml", text)
    read = load_set(tmp_path)
    assert [p.title for p in read.problems] == ["a"]
    assert read.title
    assert read.broken[path].problems


def test_a_single_file_is_a_set_of_one(tmp_path: Path) -> None:
    path = put(tmp_path, "a.toml", titled("a"))
    read = load_set(path)
    assert (read.title, len(read.problems), dict(read.broken)) == ("a", 1, {})
    broken = put(tmp_path, "lamp-arm.toml", "title = 3")
    read = load_set(broken)
    assert (read.title, read.problems, list(read.broken)) == ("Lamp arm", (), [broken])


def test_the_set_file_itself_names_its_folder(tmp_path: Path) -> None:
    put(tmp_path, "a.toml", titled("a"))
    path = put(tmp_path, "set.toml", 'title = "Harbour"')
    assert load_set(path) == load_set(tmp_path)


def test_a_folder_of_sets_gives_each_set_in_name_order(tmp_path: Path) -> None:
    put(tmp_path / "two", "a.toml", titled("a"))
    put(tmp_path / "one", "a.toml", titled("a"))
    put(tmp_path / "one" / "more", "a.toml", titled("a"))
    put(tmp_path / ".git", "a.toml", titled("a"))
    (tmp_path / "empty").mkdir()
    (tmp_path / "two" / "round").symlink_to(tmp_path)
    assert [s.title for s in load_sets(tmp_path)] == ["One", "More", "Two"]
    put(tmp_path, "top.toml", titled("top"))
    assert [len(s.problems) for s in load_sets(tmp_path)] == [1, 1, 1, 1]
    assert load_sets(tmp_path / "top.toml") == (load_set(tmp_path / "top.toml"),)


def test_nothing_to_read_is_an_error_that_says_so(tmp_path: Path) -> None:
    for read in (load_set, load_sets):
        for path in (tmp_path, tmp_path / "none", tmp_path / "a\0b"):
            with pytest.raises(ProblemError) as caught:
                read(path)
            assert len(caught.value.problems) == 1


def test_warnings_of_usable_problems_are_kept(tmp_path: Path) -> None:
    text = SOUND.replace("C = [2, 3]", "C = [2, 3]\nD = [2, 0]").replace('"CA"', '"CA", "CD"')
    path = put(tmp_path, "a.toml", text)
    for read in (load_set(tmp_path), load_set(path)):
        assert len(read.problems) == 1
        assert [d.severity for d in read.warnings[path]] == ["warning"]


def test_every_shipped_set_is_whole() -> None:
    sets = load_sets(SHIPPED)
    assert sum(len(s.problems) for s in sets) >= 12
    assert [(s.broken, s.warnings) for s in sets] == [({}, {})] * len(sets)


def test_a_folder_of_sets_may_say_in_which_order_they_come(tmp_path: Path) -> None:
    for name in ("a", "b", "c"):
        put(tmp_path / name, "arm.toml", titled(name))
    (tmp_path / "notes").mkdir()
    path = put(tmp_path, "set.toml", 'order = ["c", "a", "b"]')
    assert [found.title for found in load_sets(tmp_path)] == ["C", "A", "B"]
    assert [found.title for found in load_sets(path)] == ["C", "A", "B"]


def test_every_defect_in_the_order_of_sets_is_reported_and_the_sets_kept(tmp_path: Path) -> None:
    for name in ("arms", "booms"):
        put(tmp_path / name, "one.toml", titled(name))
    path = put(tmp_path, "set.toml", 'hints = "none"\norder = ["boms", "arms",\n"arms"]\nodrer = 1')
    broken, *found = load_sets(tmp_path)
    assert [each.title for each in found] == ["Arms", "Booms"]
    assert messages(broken.broken[path]) == [
        (1, '"hints" says nothing in a folder of sets'),
        (2, 'order names "boms", which is not there'),
        (2, 'order leaves out "booms"'),
        (3, 'order names "arms" twice'),
        (4, '"odrer" is an unknown key'),
    ]
    assert 'did you mean "booms"?' in broken.broken[path].problems[1].cure
