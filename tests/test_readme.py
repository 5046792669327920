"""Does the README say what is so, and point to what is there?"""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from tutor.lesson import CAUTION

ROOT = Path(__file__).parents[1]
TEXT = (ROOT / "README.md").read_text("utf-8")
ARM = re.search(
    r"^```toml\n([\s\S]*?)^```$", (ROOT / "docs/problem-files.md").read_text("utf-8"), re.M
)


def test_the_job_comes_before_anything_else() -> None:
    first = TEXT.split("\n\n")[1]
    assert not first.startswith(("#", "<", "`", "!"))
    assert (
        TEXT.index(first) < TEXT.index("<!-- start command -->") < TEXT.index("<!-- test command")
    )


@pytest.mark.parametrize("target", re.findall(r"\]\(([^)#:]+)\)", TEXT))
def test_everything_it_points_to_is_there(target: str) -> None:
    assert (ROOT / target).exists()


def test_the_caution_stands_in_it() -> None:
    assert " ".join(CAUTION.split()) in " ".join(TEXT.split())


def test_its_script_runs(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    assert ARM is not None
    (tmp_path / "arm.toml").write_text(ARM[1], "utf-8")
    monkeypatch.chdir(tmp_path)
    script = re.search(r"^```python\n([\s\S]*?)^```$", TEXT, re.M)
    assert script is not None
    names: dict[str, object] = {}
    exec(compile(script[1], "README.md", "exec"), names)
    assert names["verdict"].right
