"""Does docs/sources.md name every source that the tests and the program go by?"""

from __future__ import annotations

import json
import re
from pathlib import Path

ROOT = Path(__file__).parents[1]
SOURCES = (ROOT / "docs" / "sources.md").read_text("utf-8")
STANDARD = re.compile(
    r"\b(?:RFC \d+|IEEE [\d.]+|NIST Special Publication \d+|WCAG|OneRoster|CommonMark"
    r"|Okabe|Ritter|Maxwell|Corbett|Hibbeler|Johnston|Bober|ISO \d{4,})\b"
)


def test_every_file_of_published_checks_is_named() -> None:
    for path in (ROOT / "tests" / "published").glob("*"):
        if path.suffix in (".py", ".jsonl"):
            assert path.name in SOURCES, path.name


def test_every_published_case_has_its_row_with_problem_and_edition() -> None:
    for row in (ROOT / "tests" / "published" / "cases.jsonl").read_text("utf-8").splitlines():
        source = json.loads(row)["source"]
        for words in re.findall(
            r"(?:Problem|Example) [\d.]+|\d+th edition|[A-Z]\w+ Essentials", source
        ):
            assert words in SOURCES, source


def test_every_standard_and_author_named_in_the_sources_of_the_program_has_its_row() -> None:
    missing = {
        (path.name, found)
        for folder in ("tutor", "tests")
        for path in (ROOT / folder).rglob("*.py")
        if path.name != Path(__file__).name
        for found in STANDARD.findall(path.read_text("utf-8"))
        if found not in SOURCES
    }
    assert not missing
