"""Does `pinjoint homework` report on a file of work, and say by its status whether all is right?"""

from __future__ import annotations

import io
from pathlib import Path

import pytest

from tutor import cli
from tutor.model.schema import shipped_text
from tutor.shipped import shipped_problems

ARM = str(shipped_problems() / "first-steps" / "lamp-arm.toml")
RIGHT = "A_x = 360 left, A_y = 150, B_x = 360\nAB, 150, T\nAC, 360, T\nBC = 390 C\n"


def handed_in(folder: Path, text: str) -> str:
    path = folder / "work.txt"
    path.write_text(text, "utf-8")
    return str(path)


def test_right_work_is_status_0_with_a_report(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert cli.main(["homework", ARM, handed_in(tmp_path, RIGHT)]) == 0
    said = capsys.readouterr()
    assert "**Everything that was checked is right.**" in said.out
    assert said.err == ""


@pytest.mark.parametrize("text", [RIGHT.replace("390 C", "390 T"), RIGHT + "QQ = 3\n", ""])
def test_work_that_is_wrong_unreadable_or_empty_is_status_1(
    text: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert cli.main(["homework", ARM, handed_in(tmp_path, text)]) == 1
    assert capsys.readouterr().out.startswith("# Check of a homework")


def test_what_could_not_be_read_is_told_with_its_file_and_line(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = handed_in(tmp_path, RIGHT + "AB = \x1b[31m7\n")
    assert cli.main(["homework", ARM, path]) == 1
    said = capsys.readouterr()
    assert said.err.startswith(f"{path}:5: ")
    assert "\x1b" not in said.err + said.out
    assert "1 entry could not be read and was not checked: line 5." in said.out


def test_lines_are_numbered_in_the_report_as_in_the_file(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    lines = "joint C\nΣFx: 3 = 0\n\nΣFy: -150 - 5/13 BC = 0\nstrike 1\nΣFx: -AC - 12/13 BC = 0\n"
    cli.main(["homework", ARM, handed_in(tmp_path, RIGHT + lines)])
    said = capsys.readouterr().out
    rows = [line for line in said.splitlines() if line.startswith("- Line ")]
    assert [row.partition(", is")[0] for row in rows] == [
        "- Line 8, ΣFy at joint C",
        "- Line 10, ΣFx at joint C",
    ]


def test_work_is_read_from_standard_input(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr("sys.stdin", io.StringIO(RIGHT + "XY = 1"))
    assert cli.main(["homework", ARM, "-"]) == 1
    assert capsys.readouterr().err.startswith("standard input:5: ")


@pytest.mark.parametrize("paths", [("none.toml",), ("none.toml", "w"), (ARM, "none.txt")])
def test_a_path_that_is_not_there_is_status_2(
    paths: tuple[str, ...], capsys: pytest.CaptureFixture[str]
) -> None:
    assert cli.main(["homework", *paths]) == 2
    said = capsys.readouterr()
    assert "there is no such file" in said.err
    assert said.out == ""


def test_a_broken_problem_file_is_status_2_with_its_defects(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    broken = tmp_path / "broken.toml"
    broken.write_text(Path(ARM).read_text("utf-8").replace("down =", "dwon ="), "utf-8")
    assert cli.main(["homework", str(broken), handed_in(tmp_path, RIGHT)]) == 2
    assert "dwon" in capsys.readouterr().err


@pytest.mark.parametrize("way", [["homework", "--plain"], ["--plain", "homework"], ["homework"]])
def test_without_work_it_is_taken_line_by_line(
    way: list[str],
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    monkeypatch.setattr("sys.stdin", io.StringIO(RIGHT + "check\n"))
    assert cli.main([*way, ARM, "--keep", str(tmp_path)]) == 0
    assert "Right: Everything that was checked is right." in capsys.readouterr().out


def test_the_schema_is_printed_as_it_ships(capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(["schema"]) == 0
    assert capsys.readouterr().out == shipped_text()


def test_help_names_both_commands(capsys: pytest.CaptureFixture[str]) -> None:
    for arguments in (["--help"], ["homework", "--help"], ["schema", "--help"]):
        with pytest.raises(SystemExit) as end:
            cli.main(arguments)
        assert end.value.code == 0
    said = capsys.readouterr().out
    assert "pinjoint homework its-truss.toml" in said
    assert "never a right value" in said


def test_a_row_that_stands_twice_is_told_beside_the_report_and_in_it(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = handed_in(tmp_path, RIGHT + "BC = 390 T\n")
    assert cli.main(["homework", ARM, path]) == 1
    said = capsys.readouterr()
    assert f"{path}:5: BC = 390 T, in the place of 390 C above." in said.err
    assert "## Entered twice" in said.out


def test_a_mended_file_is_told_what_still_rests_on_the_old_value_and_another_file_is_not(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """A_y is 15 for 150 and AB found from it at A; then A_y alone is mended."""
    keep = ["--keep", str(tmp_path / "keep")]
    old = "A_x = 360 left, A_y = 15, B_x = 360\nAB = 15 T\nAC = 360 T\nBC = 390 C\n"
    path = handed_in(tmp_path, old)
    assert cli.main(["homework", *keep, ARM, path]) == 1
    assert "old" not in capsys.readouterr().out
    mended = old.replace("A_y = 15,", "A_y = 150,")
    assert cli.main(["homework", *keep, ARM, handed_in(tmp_path, mended)]) == 1
    assert "**AB still rests on your old A\\_y: go on at joint A.**" in capsys.readouterr().out
    other = tmp_path / "other.txt"
    other.write_text(mended, "utf-8")
    assert cli.main(["homework", *keep, ARM, str(other)]) == 1
    assert "old" not in capsys.readouterr().out
    assert cli.main(["homework", *keep, ARM, handed_in(tmp_path, RIGHT)]) == 0
