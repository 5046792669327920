"""How is paper set as PDF? As Typst source, which the `typst` package turns into pages.

The package is the extra `paper`. Every text of ours or of a file stands in a string literal, which
Typst sets as it is: nothing in it is read as markup or code.
"""

from __future__ import annotations

import json
import re
import tempfile
from collections.abc import Iterator, Sequence
from pathlib import Path

from tutor.model.caution import CAUTION
from tutor.paper.blocks import (
    Block,
    Lines,
    Paragraph,
    Picture,
    PrintedSheet,
    PrintedTable,
    SubHeading,
    Together,
    WorkingSpace,
)
from tutor.paper.columns import DIGIT, POINT, aligned, is_numbers
from tutor.paper.html import SUBSCRIPT

START = """\
#set page(paper: "a4", margin: (x: 20mm, top: 18mm, bottom: 20mm))
#set text(font: ("Libertinus Serif", "New Computer Modern"), size: 10.5pt, lang: "en")
#set par(justify: false, leading: 0.6em)
#set table(stroke: 0.6pt, inset: (x: 8pt, y: 4pt))
#show table: set text(number-type: "lining", number-width: "tabular")
"""
MISSING = (
    "PDF needs the typst package, which is not installed: pip install 'pinjoint[paper]', or take "
    "--as html and print from a browser."
)


def literal(text: str) -> str:
    """A Typst string that stands for exactly this text on one line."""
    return json.dumps(" ".join(text.split()), ensure_ascii=False)


FOOTER = (
    f'[#text(size: 8.5pt, style: "italic")[#{literal(CAUTION)}] #h(1fr) '
    "#context counter(page).display()]"
)


class NoTypst(Exception):  # noqa: N818 - something to install, not a slip
    """The package that makes PDF is not there; the message says what to do."""

    def __init__(self) -> None:
        super().__init__(MISSING)


def to_pdf(papers: Sequence[PrintedSheet]) -> bytes:
    """The pages. Raises NoTypst where the package is missing."""
    try:
        import typst  # here: only an extra, and only for this
    except ImportError:
        raise NoTypst from None
    source, pictures = to_typst(papers)
    with tempfile.TemporaryDirectory() as folder:
        for name, svg in pictures.items():
            Path(folder, name).write_text(svg, "utf-8")
        main = Path(folder, "main.typ")
        main.write_text(source, "utf-8")
        return bytes(typst.compile(str(main), root=folder))


def to_typst(papers: Sequence[PrintedSheet]) -> tuple[str, dict[str, str]]:
    """The source, and its pictures by the names of their files."""
    pictures: dict[str, str] = {}
    pages = ("\n".join(_page(paper, number, pictures)) for number, paper in enumerate(papers))
    return START + "\n#pagebreak(weak: true)\n".join(pages) + "\n", pictures


def _page(paper: PrintedSheet, number: int, pictures: dict[str, str]) -> Iterator[str]:
    """A sheet; who looks at any of its pages alone sees what it is, whose, and the caution."""
    yield f"#set page(header: {_header(paper, number)}, footer: {FOOTER})"
    yield f"#counter(page).update(1)\n#metadata(none) <sheet-{number}>"
    yield f'#text(size: 15pt, weight: "bold")[#{literal(paper.title)}]\n'
    if paper.whom:
        yield f"#block(stroke: (bottom: 0.6pt), inset: (bottom: 3pt), width: 100%)[#{literal(paper.whom)}]\n"
    for block in paper.blocks:
        yield from _block(block, pictures)


def _header(paper: PrintedSheet, number: int) -> str:
    """Title and whom, on all pages but the first."""
    told = literal(", ".join(filter(None, (paper.title, paper.whom))))
    later = f"here().page() > locate(<sheet-{number}>).page()"
    return f"context if {later} [#text(size: 8.5pt)[#{told}]]"


def _block(block: Block, pictures: dict[str, str]) -> Iterator[str]:
    match block:
        case SubHeading(text):
            yield f"#block(above: 1.2em, below: 0.5em, sticky: true)[#strong({literal(text)})]\n"
        case Paragraph(text):
            yield f"#par({literal(text)})\n"
        case Picture(words=words, share=share):
            name = f"picture-{len(pictures) + 1}.svg"
            pictures[name] = block.svg()
            yield f"#align(center, image({literal(name)}, width: {share * 100:g}%, alt: {literal(words)}))\n"
        case Lines(rows):
            cells = ", ".join(f"[{_named(cell)}]" for row in rows for cell in row)
            yield (
                "#table(columns: (auto, 1.3fr, 1fr), stroke: (x, y) => (bottom: 0.3pt + gray), "
                f"inset: (x: 4pt, y: 4pt), {cells})\n"
            )
        case PrintedTable(head, rows):
            yield _grid(head, rows)
        case Together(blocks):
            inner = "".join(text for each in blocks for text in _block(each, pictures))
            yield f"#block(breakable: false)[\n{inner}]\n"
        case WorkingSpace(pages):
            box = "#block(width: 100%, height: 1fr, stroke: 0.4pt + gray)"
            yield "\n#pagebreak()\n".join([box] * (pages + 1)) + "\n"


ON_A_PAGE = 30
"""A table of so many rows is kept on one page."""
BLANK = "#box(width: 15mm, height: 4mm)"
"""An empty cell has room for what is written by hand."""


def _grid(head: Sequence[str], rows: Sequence[Sequence[str]]) -> str:
    ways = [
        "right + horizon" if is_numbers(column) else "left + horizon"
        for column in zip(*rows, strict=True)
    ]
    top = ", ".join(f"[#strong[{_named(cell)}]]" for cell in head)
    cells = ", ".join(
        f"[{_named(cell) if cell else BLANK}]" for row in aligned(rows) for cell in row
    )
    unbroken = "false" if len(rows) <= ON_A_PAGE else "true"
    how = f"columns: {len(head)}, align: ({', '.join(ways)})"
    return f"#block(breakable: {unbroken}, table({how}, table.header({top}), {cells}))\n"


def _named(text: str) -> str:
    """Content with "F_AB" and "A_x" set as letters with an index."""
    parts: list[str] = []
    end = 0
    for found in SUBSCRIPT.finditer(text):
        if text[end : found.start()]:
            parts.append(f"#{literal_kept(text[end : found.start()])}")
        parts.append(f"#emph({literal(found[1])})#sub({literal(found[2] or found[3])})")
        end = found.end()
    if text[end:]:
        parts.append(f"#{literal_kept(text[end:])}")
    return "".join(parts)


def literal_kept(text: str) -> str:
    """As `literal`, with the spaces at its ends."""
    return json.dumps(re.sub(rf"[^\S{DIGIT}{POINT}]+", " ", text), ensure_ascii=False)
