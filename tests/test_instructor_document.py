"""Does the instructors' guide say what is so? Its files are checked, its script is run."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from tutor import variant
from tutor.cli import main
from tutor.lesson import CAUTION, Lesson
from tutor.model import load_problem, load_set

DOCS = Path(__file__).parents[1] / "docs"
TEXT = (DOCS / "instructors.md").read_text("utf-8")
BLOCKS = re.findall(r"^```(.+)\n([\s\S]*?)^```$", TEXT, re.M)


def block(kind: str) -> str:
    return next(body for name, body in BLOCKS if name == kind)


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """`my-set` with the guide's first problem, from where the guide's commands are typed."""
    monkeypatch.chdir(tmp_path)
    (tmp_path / "my-set").mkdir()
    (tmp_path / "my-set" / "eel-trap.toml").write_text(block("toml"), "utf-8")
    return tmp_path / "my-set"


@pytest.mark.parametrize("case", ["sound", "broken", "loose", "warned"])
def test_the_check_says_what_is_printed(
    folder: Path, case: str, capsys: pytest.CaptureFixture[str]
) -> None:
    path = folder / "eel-trap.toml"
    if case == "broken":
        path.write_text(block("toml broken"), "utf-8")
    if case == "loose":
        lines = block("toml").replace("{ roller = 0 }", '"roller"')
        assert lines != block("toml")
        path.write_text(lines, "utf-8")
    if case == "warned":
        held = 'A = { roller = 0 }\nB = "pin"'
        assert held in block("toml")
        path.write_text(block("toml").replace(held, 'A = "pin"\nB = { roller = 0 }'), "utf-8")
    command, *said = block(f"check {case}").splitlines()
    status = main(command.removeprefix("$ pinjoint ").split())
    printed = capsys.readouterr().out.replace("\\", "/").splitlines()
    assert [re.sub(r"^\S*my-set/", "my-set/", line) for line in printed] == said
    assert status == (0 if case in ("sound", "warned") else 1)


def test_a_class_is_counted_as_the_guide_says(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    from tutor.records import Keep
    from tutor.session import open_session

    session = open_session(load_set(folder).problems[0], Keep(Path("keep")))
    session.do("reasons", chosen=["weight"])
    session.close()
    (folder.parent / "roster.csv").write_text(block("csv roster"), "utf-8")
    command = re.search(r"^    pinjoint (hand-in .+)$", TEXT, re.M)
    assert command is not None
    given = command[1].replace("s1041.txt", "handed-in/s1041.txt").split()
    assert main([*given, "--student", "s1041", "--keep", "keep"]) == 0
    command = re.search(r"^    pinjoint (class .+)$", TEXT, re.M)
    assert command is not None
    assert main(command[1].split()) == 0
    assert "1 of 3 students handed in" in capsys.readouterr().out
    exec(compile(block("python class"), "instructors.md", "exec"), {})
    assert capsys.readouterr().out.startswith("1 ")


def test_every_option_of_the_class_command_is_in_the_guide() -> None:
    from tutor.class_options import class_parser

    for action in class_parser()._actions:
        for option in action.option_strings:
            if option in (
                "--replace",
                "--help",
                "--plain",
                "--signs",
                "--keep",
                "--no-mouse",
                "--glyphs",
            ):
                continue
            assert not option.startswith("--") or option in TEXT, option


def test_the_script_prints_what_is_printed(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    exec(compile(block("python"), "instructors.md", "exec"), {})
    assert capsys.readouterr().out == block("output")


def test_the_set_has_the_order_of_the_guide(folder: Path) -> None:
    (folder / "gangway.toml").write_text(block("toml").replace("Hoist", "Gangway"), "utf-8")
    (folder / "set.toml").write_text(block("toml set"), "utf-8")
    read = load_set(folder)
    assert not read.broken
    assert read.title == "Week 3: brackets and booms"
    assert [p.title.split()[0] for p in read.problems] == ["Hoist", "Gangway"]
    (folder / "set.toml").write_text(block("toml set rules"), "utf-8")
    read = load_set(folder)
    assert not read.broken
    assert (read.rules.hints, read.rules.attempts) == ("no lines", 5)


def test_the_test_paper_of_the_guide_says_no_more_than_is_printed(folder: Path) -> None:
    (folder / "set.toml").write_text(block("toml set paper"), "utf-8")
    (problem,) = load_set(folder).problems
    lesson = Lesson(problem)
    lesson.take("reasons", chosen=["pins", "joints", "weight"])
    lesson.take("count", m=3, r=3, **{"2j": 6})
    lesson.take("support", joint="A", acts=["x"])
    lesson.take("support", joint="B", acts=["x", "y"])
    for unknown, sense in {"A_x": "right", "B_x": "right", "B_y": "up"}.items():
        lesson.take("sense", unknown=unknown, sense=sense)
    lesson.take("turning", positive="counter-clockwise")
    typed = re.findall(r"^> (.+)$", block("paper said"), re.M)
    said = []
    for line in typed:
        assert not lesson.take("hint").accepted, "no hint before the last try"
        said += [f"> {line}", *(say.text for say in lesson.take("type", text=line).said)]
    assert said == block("paper said").splitlines()
    for pause in (0, 1e3, 2e3, 3e3):
        assert lesson.take("hint", now=lesson.state.last_time + pause).accepted
    assert lesson.state.hints_used == (1, 2, 3, 4)


def test_the_keys_of_the_guide_do_what_it_says(folder: Path) -> None:
    given, tolerance = (body for name, body in BLOCKS if name == "toml key")
    path = folder / "eel-trap.toml"
    path.write_text(given + block("toml") + "\n" + tolerance, "utf-8")
    problem = load_problem(path)
    assert (problem.tolerance.silent, problem.tolerance.remark) == (0.01, 0.03)
    lesson = Lesson(problem)
    lesson.take("reasons", chosen=["pins", "joints", "weight"])
    lesson.take("count", m=3, r=3, **{"2j": 6})
    assert lesson.state.step == "joints"


def test_a_class_gets_the_numbers_and_the_paper_of_the_guide(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = folder / "eel-trap.toml"
    path.write_text(block("toml") + "\n" + block("toml vary"), "utf-8")
    (folder / "set.toml").write_text('title = "Week 3"\nid = "week-3"\n', "utf-8")
    (folder.parent / "roster.csv").write_text(block("csv roster"), "utf-8")
    assert main(["check", "my-set"]) == 0
    assert "warning" not in capsys.readouterr().out
    exec(compile(block("python vary"), "instructors.md", "exec"), {})
    own = variant(path, student="S1041", set="Week-3")
    size = own.loads[0].pushes[0][1].text
    assert capsys.readouterr().out == f"{size} {own.joint['C'].at}\n"
    commands = re.findall(r"^    pinjoint ((?:vary|paper) .*)$", TEXT, re.M)
    assert len(commands) == 4
    for number, command in enumerate(commands):
        if "pdf" in command:
            pytest.importorskip("typst")
        words = re.sub(r"--to \S+", f"--to out{number}", command).split()
        assert main(words) == 0
    assert load_problem(folder.parent / "out0" / "s1041" / "eel-trap.toml") == own
    assert {p.name for p in (folder.parent / "out3").iterdir()} == {"sheets.pdf", "keys.pdf"}


@pytest.mark.parametrize("page", ["students.md", "instructors.md"])
def test_every_page_a_guide_points_to_is_there(page: str) -> None:
    for target in re.findall(r"\]\(([^)#]+)\)", (DOCS / page).read_text("utf-8")):
        assert (DOCS / target).exists(), target


def test_the_guide_carries_the_caution() -> None:
    assert " ".join(CAUTION.split()) in " ".join(TEXT.split())
