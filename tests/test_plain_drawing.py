"""Is a truss drawn up line by line, told as it stands, kept, saved, and then worked on?"""

from __future__ import annotations

import errno
import io
import os
import re
import tempfile
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from transcripts import Typist

from tutor import cli
from tutor.drafting import saved
from tutor.model import ProblemSet, load_problem
from tutor.model.caution import CAUTION
from tutor.plain import run
from tutor.plain.drawing import BY_WORD, GOES_ON, NOT_YET
from tutor.plain.voice import FAULT
from tutor.shipped import shipped_problems

ARM = load_problem(shipped_problems() / "first-steps" / "lamp-arm.toml")
DRAWN = ["A 0 0  B 4 0  C 2 3/2", "AB BC CA", "A pin  B roller", "C 12 down"]
CONTROL = re.compile("[\x00-\x09\x0b-\x1f\x7f-\x9f\u200b-\u200f\u202a-\u202e\u2066-\u2069]")
QUIET = [word for word in BY_WORD if word not in ("save", "problems", "homework", "lesson")]
TYPED = st.one_of(
    st.text(max_size=40),
    st.sampled_from((*QUIET, *DRAWN, "Warren span 12 height 3 panels 4", "drop C", "undo")),
    st.text(alphabet="ABCabc 0123456789/.-,;()\x1b[m\u202e", max_size=30),
).map(lambda text: text.replace("\n", " ").replace("\r", " "))


def draw(lines: list[str], keep: Path) -> list[str]:
    """All that is said and typed while a truss is drawn up."""
    sink = io.StringIO()
    sets = (ProblemSet("Test", (ARM,)),)
    assert run(sets, keep=keep, source=Typist(lines, sink), sink=sink, first="draw") == 0
    return sink.getvalue().splitlines()


def test_a_truss_is_drawn_saved_and_its_homework_checked(tmp_path: Path) -> None:
    path = tmp_path / "roof.toml"
    typed = [*DRAWN, f"save {path}", "homework", "AB = 8 T, BC = 10 C", "check"]
    said = draw(typed, tmp_path / "keep")
    assert "Right: Everything that was checked is right." in said
    assert path.read_text("utf-8").startswith("#:schema ./problem.schema.json\n")
    assert [member.name for member in load_problem(path).members] == ["AB", "BC", "CA"]


def test_after_each_line_it_is_told_whether_it_is_ready(tmp_path: Path) -> None:
    said = draw(DRAWN, tmp_path)
    states = [line.partition(":")[0] for line in said if re.match(r"(Not r|R)eady:", line)]
    assert states == ["Not ready"] * 3 + ["Ready"]


def test_what_can_move_is_said(tmp_path: Path) -> None:
    said = draw([*DRAWN, "D 2 5", "CD", "standing"], tmp_path)
    assert NOT_YET in said
    assert any("D can move" in line for line in said)


def test_a_truss_that_cannot_be_worked_is_neither_checked_nor_walked(tmp_path: Path) -> None:
    said = draw([*DRAWN[:3], "homework", "lesson"], tmp_path)
    assert said.count(NOT_YET) == 2
    assert not any("click" in line for line in said)


def test_what_was_drawn_comes_up_again(tmp_path: Path) -> None:
    draw([*DRAWN, "undo"], tmp_path)
    said = draw(["rows"], tmp_path)
    assert GOES_ON in said
    assert "member CA" in said
    assert not any(line.startswith("load") for line in said)


def test_an_opened_file_keeps_its_comments_when_it_is_saved_over(tmp_path: Path) -> None:
    path = tmp_path / "arm.toml"
    text = "# from sheet 3\n" + (shipped_problems() / "first-steps/lamp-arm.toml").read_text(
        "utf-8"
    )
    path.write_text(text, "utf-8")
    said = draw([f"open {path}", "C 20 right", "save"], tmp_path / "keep")
    assert any(line.startswith("Saved in") for line in said)
    assert path.read_text("utf-8").startswith("# from sheet 3\n")
    assert len(load_problem(path).loads) >= 1
    assert load_problem(path) != ARM


