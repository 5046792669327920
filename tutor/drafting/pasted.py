"""What does a row of a table of joints say? A name, x and y, parted by tabs, commas or semicolons."""

from __future__ import annotations

import re

NUMBER = r"[-+−]?[\d.(√s][^\s;]*"
POINTED = r"[-+−]?[\d.(√s][^\s;,]*"
"""A number whose decimal sign is no comma, since commas part the columns."""
TAB_OR_SEMICOLON, COMMA = r"[^\S\t]*+[;\t]\s*+", r"\s*+,\s*+"
ROW = re.compile(
    rf"\s*+[A-Za-z]\w*(?:{TAB_OR_SEMICOLON}{NUMBER}{TAB_OR_SEMICOLON}{NUMBER}"
    rf"|{COMMA}{POINTED}{COMMA}{POINTED})\s*+"
)
HEADING = re.compile(
    r"\s*+(?:[^\W\d]*[^\S\t]*+[;,\t]\s*+)?x\b[^;,\t]*+[;,\t]\s*+y\b[^;,\t]*+", re.IGNORECASE
)


def statement_of(line: str) -> str:
    """A line as it is typed: the cells of a row parted by blanks, "" for the heading of a table.

    Every other line is as it was. What is left stands where it stood.
    """
    if HEADING.fullmatch(line):
        return ""
    if ROW.fullmatch(line) is None:
        return line.replace("\t", " ")
    return re.sub(r"[;\t]" if ";" in line or "\t" in line else ",", " ", line)
