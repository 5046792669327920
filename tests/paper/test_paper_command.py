"""Do `paper`, `vary` and `new` write what they say, for each student their own, and nothing over?"""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from tutor import cli, load_problem, load_set, solve, variant
from tutor.check import check
from tutor.model import ProblemError
from tutor.model.first import PROBLEM, SET
from tutor.paper import read_roster
from tutor.paper.columns import DIGIT, POINT
from tutor.paper.lines import rounded

ROSTER = 'id,name\ns1041,Dov Marle\ns1042,"Pask, Juno"\nS-7/x,Ilse\n'
VARY = PROBLEM.split("# [vary]")[0] + (
    "[vary]\nloads = { C = { down = [9, 12, 15, 18] } }\n"
    "joints = { C = { x = { from = 2, to = 6, step = 0.5 } }, B = { y = [2, 3, 4] } }\n"
    'mirror = true\nkeep = ["nice"]\n'
)


@pytest.fixture
def my_set(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "my-set").mkdir()
    (tmp_path / "my-set" / "arm.toml").write_text(VARY, "utf-8")
    (tmp_path / "my-set" / "set.toml").write_text('title = "Week 3"\nid = "week-3"\n', "utf-8")
    (tmp_path / "roster.csv").write_text(ROSTER, "utf-8")
    return tmp_path / "my-set"


def names(folder: Path) -> list[str]:
    return sorted(
        str(p.relative_to(folder)).replace("\\", "/") for p in folder.rglob("*") if p.is_file()
    )


class TestNew:
    def test_files_are_sound_as_they_are(self, tmp_path: Path) -> None:
        assert cli.main(["new", str(tmp_path / "mine")]) == 0
        assert check(tmp_path / "mine").defects == ()
        assert cli.main(["new", str(tmp_path / "arm.toml")]) == 0
        assert check(tmp_path / "arm.toml").defects == ()

    def test_files_stay_sound_with_every_remark_put_in(self, tmp_path: Path) -> None:
        folder = tmp_path / "mine"
        folder.mkdir()
        plain = re.sub(r"(?m)^# (?=[\w[].*(=|\]))", "", PROBLEM)
        plain = re.sub(r"(?m)^C = { link.*$", "", plain)
        assert "[vary]\nloads" in re.sub(r" +#.*", "", plain)
        (folder / "problem.toml").write_text(plain, "utf-8")
        (folder / "another.toml").write_text(PROBLEM.replace("12  ", "15  "), "utf-8")
        rules = re.sub(r"(?m)^# (?=[\w[].*(=|\]))", "", SET)
        (folder / "set.toml").write_text(
            rules.replace('["problem"]   ', '["problem", "another"]   '), "utf-8"
        )
        found = check(folder)
        assert found.sound, found.defects
        assert load_set(folder).rules.mode == "check"

    def test_nothing_is_written_over(
        self, tmp_path: Path, capsys: pytest.CaptureFixture[str]
    ) -> None:
        path = tmp_path / "arm.toml"
        path.write_text("mine", "utf-8")
        assert cli.main(["new", str(path)]) == 2
        assert path.read_text("utf-8") == "mine"
        assert "already there" in capsys.readouterr().err


class TestVary:
    def test_gives_each_student_a_folder_with_their_own_numbers(self, my_set: Path) -> None:
        assert cli.main(["vary", "my-set", "--for", "roster.csv", "--to", "out"]) == 0
        out = my_set.parent / "out"
        assert names(out) == [
            f"{who}/{file}"
            for who in ("S-7_x", "s1041", "s1042")
            for file in ("arm.toml", "set.toml")
        ]
        for who, stem in (("s1041", "s1041"), ("S-7/x", "S-7_x")):
            own = load_problem(out / stem / "arm.toml")
            assert own == variant(my_set / "arm.toml", student=who, set="week-3")
        assert check(out).sound

    def test_leaves_everything_as_it_is_where_a_file_is_there_already(
        self, my_set: Path, capsys: pytest.CaptureFixture[str]
    ) -> None:
        command = ["vary", "my-set", "--for", "roster.csv", "--to", "out"]
        assert cli.main(command) == 0
        path = my_set.parent / "out" / "s1041" / "arm.toml"
        path.write_text("changed by hand", "utf-8")
        assert cli.main(command) == 2
        assert path.read_text("utf-8") == "changed by hand"
        assert "--replace" in capsys.readouterr().err
        assert cli.main([*command, "--replace"]) == 0
        assert path.read_text("utf-8") != "changed by hand"

    def test_says_which_problem_has_no_numbers(
        self, my_set: Path, capsys: pytest.CaptureFixture[str]
    ) -> None:
        (my_set / "arm.toml").write_text(VARY.replace('"nice"', '"AC in tension"'), "utf-8")
        assert cli.main(["vary", "my-set", "--for", "roster.csv", "--to", "out"]) == 1
        assert "AC in tension" in capsys.readouterr().err
        assert not (my_set.parent / "out").exists()


