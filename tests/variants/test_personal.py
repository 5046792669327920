"""Has a student who said their id once a set with their own numbers from then on?"""

from __future__ import annotations

import io
from pathlib import Path

import pytest

from tutor import cli, load_set, variant
from tutor.model.first import PROBLEM
from tutor.records import Keep, read_settings
from tutor.screens.shelf import read_shelf
from tutor.variants import personal
from tutor.variants.one_student import AS_WRITTEN

VARY = PROBLEM.split("# [vary]")[0] + (
    "[vary]\nloads = { C = { down = [9, 12, 15, 18] } }\n"
    "joints = { C = { x = { from = 2, to = 6, step = 0.5 } }, B = { y = [2, 3, 4] } }\n"
)


@pytest.fixture
def my_set(tmp_path: Path) -> Path:
    folder = tmp_path / "my-set"
    folder.mkdir()
    (folder / "arm.toml").write_text(VARY, "utf-8")
    (folder / "plain.toml").write_text(PROBLEM.replace("Arm over", "Beam over"), "utf-8")
    rules = 'title = "Week 3"\nid = "week-3"\ndue = 2026-12-01\n'
    (folder / "set.toml").write_text(rules, "utf-8")
    return folder


def test_a_set_has_the_numbers_of_its_student_and_says_so(my_set: Path) -> None:
    own = personal(load_set(my_set), "s1041")
    assert own.problems[0] == variant(my_set / "arm.toml", student="s1041", set="week-3")
    assert own.problems[1] == load_set(my_set).problems[1]
    assert own.title == "Week 3 (the numbers of s1041; due 2026-12-01)"


def test_a_set_for_nobody_is_as_it_is_written_and_says_how_to_get_ones_own(my_set: Path) -> None:
    as_written = personal(load_set(my_set), None)
    assert as_written.problems == load_set(my_set).problems
    assert as_written.note == AS_WRITTEN
    assert as_written.title == "Week 3 (due 2026-12-01)"


def test_a_set_that_does_not_vary_keeps_its_title(my_set: Path) -> None:
    (my_set / "arm.toml").unlink()
    (my_set / "set.toml").unlink()
    assert personal(load_set(my_set), "s1041").title == load_set(my_set).title


def test_a_problem_without_numbers_for_a_student_costs_no_other(my_set: Path) -> None:
    (my_set / "arm.toml").write_text(VARY + 'keep = ["AC in tension"]\n', "utf-8")
    own = personal(load_set(my_set), "s1041")
    assert [problem.title for problem in own.problems] == ["Beam over the loading bay"]
    (error,) = own.broken.values()
    assert "AC in tension" in str(error)


def test_an_id_said_once_is_kept_and_used_by_both_fronts(
    my_set: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    keep = my_set.parent / "kept"
    monkeypatch.setattr("sys.stdin", io.StringIO("leave\nleave\n"))
    command = ["--plain", "--keep", str(keep), str(my_set)]
    assert cli.main([*command, "--student", "s1041"]) == 0
    assert read_settings(Keep(keep).folder)[0].student == "s1041"
    assert "the numbers of s1041" in capsys.readouterr().out
    monkeypatch.setattr("sys.stdin", io.StringIO("leave\n"))
    assert cli.main(command) == 0
    assert "the numbers of s1041" in capsys.readouterr().out
    shelf = read_shelf([my_set], read_settings(Keep(keep).folder)[0].student)
    assert "the numbers of s1041" in shelf.groups[0].title
    own = variant(my_set / "arm.toml", student="s1041", set="week-3")
    assert shelf.entries[0].problem == own


def test_who_opens_one_problem_without_an_id_is_told_whose_numbers_it_has(
    my_set: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    for name, said in (("arm", True), ("plain", False)):
        monkeypatch.setattr("sys.stdin", io.StringIO("leave\n"))
        command = ["--plain", "--keep", str(my_set.parent / name), str(my_set / f"{name}.toml")]
        assert cli.main(command) == 0
        assert (AS_WRITTEN in capsys.readouterr().out) == said


@pytest.mark.parametrize("text", ["", "  ", "x" * 61, "a\x1b[2J"])
def test_what_is_no_id_is_refused(text: str, capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as ended:
        cli.main(["--student", text])
    assert ended.value.code == 2
    assert "\x1b" not in capsys.readouterr().err
