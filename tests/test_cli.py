"""Does the command line do what its help says, in this process and as a program of its own?"""

from __future__ import annotations

import io
import os
import re
import signal
import subprocess
import sys
from pathlib import Path

import pytest
from every_problem import FILES

from tutor import cli
from tutor.arguments import command_in
from tutor.options import own_version

GOOD = """\
title = "Jetty bracket"
force = "kN"
length = "m"
members = ["AB", "AC", "BC"]

[joints]
A = [0, 0]
B = [4, 0]
C = [2, "3/2"]

[supports]
A = "pin"
B = "roller"

[[loads]]
at = "C"
down = 12
"""
MISSPELLED = GOOD.replace("down = 12", "dwon = 12")
TOO_FEW = GOOD.replace('members = ["AB", "AC", "BC"]', 'members = ["AC", "BC"]')
TOO_MANY = GOOD.replace('B = "roller"', 'B = "pin"')
SLIDING = GOOD.replace('A = "pin"', 'A = "roller"').replace(
    'B = "roller"', 'B = "roller"\nC = "roller"'
)
LOOSE = (
    GOOD.replace('C = [2, "3/2"]', 'C = [2, "3/2"]\nD = [2, 3]')
    .replace('"BC"]', '"BC", "CD", "AD"]')
    .replace("A = [0, 0]", "A = [2, 0]")
    .replace("B = [4, 0]", "B = [6, 0]")
)
PROGRAM = (sys.executable, "-m", "tutor")
DEFECT = re.compile(r"(?P<file>\S+\.toml):(?P<line>\d+): (?P<wrong>.+); (?P<cure>.+)")


def write(folder: Path, **files: str) -> None:
    for name, text in files.items():
        (folder / f"{name}.toml").write_text(text, encoding="utf-8")


def program(*arguments: str, typed: str = "", **env: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [*PROGRAM, *arguments],
        input=typed,
        capture_output=True,
        text=True,
        encoding="utf-8",
        env={**os.environ, **env},
        check=False,
    )


def heed_signals() -> None:
    """Undo what a shell or nohup set for programs in the background."""
    for number in (signal.SIGTERM, signal.SIGINT, signal.SIGHUP):
        signal.signal(number, signal.SIG_DFL)


class TestCheck:
    def test_of_the_shipped_problems_nothing_is_said_but_how_many_they_are(
        self, capsys: pytest.CaptureFixture[str]
    ) -> None:
        assert cli.main(["check"]) == 0
        said = capsys.readouterr().out.splitlines()
        assert said == [f"{len(FILES)} problems checked: all can be used."]

    @pytest.mark.parametrize(
        ("text", "line", "wrong"),
        [
            (MISSPELLED, 17, "dwon"),
            (TOO_FEW, 4, "fewer"),
            (TOO_MANY, 4, "indeterminate"),
            (SLIDING, 11, "parallel"),
            (LOOSE, 10, "Joint D can move"),
        ],
        ids=["unknown key", "too few members", "too many reactions", "sliding", "loose joint"],
    )
    def test_a_defect_is_told_with_its_line_and_its_cure(
        self, text: str, line: int, wrong: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
    ) -> None:
        write(tmp_path, jetty=text)
        assert cli.main(["check", str(tmp_path / "jetty.toml")]) == 1
        found = [DEFECT.fullmatch(said) for said in capsys.readouterr().out.splitlines()]
        told = [each for each in found if each is not None and int(each["line"]) == line]
        assert told, found
        assert any(wrong in each["wrong"] for each in told)

    def test_every_broken_file_of_a_folder_is_told_of_and_the_good_ones_counted(
        self, tmp_path: Path, capsys: pytest.CaptureFixture[str]
    ) -> None:
        write(tmp_path, good=GOOD, one=MISSPELLED, two=TOO_FEW)
        assert cli.main(["check", str(tmp_path)]) == 1
        said = capsys.readouterr().out
        assert {match["file"] for match in DEFECT.finditer(said)} == {
            str(tmp_path / "one.toml"),
            str(tmp_path / "two.toml"),
        }
        assert "3 problems checked" in said

    def test_warnings_alone_do_not_fail_a_check(
        self, tmp_path: Path, capsys: pytest.CaptureFixture[str]
    ) -> None:
        crossed = GOOD.replace('"BC"]', '"BC", "AD", "BD"]').replace(
            'C = [2, "3/2"]', 'C = [2, "3/2"]\nD = [4, "3/2"]'
        )
        write(tmp_path, crossed=crossed)
        assert cli.main(["check", str(tmp_path)]) == 0
        assert "warning" in capsys.readouterr().out

    def test_a_path_that_is_not_there_is_a_defect(
        self, tmp_path: Path, capsys: pytest.CaptureFixture[str]
    ) -> None:
        assert cli.main(["check", str(tmp_path / "none.toml")]) == 1
        assert "there is no such file" in capsys.readouterr().out

    def test_control_characters_of_a_file_never_reach_the_terminal(
        self, tmp_path: Path, capsys: pytest.CaptureFixture[str]
    ) -> None:
        write(tmp_path, evil=GOOD.replace("Jetty", "Je\\u001b[31mtty").replace("AC", "A\\u009bZ"))
        cli.main(["check", str(tmp_path)])
        assert re.search(r"[\x00-\x09\x0b-\x1f\x7f-\x9f]", capsys.readouterr().out) is None


