"""Lines that are no equations: malformed, hostile and half-typed, each made from a right one."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable, Sequence
from random import Random

from tutor.notation import Unreadable

HOSTILE = (
    "__import__('os').system('true') = 0",
    "F_AB.__class__.__mro__ = 0",
    "{0.__class__} = {found}",
    "%s%n%x = %(found)s",
    "lambda: F_AB.x = 0",
    "\x1b[2J\x1b[31mF_AB = 0",
    "\x1b]0;title\x07F_AB = 0",
    "\x1b[<0;12;7M",
    "\x9b31mF_AB = 0",
    "F_AB = 0\r\nF_AC = 0",
    "F_AB = 1e999",
    "F_AB = 1e-999999999999999999999",
    "F_AB = " + "9" * 400,
    "F_AB = 1." + "0" * 300,
    "(" * 200 + "F_AB" + ")" * 200 + " = 0",
    "F_AB" + " + F_AB" * 70 + " = 0",
    "9^9^9^9^9 = F_AB",
    "F_AB = 2^(3^4)",
    "F_AB = (9^6)^6",
    "F_AB = 1/0",
    "F_AB = 1/(2 - 2)",
    "F_AB = tan 90",
    "F_AB = asin(2)",
    "F_AB = sqrt(-1)",
    "\N{PILE OF POO} = \N{PILE OF POO}",
    "<script>F_AB</script> = 0",
    "'; DROP TABLE lines; --",
    "../../etc/passwd = 0",
    "nan F_AB = inf",
    "",
    " ",
    "=",
    "==",
    " = ",
    ":",
    "ΣF:",
    "ΣF" + " " * 490,
    "Σ" * 500,
    "(+" * 250,
    "+->" * 160 + ":",
    "12 C" + " C" * 200,
)
SCRAPS = "+-*/^=()[]{}°√ΣFM_ABCxyk0123456789.,;:'\"!?@#$%&|~<>\\ \t\n\x00\x1b\u200b\u0301é中½²→"
MARKS = (
    "\u202e\u202d\u202a\u202c\u2066\u2067\u2069\u200e\u200f\u061c"  # directions
    "\u200b\u200c\u200d\u2060\ufeff\u00ad\u180e"  # nothing to be seen
    "\ufe0f\U000e0041\ue000\ud800\udcff\uffff\x00\x07\x7f\x85\u2028\u2029"
)
COMBINING = "\u0301\u0338\u20dd\u034f"
NUMBERS = (
    "1e99", "1e-99", "1E+400", "1e", "1e1e1", "1.2.3", "1..2", "..", ".", "0x1F", "1_000", "1'000",
    "1,000", "1.000,5", "1,2,3", "٣", "१२", "１２", "Ⅻ", "1½", "9" * 31, "0." + "0" * 40 + "1",
    "1e12", "1e13", "00", "1e0000000000000000001", "²", "⁻¹", "2⁹⁹", "--", "NaN", "inf",
)  # fmt: skip
LOOKALIKES: dict[str, list[str]] = {}
for code in range(0xA0, 0x1F000):
    same = unicodedata.normalize("NFKC", chr(code))
    # figures and signs above the line are powers, and look like nothing else
    if len(same) == 1 and same.isascii() and "SUPERSCRIPT" not in unicodedata.name(chr(code), ""):
        LOOKALIKES.setdefault(same, []).append(chr(code))
for latin, others in {
    "A": "АΑ", "B": "ВΒ", "C": "СϹ", "E": "ЕΕ", "H": "НΗ", "M": "МΜ", "O": "ОΟ", "P": "РΡ",
    "T": "ТΤ", "x": "хⅹ", "y": "уγ", "-": "−–—", "*": "×·∙", "/": "÷⁄∕", "=": "＝꞊", "_": "＿ˍ",
}.items():  # fmt: skip
    LOOKALIKES.setdefault(latin, []).extend(others)


def confused(rng: Random, text: str, share: float = 0.3) -> str:
    """`text` with some of its characters replaced by others that look like them."""
    return "".join(
        rng.choice(LOOKALIKES[char]) if char in LOOKALIKES and rng.random() < share else char
        for char in text
    )


def marked(rng: Random, text: str, marks: Sequence[str] = MARKS + COMBINING) -> str:
    """`text` with characters put in that show nothing, or that change what is before them."""
    for _ in range(rng.randint(1, 3)):
        at = rng.randrange(len(text) + 1)
        text = text[:at] + rng.choice(marks) + text[at:]
    return text


def _cut(rng: Random, text: str) -> str:
    return text[: rng.randrange(len(text))]


def _put_in(rng: Random, text: str) -> str:
    at = rng.randrange(len(text))
    return text[:at] + rng.choice(SCRAPS) + text[at:]


def _left_out(rng: Random, text: str) -> str:
    i, j = sorted((rng.randrange(len(text)), rng.randrange(len(text))))
    return text[:i] + text[j:]


def _turned(rng: Random, text: str) -> str:
    at = rng.randrange(len(text))
    return text[at:] + text[:at]


def _swapped(rng: Random, text: str) -> str:
    at = rng.randrange(len(text) - 1)
    return text[:at] + text[at + 1] + text[at] + text[at + 2 :]


def _doubled(rng: Random, text: str) -> str:
    at = rng.randrange(len(text))
    return text[:at] + text[at] * rng.choice((2, 3, 40)) + text[at + 1 :]


def _compared(rng: Random, text: str) -> str:
    return text.replace("=", rng.choice(("", "==", "≈", "<", ">=", "=>", ":=", "≠", "= =")))


def _other_number(rng: Random, text: str) -> str:
    found = list(re.finditer("[0-9.]+", text))
    if not found:
        return text + rng.choice(NUMBERS)
    old = rng.choice(found)
    return text[: old.start()] + rng.choice(NUMBERS) + text[old.end() :]


def _nested(rng: Random, text: str) -> str:
    depth = rng.choice((5, 31, 32, 33, 100, 200))
    left, equal, right = text.partition("=")
    opening, closing = rng.choice(
        (
            ("(", ")"),
            ("[", "]"),
            ("-", ""),
            ("(-(", "))"),
            ("sqrt(", ")"),
            ("cos ", ""),
            ("2^(", ")"),
        )
    )
    return opening * depth + left.strip() + closing * depth + f" {equal}{right}"


def _long(rng: Random, text: str) -> str:
    piece = rng.choice((text, " ", "+ 1 ", "(", "F_AB ", "9", "e", "→", "ΣF", "k", "C "))
    return text + piece * rng.choice((20, 130, 500, 5000))


def _scraps(rng: Random, text: str) -> str:
    return "".join(rng.choice(SCRAPS) for _ in range(rng.randint(1, len(text))))


def _hostile(rng: Random, text: str) -> str:
    hostile = rng.choice(HOSTILE)
    return rng.choice((hostile, hostile, f"{hostile} {text}", f"{text} {hostile}"))


WAYS: tuple[Callable[[Random, str], str], ...] = (
    _cut,
    _put_in,
    _left_out,
    _turned,
    _swapped,
    _doubled,
    _compared,
    _other_number,
    _nested,
    _long,
    _scraps,
    _hostile,
    confused,
    marked,
)


def broken(seed: int, text: str) -> str:
    """The right line `text` broken in one of the ways, each in its turn."""
    return WAYS[seed % len(WAYS)](Random(seed), text)


def prefixes(text: str) -> list[str]:
    """All that has been typed on the way to `text`."""
    return [text[:end] for end in range(len(text))]


def assert_one_sentence(found: Unreadable | None, text: str) -> None:
    """A complaint is one printable sentence with a cure, and a place in the text as typed."""
    assert found is not None, text
    message = found.message
    assert found.text == text
    assert 1 <= found.column <= len(text) + 1, (text, message)
    assert 0 <= found.length <= len(text) + 1 - found.column, (text, message)
    assert found.cure, text
    assert message.endswith(f"; {found.cure}."), message
    assert re.match("[A-Z“]", message), message
    assert message.isprintable(), (text, message)
    assert len(message) < 400, (text, message)
    assert message.encode("utf-8"), text
    assert not re.search(r"\$END|Traceback|object at 0x|\b[A-Z][a-z]+Error\b", message), message
    assert found.caret().replace("\n", "").isprintable(), text