class TestPaper:
    def test_is_one_sheet_where_it_is_for_nobody_in_particular(self, my_set: Path) -> None:
        assert cli.main(["paper", "my-set", "--to", "out", "--key", "--worked"]) == 0
        assert names(my_set.parent / "out") == ["key.html", "sheet.html", "worked.html"]

    def test_is_a_sheet_for_each_student_and_one_key_for_the_instructor(self, my_set: Path) -> None:
        command = ["paper", "my-set", "--to", "out", "--for", "roster.csv", "--key"]
        assert cli.main(command) == 0
        out = my_set.parent / "out"
        assert names(out) == [
            "S-7_x-sheet.html",
            "keys.html",
            "s1041-sheet.html",
            "s1042-sheet.html",
        ]
        keys = (out / "keys.html").read_text("utf-8")
        for who, name in (("s1041", "Dov Marle (s1041)"), ("s1042", "Pask, Juno (s1042)")):
            own = variant(my_set / "arm.toml", student=who, set="week-3")
            assert name in (out / f"{who}-sheet.html").read_text("utf-8")
            value = solve(own).value("AC")
            row = keys[keys.index(name) :].replace(DIGIT, "").replace(POINT, "")
            assert (
                f"<td>{rounded(abs(value))} {'T' if value > 0 else 'C'}</td>"
                in (row[: row.index("</tr>")])
            )
        assert keys.count("<article>") == 1  # a problem, and in it a row for each student

    def test_is_one_file_to_print_where_that_is_asked_for(self, my_set: Path) -> None:
        command = ["paper", "my-set", "--to", "out", "--for", "roster.csv", "--one-file"]
        assert cli.main(command) == 0
        out = my_set.parent / "out"
        assert names(out) == ["sheets.html"]
        assert (out / "sheets.html").read_text("utf-8").count("<article>") == 3

    def test_is_markdown_with_its_pictures_beside_it(self, my_set: Path) -> None:
        command = ["paper", "my-set", "--to", "out", "--for", "roster.csv", "--as", "md"]
        assert cli.main(command) == 0
        assert names(my_set.parent / "out")[:2] == ["S-7_x/sheet-1.svg", "S-7_x/sheet.md"]

    def test_is_set_as_pdf(self, my_set: Path) -> None:
        pytest.importorskip("typst")
        assert cli.main(["paper", "my-set", "--to", "out", "--as", "pdf"]) == 0
        assert (my_set.parent / "out" / "sheet.pdf").read_bytes().startswith(b"%PDF")

    def test_says_what_to_install_where_pdf_cannot_be_made(
        self, my_set: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
    ) -> None:
        monkeypatch.setitem(__import__("sys").modules, "typst", None)
        assert cli.main(["paper", "my-set", "--to", "out", "--as", "pdf"]) == 2
        assert "pip install 'pinjoint[paper]'" in capsys.readouterr().err

    def test_needs_problems_that_can_be_used(
        self, my_set: Path, capsys: pytest.CaptureFixture[str]
    ) -> None:
        (my_set / "bad.toml").write_text("title = 3", "utf-8")
        assert cli.main(["paper", "my-set", "--to", "out"]) == 1
        assert "bad.toml:1:" in capsys.readouterr().err
        assert not (my_set.parent / "out").exists()


class TestARoster:
    @pytest.mark.parametrize(
        ("text", "line", "says"),
        [
            ("", 1, "names no column id"),
            ("name\nDov", 1, "names no column id"),
            ("id,name\n", 1, "no student"),
            ("id,name\n,Dov", 2, "has no id"),
            ("id,name\na,x\nA ,y", 3, "there already, on line 2"),
            ("id\na/b\na?b", 3, "the same file"),
            ("id\n" + "x" * 101, 2, "over 100"),
        ],
    )
    def test_that_cannot_be_used_says_why(
        self, tmp_path: Path, text: str, line: int, says: str
    ) -> None:
        path = tmp_path / "r.csv"
        path.write_text(text, "utf-8")
        with pytest.raises(ProblemError) as caught:
            read_roster(path)
        (defect,) = caught.value.problems
        assert (defect.line, says in defect.message) == (line, True), defect
        assert defect.cure

    @pytest.mark.parametrize("mark", [",", ";", "\t"])
    def test_may_part_its_columns_as_spreadsheets_do(self, tmp_path: Path, mark: str) -> None:
        path = tmp_path / "r.csv"
        path.write_text(
            "\ufeff" + mark.join(("Name", "ID", "group")) + "\r\n" + mark.join(("Dov", "s1", "x")),
            "utf-8",
        )
        (person,) = read_roster(path)
        assert (person.id, person.name, person.words) == ("s1", "Dov", "Dov (s1)")

    @pytest.mark.parametrize("name", ["../x", "con", "a/b", "..", "é ü", "nul.txt"])
    def test_gives_names_of_files_that_stay_in_their_folder(
        self, tmp_path: Path, name: str
    ) -> None:
        path = tmp_path / "r.csv"
        path.write_text(f"id\n{name}\n", "utf-8")
        (person,) = read_roster(path)
        assert (tmp_path / person.stem).parent == tmp_path
        assert person.stem not in ("", ".", "..", "con")