class TestOpening:
    def test_help_says_what_each_kind_of_user_types_first(
        self, capsys: pytest.CaptureFixture[str]
    ) -> None:
        with pytest.raises(SystemExit) as end:
            cli.main(["--help"])
        said = capsys.readouterr().out
        assert end.value.code == 0
        for line in ("pinjoint my-truss.toml", "pinjoint check my-set", "pinjoint --plain"):
            assert line in said
        assert "not for the design of real structures" in said

    def test_a_path_without_problems_is_told_and_nothing_is_opened(
        self, tmp_path: Path, capsys: pytest.CaptureFixture[str]
    ) -> None:
        assert cli.main(["--plain", str(tmp_path)]) == 2
        assert "there is no problem file" in capsys.readouterr().err

    @pytest.mark.parametrize("way", [["--plain"], []])
    def test_a_path_that_is_not_there_is_told_and_nothing_is_opened(
        self, way: list[str], tmp_path: Path, capsys: pytest.CaptureFixture[str]
    ) -> None:
        assert cli.main([*way, str(tmp_path / "none")]) == 2
        assert "none: there is no such file or folder" in capsys.readouterr().err

    def test_an_unknown_option_is_status_2(self) -> None:
        with pytest.raises(SystemExit) as end:
            cli.main(["--palin"])
        assert end.value.code == 2

    def test_the_version_is_that_of_the_distribution(
        self, capsys: pytest.CaptureFixture[str]
    ) -> None:
        with pytest.raises(SystemExit):
            cli.main(["--version"])
        assert capsys.readouterr().out == f"pinjoint {own_version()}\n"

    @pytest.mark.parametrize(
        "term", ["dumb", *(pytest.param(t, marks=pytest.mark.slow) for t in ("", "xterm-256color"))]
    )
    def test_without_a_terminal_it_says_so_and_goes_line_by_line(
        self, term: str, tmp_path: Path
    ) -> None:
        ended = program("--keep", str(tmp_path), typed="leave\n", TERM=term)
        assert ended.returncode == 0
        assert ended.stdout.startswith(cli.SWITCHED)
        assert "Set 1: First steps" in ended.stdout

    @pytest.mark.parametrize("elsewhere", ["stdin", "stdout"])
    def test_one_stream_that_leads_elsewhere_is_no_full_terminal(
        self, monkeypatch: pytest.MonkeyPatch, elsewhere: str
    ) -> None:
        class Terminal(io.StringIO):
            def isatty(self) -> bool:
                return True

        monkeypatch.setenv("TERM", "xterm-256color")
        for name in ("stdin", "stdout"):
            monkeypatch.setattr(f"sys.{name}", Terminal())
        monkeypatch.setattr("sys.__stderr__", io.StringIO())
        assert cli.full_terminal()
        for name in ("dumb", ""):
            with monkeypatch.context() as patch:
                patch.setenv("TERM", name)
                assert not cli.full_terminal()
        monkeypatch.setattr(f"sys.{elsewhere}", io.StringIO())
        assert not cli.full_terminal()

    def test_it_runs_where_the_output_holds_only_ascii(self, tmp_path: Path) -> None:
        ended = program(
            "--plain", "--keep", str(tmp_path), typed="1\nleave\n", PYTHONIOENCODING="ascii"
        )
        assert ended.returncode == 0, ended.stderr
        assert ended.stderr == ""


class TestLeaving:
    @pytest.mark.parametrize(
        "number",
        [
            signal.SIGTERM,
            *(pytest.param(n, marks=pytest.mark.slow) for n in (signal.SIGINT, signal.SIGHUP)),
        ],
    )
    def test_a_signal_ends_a_lesson_politely_and_what_was_done_stays(
        self, number: signal.Signals, tmp_path: Path
    ) -> None:
        write(tmp_path, jetty=GOOD)
        running = subprocess.Popen(
            [*PROGRAM, "--plain", "--keep", str(tmp_path / "kept"), str(tmp_path / "jetty.toml")],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
            text=True,
            encoding="utf-8",
            preexec_fn=heed_signals,
        )
        assert running.stdin is not None
        assert running.stdout is not None
        running.stdin.write("2 5 6\n")
        running.stdin.flush()
        while "Right" not in running.stdout.readline():
            assert running.poll() is None
        running.send_signal(number)
        out, err = running.communicate(timeout=60)
        assert running.returncode == 128 + number
        assert "All you did here is kept" in out
        assert err == ""
        again = program(
            "--plain", "--keep", str(tmp_path / "kept"), str(tmp_path / "jetty.toml"), typed="1\n"
        )
        assert "Count the members m" in again.stdout

    def test_a_reader_that_stops_listening_ends_it_without_a_word(self, tmp_path: Path) -> None:
        shell = f"{sys.executable} -m tutor --plain --keep {tmp_path} | head -n 1"
        typed = "again\n" * 5000
        ended = subprocess.run(
            ["bash", "-c", shell], input=typed, capture_output=True, text=True, check=False
        )
        assert ended.stderr == ""
        assert len(ended.stdout.splitlines()) == 1


