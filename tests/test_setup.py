"""Do the commands of the README stand there in one line each, and are their scripts sound?"""

from __future__ import annotations

import re
import shutil
import subprocess
import tomllib
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
README = (ROOT / "README.md").read_text(encoding="utf-8")
SCRIPTS = sorted(path for path in (ROOT / ".ci").iterdir() if path.is_file())


def marked(mark: str) -> list[str]:
    """The lines of the code block that follows a mark in the README."""
    found = re.search(rf"<!-- {mark} command -->\s*```\w*\n(.*?)```", README, re.DOTALL)
    assert found is not None, mark
    return found[1].splitlines()


@pytest.mark.parametrize("mark", ["start", "test"])
def test_a_command_of_the_readme_is_one_line_that_names_a_script(mark: str) -> None:
    (line,) = marked(mark)
    shell, script = line.split()
    assert shell == "sh"
    assert (ROOT / script).is_file()


@pytest.mark.parametrize("path", SCRIPTS, ids=lambda path: path.name)
def test_a_script_can_be_parsed_by_the_shell_it_names(path: Path) -> None:
    shell = "bash" if "bash" in path.read_text(encoding="utf-8").splitlines()[0] else "sh"
    if shutil.which(shell) is None:
        pytest.skip(f"there is no {shell} here")
    assert subprocess.run([shell, "-n", str(path)], check=False).returncode == 0


def test_continuous_integration_runs_the_command_of_the_readme() -> None:
    run = (ROOT / ".ci" / "run").read_text(encoding="utf-8")
    assert "<!-- test command -->" in run
    assert marked("test")[0] not in run


def test_nothing_keeps_pytest_from_closing_with_how_many_passed() -> None:
    """Two of -q would: one is left to whoever runs it."""
    settings = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
    asked = settings["tool"]["pytest"]["ini_options"]["addopts"].split()
    assert not {"-q", "-qq", "--quiet", "--no-summary"} & set(asked)
    for script in SCRIPTS:
        assert " -q" not in re.sub(r"(?m)^\s*#.*|apt-get.*", "", script.read_text("utf-8"))


def test_what_renews_pictures_or_times_things_runs_in_one_process() -> None:
    script = (ROOT / ".ci" / "test").read_text(encoding="utf-8")
    for option in ("--snapshot-update", "--benchmark-enable", "--pdb"):
        assert option in script


def test_every_dependency_has_a_lower_bound() -> None:
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    wanted = [*project["dependencies"], *project["optional-dependencies"]["test"]]
    assert all(">=" in each for each in wanted)


def test_the_top_level_holds_only_what_it_should() -> None:
    wanted = {"README.md", "DEVELOPERS.md", "pyproject.toml", "tutor", "problems", "tests", "docs"}
    there = {path.name for path in ROOT.iterdir() if not path.name.startswith(".")}
    made = {"build", "dist", "snapshot_report.html"}
    assert there - made <= wanted
