"""Which characters of a text from a file may be kept, and how is it shown in a message?

Control characters, terminal escapes and characters that turn the writing direction never get past
here; what is kept is safe to show anywhere as plain text.
"""

from __future__ import annotations

import re
import unicodedata

JOINERS = "\u200c\u200d"
BREAKS = "\r\v\f\x85\u2028\u2029"
SHOWN = 40


def _kept(character: str) -> bool:
    return character in JOINERS or unicodedata.category(character) not in ("Cc", "Cf", "Cs")


def one_line(text: str) -> str:
    """`text` on one line: no control characters, every run of white space one space."""
    if text.isprintable():
        return " ".join(text.split())
    spaced = ("\n" if c.isspace() else c for c in text)
    return " ".join("".join(c for c in spaced if c == "\n" or _kept(c)).split())


def lines(text: str) -> str:
    """`text` without control characters, its line breaks kept as plain newlines."""
    text = text.replace("\r\n", "\n").translate({ord(c): "\n" for c in BREAKS} | {9: " "})
    return "".join(c for c in text if c == "\n" or _kept(c)).strip()


def printable(text: str) -> str:
    """`text` on one line with a mark for every character that cannot be printed."""
    if text.isprintable():
        return " ".join(text.split())
    return "".join(c if c.isprintable() else "\N{REPLACEMENT CHARACTER}" for c in one_line(text))


def shown(text: str) -> str:
    """`text` in double quotes for a message: one line, shortened in the middle if long."""
    if len(text) > 4 * SHOWN:
        text = text[: 2 * SHOWN] + text[-2 * SHOWN :]
    text = printable(text)
    if len(text) > SHOWN:
        text = f"{text[: SHOWN - 12]}…{text[-11:]}"
    return f'"{text}"'


MARKED = str.maketrans(
    {sign: f"\\{sign}" for sign in "\\`*_{}[]#|!~$"}
    | {"&": "&amp;", "<": "&lt;", ">": "&gt;", "@": "&#64;"}
)


def in_markdown(text: str) -> str:
    """`text` on one line so that Markdown shows it as it is: no link, picture, heading or list."""
    said = one_line(text).translate(MARKED).replace("://", "&#58;//")
    said = re.sub(r"(?i)\bwww\.", "www&#46;", said)
    if said.startswith(("-", "+", "=")):
        return f"\\{said}"
    return re.sub(r"^(\d+)([.)])", r"\1\\\2", said)


def in_code(text: str) -> str:
    """`text` on one line as a code span of Markdown, as it was typed but for its backticks."""
    return f"`{printable(text).replace('`', chr(39)) or ' '}`"
