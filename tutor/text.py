"""Which characters of a text may be kept, and how is it shown in a message, listed or put into a sentence?

Control characters, terminal escapes and characters that turn the writing direction never get past
here; what is kept is safe to show anywhere as plain text.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable

JOINERS = "\u200c\u200d"
BREAKS = "\r\v\f\x85\u2028\u2029"
SHOWN = 40
FEW = 14
SELECTORS = frozenset(map(chr, range(0xFE00, 0xFE10)))
FILLERS = frozenset("\u034f\u115f\u1160\u17b4\u17b5\u3164\uffa0")


def _kept(character: str) -> bool:
    return character in JOINERS or unicodedata.category(character) not in ("Cc", "Cf", "Cs")


def visible(text: str) -> str:
    """What of `text` can be seen: nothing that has no width or no meaning; line ends are kept."""
    if text.isascii() and text.isprintable():
        return text
    spaced = text.replace("\r\n", "\n").translate({ord(c): "\n" for c in BREAKS} | {9: " "})
    return "".join(c for c in spaced if c == "\n" or _seen(c))


def _seen(character: str) -> bool:
    if unicodedata.category(character) in ("Cc", "Cf", "Cs", "Co", "Cn"):
        return False
    return character not in SELECTORS and character not in FILLERS


def marked(text: str, mark: str = "?") -> str:
    """`text` with `mark` in the place of each character that cannot be printed."""
    return "".join(c if c.isprintable() else mark for c in text)


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
    return marked(one_line(text), "\N{REPLACEMENT CHARACTER}")


def shown(text: str) -> str:
    """`text` in double quotes for a message: one line, shortened in the middle if long."""
    if len(text) > 4 * SHOWN:
        text = text[: 2 * SHOWN] + text[-2 * SHOWN :]
    text = printable(text)
    if len(text) > SHOWN:
        text = f"{text[: SHOWN - 12]}…{text[-11:]}"
    return f'"{text}"'


def as_text(value: object) -> str:
    """Text as it is, anything else as Python writes it; of what it cannot write, the kind."""
    try:
        return value if isinstance(value, str) else repr(value)
    except (ValueError, RecursionError):
        return f"a value of type {type(value).__name__}"


def so_many(count: int, word: str) -> str:
    """So many things of a kind: "1 joint", "3 joints"."""
    return f"{count} {word}" if count == 1 else f"{count} {word}s"


def so_often(count: int) -> str:
    """How often: "once", "3 times"."""
    return "once" if count == 1 else f"{count} times"


def listed(names: Iterable[str], most: int = 6, last: str = "and") -> str:
    """ "A", "A and B", "A, B and C"; beyond `most` names the rest is counted.

    `last` is the word before the last one.
    """
    known = list(names)
    if len(known) > most:
        return ", ".join(known[: most - 1]) + f" and {len(known) - most + 1} more"
    return f" {last} ".join(filter(None, [", ".join(known[:-1]), *known[-1:]]))


def raised(text: str) -> str:
    """Words as they begin a sentence."""
    return text[:1].upper() + text[1:]


def unended(sentence: str) -> str:
    """A sentence as it stands within another: without its full stop."""
    return sentence.removesuffix(".")


def lowered(text: str) -> str:
    """A sentence as it goes on within another; names keep their letters."""
    plain = text[1:2].islower() or text[1:2] == " "
    return text[:1].lower() + text[1:] if plain else text


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