class TestOptionsAndCommands:
    @pytest.mark.parametrize(
        "order",
        [("--plain", "--keep", "{keep}", "homework"), ("homework", "--plain", "--keep", "{keep}")],
    )
    def test_an_option_may_stand_before_its_command_or_behind_it(
        self,
        order: tuple[str, ...],
        tmp_path: Path,
        monkeypatch: pytest.MonkeyPatch,
        capsys: pytest.CaptureFixture[str],
    ) -> None:
        write(tmp_path, jetty=GOOD)
        words = [word.format(keep=tmp_path / "kept") for word in order]
        monkeypatch.setattr("sys.stdin", io.StringIO("AB = 8 T\n"))
        assert cli.main([*words, str(tmp_path / "jetty.toml")]) == 0
        said = capsys.readouterr()
        assert said.err == ""
        assert "Homework: enter what is on your paper" in said.out
        assert list((tmp_path / "kept").rglob("*"))

    def test_a_command_that_follows_a_path_is_a_path(self) -> None:
        assert command_in(["a.toml", "check"], cli.PARSERS) is None
        assert command_in(["--", "check"], cli.PARSERS) is None
        asked = command_in(["--keep", "check", "check"], cli.PARSERS)
        assert asked is not None
        assert (asked.command, asked.words, asked.ways.keep) == ("check", [], Path("check"))

    def test_an_option_of_the_command_itself_may_stand_before_it_too(self, tmp_path: Path) -> None:
        write(tmp_path, jetty=GOOD)
        kept, jetty = str(tmp_path / "kept"), str(tmp_path / "jetty.toml")
        program("--plain", "--keep", kept, jetty, typed="2 5 6\n")
        before = ("--student", "s1041", "--keep", kept, f"--to={tmp_path / 'one.txt'}", "hand-in")
        behind = ("hand-in", "--student", "s1041", "--keep", kept, f"--to={tmp_path / 'two.txt'}")
        one, two = program(*before, jetty), program(*behind, jetty)
        assert (one.stderr, two.stderr) == ("", "")
        assert one.stdout.replace("one.txt", "two.txt") == two.stdout
        assert "s1041" in (tmp_path / "one.txt").read_text("utf-8")

    @pytest.mark.parametrize(
        "given",
        [
            ["--student", "hand-in"],  # its value
            ["--student", "7", "paper"],  # of another command
            ["--student", "7", "set", "hand-in"],  # a path
            ["--student", "7", "--to", "hand-in"],
        ],
    )
    def test_a_word_is_no_command_where_more_than_its_options_stand_before_it(
        self, given: list[str]
    ) -> None:
        assert command_in(given, cli.PARSERS) is None

    def test_a_command_typed_wrongly_is_guessed_at(
        self, capsys: pytest.CaptureFixture[str]
    ) -> None:
        assert cli.main(["homwork"]) == 2
        assert "type homework for that command" in capsys.readouterr().err

    def test_what_is_echoed_of_a_wrong_option_is_plain_text(
        self, capsys: pytest.CaptureFixture[str]
    ) -> None:
        for wrong in ("--x\x1b[31m\x07", "--" + "y" * 100_000):
            with pytest.raises(SystemExit) as left:
                cli.main([wrong])
            assert left.value.code == 2
            said = capsys.readouterr().err
            assert "\x1b" not in said
            assert len(said) < 1500

    def test_a_folder_without_a_name_is_refused(self, capsys: pytest.CaptureFixture[str]) -> None:
        with pytest.raises(SystemExit) as left:
            cli.main(["--keep", "", "--plain"])
        assert left.value.code == 2
        assert "names no folder" in capsys.readouterr().err

    def test_signs_are_left_as_they_are_where_that_is_asked_for(self, tmp_path: Path) -> None:
        write(tmp_path, jetty=GOOD.replace("Jetty", "Möwen"))
        told = [
            program(
                "--plain", *signs, "--keep", str(tmp_path / f"kept{len(signs)}"), str(tmp_path / "jetty.toml"),
                typed="help\n", PYTHONIOENCODING="utf-8",
            ).stdout
            for signs in ((), ("--signs",))
        ]  # fmt: skip
        assert told[0].isascii()
        assert "Mowen bracket" in told[0]
        assert "Möwen bracket" in told[1]
        assert "ΣFx" in told[1]
