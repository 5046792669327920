"""Do the drawings still look as they were last looked at?

One text file a drawing, in `golden/`. After a wanted change renew them with

    PINJOINT_RENEW_GOLDENS=1 python -m pytest tests/figure/test_figure_goldens.py

and read the difference before committing it.
"""

import os
from pathlib import Path

import pytest
from drawings import figures

from tutor.figure import test_card as card
from tutor.figure import to_cells, to_words

GOLDEN = Path(__file__).parent / "golden"
FIGURES = figures()


def compare(name: str, text: str) -> None:
    path = GOLDEN / f"{name}.txt"
    if os.environ.get("PINJOINT_RENEW_GOLDENS"):
        path.write_text(text + "\n", encoding="utf-8")
    assert text + "\n" == path.read_text(encoding="utf-8")


@pytest.mark.parametrize("name", FIGURES)
def test_a_drawing_looks_as_it_did_in_every_glyph_set_and_in_words(name: str) -> None:
    figure = FIGURES[name]
    pages = [
        f"{glyphs} {columns} x {rows}\n{to_cells(figure, columns, rows, glyphs).text}"
        for glyphs, columns, rows in (
            ("braille", 76, 20),
            ("braille", 40, 12),
            ("blocks", 60, 16),
            ("ascii", 60, 16),
        )
    ]
    compare(name, "\n\n".join([*pages, "words\n" + "\n".join(to_words(figure))]))


def test_the_test_card_looks_as_it_did() -> None:
    compare("test-card", "\n\n".join(card(glyphs) for glyphs in ("braille", "blocks", "ascii")))
