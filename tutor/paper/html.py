"""How is paper written as one HTML file that needs nothing beside it?

No script, font or picture is fetched: styles and drawings are inside. Printed, each sheet begins on a
page of its own.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from html import escape
from itertools import count

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
from tutor.paper.columns import aligned, is_numbers

STYLE = """\
@page { size: A4; margin: 18mm; }
body { font: 11pt/1.4 Georgia, 'Times New Roman', serif; color: #000; background: #fff;
  max-width: 44em; margin: 1.5em auto; padding: 0 1em; }
article { break-after: page; }
article:last-child { break-after: auto; }
section { break-inside: avoid; }
h1 { font-size: 1.45em; margin: 0 0 .2em; }
h2 { font-size: 1.1em; margin: 1.2em 0 .3em; break-after: avoid; }
.whom { border-bottom: 1px solid #000; padding-bottom: .3em; margin: 0 0 .8em; }
figure { margin: .6em 0; break-inside: avoid; }
figure svg { display: block; width: 100%; height: auto; margin: 0 auto; }
table { border-collapse: collapse; margin: .6em 0; break-inside: avoid; }
th, td { border: 1px solid #000; padding: .15em .7em; text-align: left; }
table { font-variant-numeric: lining-nums tabular-nums; }
.number { text-align: right; }
td.blank { min-width: 4.4em; height: 1.9em; }
table.lines { width: 100%; }
table.lines td { border: 0; border-bottom: 1px solid #bbb; vertical-align: top; }
table.lines td:first-child { white-space: nowrap; }
.room { border: 1px solid #999; margin: .6em 0; }
.rest { height: 60mm; }
.page { height: 235mm; break-before: page; }
.room p { font-size: .85em; margin: .2em .5em; }
.caution { font-size: .85em; font-style: italic; break-before: avoid; }
@media print { figure svg { max-height: 105mm; } .room { break-inside: avoid; } }
"""
NAMES = re.compile(r"\b((?:title|desc)-[0-9a-f]{8})\b")


def to_html(papers: Sequence[PrintedSheet], title: str) -> str:
    """The whole text of the file."""
    number = count(1)
    body = "\n".join("\n".join(_article(paper, number)) for paper in papers)
    return (
        '<!DOCTYPE html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n'
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        f"<title>{escape(title)}</title>\n<style>\n{STYLE}</style>\n</head>\n<body>\n"
        f"{body}\n</body>\n</html>\n"
    )


def _article(paper: PrintedSheet, number: Iterator[int]) -> Iterator[str]:
    yield f"<article>\n<h1>{escape(paper.title)}</h1>"
    if paper.whom:
        yield f'<p class="whom">{escape(paper.whom)}</p>'
    for block in paper.blocks:
        yield from _room(block, paper) if isinstance(block, WorkingSpace) else _block(block, number)
    yield f'<p class="caution">{escape(CAUTION)}</p>\n</article>'


def _room(room: WorkingSpace, paper: PrintedSheet) -> Iterator[str]:
    """Room to work in; on a page of its own it says whose it is."""
    told = escape(", ".join(filter(None, (paper.title, paper.whom))))
    yield '<div class="room rest"></div>'
    yield f'<div class="room page"><p>{told}</p></div>' * room.pages


def _block(block: Block, number: Iterator[int]) -> Iterator[str]:
    match block:
        case SubHeading(text):
            yield f"<h2>{escape(text)}</h2>"
        case Paragraph(text):
            yield f"<p>{escape(text)}</p>"
        case Picture(share=share):
            own = NAMES.sub(rf"\1-{next(number)}", block.svg())
            yield f'<figure style="max-width: {share * 100:g}%">{own}</figure>'
        case Lines(rows):
            yield '<table class="lines">'
            for line in rows:
                yield f"<tr>{''.join(f'<td>{_named(cell)}</td>' for cell in line)}</tr>"
            yield "</table>"
        case PrintedTable(head, table):
            yield from _grid(head, table)
        case Together(blocks):
            yield "<section>"
            for inner in blocks:
                yield from _block(inner, number)
            yield "</section>"


def _grid(head: Sequence[str], rows: Sequence[Sequence[str]]) -> Iterator[str]:
    kinds = [' class="number"' if is_numbers(column) else "" for column in zip(*rows, strict=True)]
    top = "".join(f"<th{kind}>{_named(cell)}</th>" for kind, cell in zip(kinds, head, strict=True))
    yield f"<table>\n<tr>{top}</tr>"
    for cells in aligned(rows):
        filled = (
            f"<td{kind}>{_named(cell)}</td>" if cell else '<td class="blank"></td>'
            for kind, cell in zip(kinds, cells, strict=True)
        )
        yield f"<tr>{''.join(filled)}</tr>"
    yield "</table>"


SUBSCRIPT = re.compile(r"\b([A-Z]\d*|ΣF|ΣM)_(?:\{([^{}]+)\}|([A-Za-z0-9]+))")


def _named(text: str) -> str:
    """Text with "F_AB" and "A_x" set as letters with an index."""
    parts: list[str] = []
    end = 0
    for found in SUBSCRIPT.finditer(text):
        parts.append(escape(text[end : found.start()]))
        index = found[2] or found[3]
        parts.append(f"<i>{escape(found[1])}</i><sub>{escape(index)}</sub>")
        end = found.end()
    return "".join(parts) + escape(text[end:])