def test_no_file_is_written_over_unasked_or_after_another_changed_it(tmp_path: Path) -> None:
    path = tmp_path / "arm.toml"
    path.write_text((shipped_problems() / "first-steps/lamp-arm.toml").read_text("utf-8"), "utf-8")
    said = draw([*DRAWN, f"save {path}", "save"], tmp_path / "keep")
    asked = [line for line in said if line.startswith("Not saved yet: arm.toml is there already")]
    assert ARM.title in asked[0]
    assert "Name the file as well, like save arm.toml." in said
    assert load_problem(path).title == ARM.title
    draw([f"save over {path}"], tmp_path / "keep")
    assert load_problem(path).title == "My truss"


@pytest.mark.parametrize("other", ["clear", "Warren span 12 height 3 panels 4 load 10"])
def test_another_truss_is_never_saved_over_the_file_of_the_first(
    other: str, tmp_path: Path
) -> None:
    path = tmp_path / "first.toml"
    said = draw(
        [*DRAWN, "title First", f"save {path}", other, "save", f"save {path}", "save"],
        tmp_path / "keep",
    )
    assert load_problem(path).title == "First"
    assert said.count("Name the file as well, like save arm.toml.") == 2
    draw(["clear", *DRAWN, f"save over {path}", "C 15 down", "save"], tmp_path / "keep")
    assert load_problem(path).loads[0].pushes[0][1].value == 15


def test_a_cleared_sheet_that_is_taken_back_is_of_its_file_again(tmp_path: Path) -> None:
    path = tmp_path / "first.toml"
    draw([*DRAWN, f"save {path}", "clear", "undo", "C 15 down", "save"], tmp_path / "keep")
    assert load_problem(path).loads[0].pushes[0][1].value == 15


PAPER = ["A_x = 0", "A_y = 6 up", "AB = 8 T", "ΣFy at C: -12 - 3/5 AC - 3/5 BC = 0"]


def test_a_corrected_truss_keeps_its_paper_also_the_next_day(tmp_path: Path) -> None:
    draw([*DRAWN, "homework", *PAPER], tmp_path)
    said = draw(["C 2 2", "rename A U1", "C 12.5 down", "homework", "paper"], tmp_path)
    assert "Your paper came along with the corrected truss." in said
    assert "U1_y = 6 up" in said
    assert "U1-B = 8 T" in said
    assert any(line.startswith("line 1, ") and "at joint C" in line for line in said)
    said = draw(["A pin", "homework", "paper"], tmp_path)
    assert "Your paper came along with the corrected truss." not in said
    assert "U1_y = 6 up" in said


def test_from_the_paper_one_goes_back_to_the_sheet_and_again(tmp_path: Path) -> None:
    typed = [*DRAWN, "homework", *PAPER, "draw", "rename A Q", "homework", "paper"]
    said = draw(typed, tmp_path)
    assert "Q_y = 6 up" in said


def test_another_truss_has_a_paper_of_its_own(tmp_path: Path) -> None:
    draw([*DRAWN, "homework", *PAPER], tmp_path)
    said = draw(["clear", *DRAWN, "C 3 right", "homework", "paper"], tmp_path)
    assert "A_y = 6 up" not in said
    assert any(line.startswith("not done: A_x, A_y") for line in said)


def test_what_a_correction_takes_away_is_told(tmp_path: Path) -> None:
    draw([*DRAWN, "homework", *PAPER], tmp_path)
    said = draw(["A roller; B pin", "homework", "paper"], tmp_path)
    assert "A_x = 0 is off the paper: the truss has no A_x now." in said
    assert "A_y = 6 up" in said


