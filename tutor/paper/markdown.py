"""How is paper written as Markdown, its pictures as SVG files beside it?"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

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
from tutor.paper.columns import is_numbers

SPECIAL = re.compile(r"([\\`*_{}\[\]<>#|~$!&])")


def to_markdown(papers: Sequence[PrintedSheet], stem: str) -> tuple[str, dict[str, str]]:
    """The text, and its pictures by the names of their files, which begin with `stem`."""
    pictures: dict[str, str] = {}
    parts: list[str] = []
    for paper in papers:
        parts.append(f"# {escaped(paper.title)}")
        if paper.whom:
            parts.append(escaped(paper.whom))
        for block in _flat(paper.blocks):
            if isinstance(block, Picture):
                name = f"{stem}-{len(pictures) + 1}.svg"
                pictures[name] = block.svg(alone=True)
                parts.append(f"![{escaped(block.words)}]({name})")
            else:
                parts += _block(block)
        parts.append(f"*{escaped(CAUTION)}*")
    return "\n\n".join(parts) + "\n", pictures


def escaped(text: str) -> str:
    """Plain text that no Markdown reader takes for anything else."""
    text = SPECIAL.sub(r"\\\1", " ".join(text.split()))
    return re.sub(r"^(\d+)([.)])|^([-+=])", r"\1\\\2\3" if text[:1].isdigit() else r"\\\3", text)


def _block(block: Block) -> Iterator[str]:
    match block:
        case SubHeading(text):
            yield f"## {escaped(text)}"
        case Paragraph(text):
            yield escaped(text)
        case Lines(rows):
            names = "| equation | line | gives |\n|---|---|---|"
            yield "\n".join((names, *map(_row, rows)))
        case PrintedTable(head, cells):
            rules = (
                "---:|" if is_numbers(column) else "---|" for column in zip(*cells, strict=True)
            )
            table = [_row(head), f"|{''.join(rules)}", *map(_row, cells)]
            yield "\n".join(table)
        case WorkingSpace():
            yield "&nbsp;"


def _flat(blocks: Sequence[Block]) -> Iterator[Block]:
    """The blocks without what keeps them together, which Markdown cannot say."""
    for block in blocks:
        if isinstance(block, Together):
            yield from _flat(block.blocks)
        else:
            yield block


def _row(cells: Sequence[str]) -> str:
    return f"| {' | '.join(map(escaped, cells))} |"
