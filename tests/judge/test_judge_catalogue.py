"""Is the page of mistakes what the catalogue makes, and does every example show its mistake?"""

from __future__ import annotations

from pathlib import Path

import pytest

from tutor.judge.catalogue import claim_example, first_mistake, module_line, page
from tutor.judge.claims import CLAIMS
from tutor.judge.mistakes import KINDS

ROOT = Path(__file__).parents[2]
PAGE = ROOT / "docs" / "mistakes.md"
FILES = {path.stem for path in (ROOT / "tutor" / "judge" / "mistakes").glob("[a-z]*.py")}
EXAMPLES = [(kind.code, example) for kind in KINDS.values() for example in kind.examples]


def test_the_page_is_what_the_catalogue_makes() -> None:
    assert PAGE.read_text("utf-8") == page() + "\n", (
        "make it anew: python -m tutor.judge.catalogue > docs/mistakes.md"
    )


def test_every_file_of_the_folder_is_a_mistake_of_its_own_name() -> None:
    assert {code.replace("-", "_") for code in KINDS} == FILES


@pytest.mark.parametrize("code", KINDS)
def test_every_mistake_says_what_it_is_and_why_students_do_it(code: str) -> None:
    for told in (module_line(KINDS[code]), KINDS[code].why):
        assert told[0].isupper()
        assert told.endswith(".")


@pytest.mark.parametrize("code", [code for code in KINDS if code != "dependent"])
def test_every_mistake_has_an_example(code: str) -> None:
    assert KINDS[code].examples


@pytest.mark.parametrize(("code", "example"), EXAMPLES)
def test_an_example_shows_its_mistake(code: str, example) -> None:
    assert first_mistake(example).code == code


@pytest.mark.parametrize("claim", CLAIMS.values(), ids=lambda claim: claim.code)
def test_what_is_claimed_wrongly_before_a_line_stands_on_the_page_with_its_hints(claim) -> None:
    told = claim_example(claim)
    entry = PAGE.read_text("utf-8").partition(f"### `{claim.code}`")[2].partition("### ")[0]
    for text in (claim.what, claim.why, told.text, told.reason, told.place):
        assert text in entry
        assert text[0].isupper()
        assert text[-1] in ".?"
        assert not any(c.isdigit() or c in "{}" for c in text)
    assert claim.code not in KINDS