def test_a_broken_file_is_told_with_its_defects_and_the_drawing_stays(tmp_path: Path) -> None:
    path = tmp_path / "broken.toml"
    path.write_text('title = "x"\n', "utf-8")
    said = draw([*DRAWN, f"open {path}", "rows"], tmp_path / "keep")
    assert any("there is no unit of force" in line for line in said)
    assert "member CA" in said


def test_drawing_is_reached_from_the_list_and_the_command_line(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    said = draw(["problems", "draw", "rows"], tmp_path)
    assert "Nothing yet." in said
    for way in (["draw"], ["--plain", "draw"]):
        monkeypatch.setattr("sys.stdin", io.StringIO("rows\n"))
        assert cli.main([*way, "--keep", str(tmp_path)]) == 0
        assert "Nothing yet." in capsys.readouterr().out


@given(st.lists(TYPED, max_size=8))
def test_whatever_is_typed_it_goes_on_in_plain_text(lines: list[str]) -> None:
    sink = io.StringIO()
    sets = (ProblemSet("Test", (ARM,)),)
    with tempfile.TemporaryDirectory() as keep:
        source = io.StringIO("\n".join([*lines, "standing", "figure"]))
        assert run(sets, keep=Path(keep), source=source, sink=sink, first="draw") == 0
    assert FAULT not in sink.getvalue()
    assert CONTROL.search(sink.getvalue()) is None
    assert sink.getvalue().rstrip().endswith(CAUTION)


def test_a_drawing_goes_on_from_a_file_and_undo_brings_back_what_was_kept(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    draw(["A 0 0 B 7 0"], tmp_path / "keep")
    path = tmp_path / "arm.toml"
    path.write_text(saved(ARM), encoding="utf-8")
    monkeypatch.setattr("sys.stdin", io.StringIO("undo\nrows\n"))
    assert cli.main(["draw", "--plain", str(path), "--keep", str(tmp_path / "keep")]) == 0
    said = capsys.readouterr().out.splitlines()
    assert any(line.startswith(ARM.title) for line in said)
    assert "joint B  7, 0" in said


def test_a_file_to_draw_on_that_is_not_there_is_told(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert cli.main(["draw", "--plain", str(tmp_path / "none.toml")]) == 2
    assert "there is no such file" in capsys.readouterr().err


def test_a_truss_that_can_be_worked_is_not_told_to_be_so_if_it_is_stable(tmp_path: Path) -> None:
    said = draw([*DRAWN, "standing"], tmp_path)
    ready = [line for line in said if "2j" in line and line.startswith(("Ready", "m + r"))]
    assert len(ready) == 2
    assert all(line.endswith("statically determinate and stable.") for line in ready)


def test_a_file_whose_opening_was_taken_back_is_not_written_over(tmp_path: Path) -> None:
    path = tmp_path / "arm.toml"
    path.write_text(saved(ARM), encoding="utf-8")
    said = draw([*DRAWN, f"open {path}", "undo", "save"], tmp_path / "keep")
    assert "Name the file as well, like save arm.toml." in said
    assert path.read_text(encoding="utf-8") == saved(ARM)


def test_a_save_that_the_disk_refuses_is_told_leaves_nothing_behind_and_works_again_later(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "set" / "arm.toml"
    path.parent.mkdir()
    write, full = os.write, [True]

    def refused(descriptor: int, data: bytes) -> int:
        if full[0] and b"[joints]" in bytes(data):
            write(descriptor, bytes(data)[:7])
            raise OSError(errno.ENOSPC, "no space")
        return write(descriptor, data)

    monkeypatch.setattr(os, "write", refused)
    said = draw([*DRAWN, f"save {path}", "rows"], tmp_path / "keep")
    assert "It could not be written: the disk is full." in said
    assert "member CA" in said
    assert list(path.parent.iterdir()) == []
    full[0] = False
    said = draw([f"save {path}"], tmp_path / "keep")
    assert any(line.startswith("Saved in") for line in said)
    assert len(load_problem(path).members) == 3
