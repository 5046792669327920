"""Does the walk in the students' guide go as it is printed?"""

from __future__ import annotations

import re
from pathlib import Path

from transcripts import GAP, first_unlike, transcript

from tutor.deeds.words import BY_WORD
from tutor.lesson import CAUTION
from tutor.model import load_problem
from tutor.shipped import shipped_problems

TEXT = (Path(__file__).parents[1] / "docs" / "students.md").read_text("utf-8")
WALKS = re.findall(r"^```walk\n([\s\S]*?)^```$", TEXT, re.M)
EXCERPT = [line for walk in WALKS for line in (GAP, *walk.splitlines())]
TYPED = [line.removeprefix("> ") for line in EXCERPT if line.startswith("> ")]


def said(keep: Path) -> list[str]:
    problem = load_problem(shipped_problems() / "first-steps" / "lamp-arm.toml")
    return transcript(problem, TYPED, keep)


def test_the_walk_goes_as_it_is_printed(tmp_path: Path) -> None:
    assert first_unlike(EXCERPT, said(tmp_path)) is None


def test_the_walk_is_whole(tmp_path: Path) -> None:
    lines = said(tmp_path)
    assert "Note: Done: the table is complete." in lines
    assert len(TYPED) > 20
    assert [line for line in lines if line.startswith("> ")] == [f"> {line}" for line in TYPED]


def test_an_excerpt_that_is_off_is_found() -> None:
    spoken = ["one", "> two", "three", "four"]
    assert first_unlike(["one", GAP, "three"], spoken) is None
    assert first_unlike(["one", "th…"], spoken) is not None
    assert first_unlike([GAP, "four", "one"], spoken) is not None
    assert first_unlike(["fi…"], spoken) is not None


def test_every_command_named_in_the_guide_is_one() -> None:
    named = re.findall(r"`(\w+)(?: [^`]*)?`", TEXT.partition("## One walk")[2])
    words = [word for word in named if not re.fullmatch(r"[A-Z].*|pinjoint", word)]
    assert {"hint", "undo", "keep", "push", "zero", "across", "step", "save"} <= set(words)
    assert set(words) <= BY_WORD.keys(), set(words) - BY_WORD.keys()


def test_the_guide_carries_the_caution() -> None:
    assert " ".join(CAUTION.split()) in " ".join(TEXT.split())
