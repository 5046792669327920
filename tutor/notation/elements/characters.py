"""Which plain character does a typed one look like? One for one, so that columns never move."""

from __future__ import annotations

import re
import unicodedata

_ALIKE = {
    # Cyrillic and Greek letters that look like Latin ones
    "А": "A", "В": "B", "С": "C", "Е": "E", "Н": "H", "І": "I", "Ј": "J", "К": "K", "М": "M",
    "О": "O", "Р": "P", "Ѕ": "S", "Т": "T", "Х": "X", "У": "Y", "а": "a", "с": "c", "е": "e",
    "һ": "h", "і": "i", "ј": "j", "о": "o", "р": "p", "ѕ": "s", "х": "x", "у": "y",
    "Α": "A", "Β": "B", "Ε": "E", "Ζ": "Z", "Η": "H", "Ι": "I", "Κ": "K", "Μ": "M", "Ν": "N",
    "Ο": "O", "Ρ": "P", "Τ": "T", "Υ": "Y", "Χ": "X", "ο": "o",
    # signs
    "−": "-", "–": "-", "—": "-", "‐": "-", "‑": "-", "‒": "-", "﹣": "-", "―": "-", "˗": "-", "➖": "-", "➕": "+", "🟰": "=", "٫": ".", "⊕": "+",
    "×": "*", "·": "*", "∙": "*", "⋅": "*", "•": "*", "∗": "*", "✕": "*", "⨯": "*", "✖": "*",
    "⟂": "⊥", "÷": "/", "∕": "/", "⁄": "/", "∶": ":", "∑": "Σ", "£": "Σ", "º": "°", "˚": "°", "◦": "°", "∘": "°", "ϖ": "π",
    "’": "'", "′": "'", "‘": "'", "＿": "_", "“": '"', "”": '"', "″": '"', "„": '"', "¨": '"',
    "≈": "=", "≅": "=", "≃": "=", "≐": "=", "≡": "=", "≟": "=", "≜": "=", "⩵": "=", "≝": "=", "≙": "=", "≗": "=",
    # bullets of symbol fonts
    "\uf0b7": "*", "\uf0a7": "*", "\uf0d8": "*", "\uf0fc": "*",
    # arrows
    "⟶": "→", "⟹": "⇒", "⇛": "⇒", "⟾": "⇒", "⇔": "⇒", "⟺": "⇒", "➔": "→", "➜": "→", "➝": "→", "➞": "→", "➡": "→", "⭢": "→",
    "⇐": "←", "⟵": "←", "⬅": "←", "⭠": "←", "⇑": "↑", "⬆": "↑", "⭡": "↑", "⇓": "↓", "⬇": "↓",
    "⭣": "↓", "⟲": "↺", "↶": "↺", "⤺": "↺", "⥀": "↺", "⭯": "↺", "⟳": "↻", "↷": "↻", "⤻": "↻",
    "⥁": "↻", "⭮": "↻",
    # spaces
    "\t": " ", "\u00a0": " ", "\u2002": " ", "\u2003": " ", "\u2004": " ", "\u2005": " ",
    "\u2006": " ", "\u2007": " ", "\u2008": " ", "\u2009": " ", "\u200a": " ", "\u202f": " ",
    "\u2061": " ", "\u2062": " ", "\u2063": " ",
    "\u205f": " ", "\u3000": " ",
    # letters and figures below the line
    "ₓ": "x", "ₐ": "a", "ₑ": "e", "ₕ": "h", "ₖ": "k", "ₗ": "l", "ₘ": "m", "ₙ": "n", "ₒ": "o",
    "ₚ": "p", "ₛ": "s", "ₜ": "t", "ᵢ": "i", "ⱼ": "j", "ᵣ": "r", "ᵤ": "u", "ᵥ": "v", "ᵧ": "y",
    "₋": "-", "₀": "0", "₁": "1", "₂": "2", "₃": "3", "₄": "4", "₅": "5", "₆": "6", "₇": "7", "₈": "8",
    "₉": "9",
}  # fmt: skip
_TABLE = str.maketrans(_ALIKE)
_DOUBLED = re.compile(r"(?<=[×·∙⋅•✕⨯])[×·∙⋅•✕⨯]")
"""A sign for times behind another, which is not the ** of a power."""
_MINUS = re.compile(
    r"(?<![\w)\]}])⁻(?=[0-9A-Z(])|(?:^|(?<=[ =(+*/]))¯(?= ?[0-9A-Z(])|(?<= )[⁻¯](?= )"
)
"""What a page gives for a minus where nothing else can be meant."""
_BEYOND_ASCII = re.compile(r"[^\x00-\x7f]")

_SMALL_CAPITAL = re.compile(r"LATIN LETTER SMALL CAPITAL ([A-Z])")

UNSEEN = re.compile(
    "[\u200b-\u200e\u202a\u202c\u2060\u2064\u2066\u2068\u2069\ufeff\ufe0e\ufe0f]|(?<=[^\\W\\d])\u00ad(?=[^\\W\\d])"
)
"""What pasting brings along, shows nothing and says nothing: joiners, word breaks, choices of a glyph, marks around
what runs from left to right.

A soft hyphen is such only within a word: elsewhere it may stand for a minus.
"""
ON_A_KEY = re.compile(r"^(?P<before> *)(?P<count>[0-9])\ufe0f?\u20e3 *")
"""The number of a line that is shown on a key: 1️⃣."""
RAISED = {"⁰": 0, "¹": 1, "²": 2, "³": 3, "⁴": 4, "⁵": 5, "⁶": 6, "⁷": 7, "⁸": 8, "⁹": 9}
"""Figures above the line: powers, which must not be read as plain figures."""


def plain(text: str) -> str:
    """`text` with look-alike characters replaced, character for character."""
    if "\t" not in text and (text.isascii() or text.replace("°", "").isascii()):
        return text
    made = text.translate(_TABLE)
    if "⁻" in text or "¯" in text:
        made = _MINUS.sub("-", made)
    made = _BEYOND_ASCII.sub(_compatible, made)
    for doubled in _DOUBLED.finditer(text):
        made = f"{made[: doubled.start()]}×{made[doubled.end() :]}"
    return made


def _compatible(found: re.Match[str]) -> str:
    """The ASCII character that a full-width or styled form stands for, or else the form itself."""
    char = found[0]
    if char.isdecimal():
        return str(unicodedata.decimal(char))
    if char in RAISED or char in "°πΣ√×" or unicodedata.category(char) == "No":
        return char
    if (small := _SMALL_CAPITAL.fullmatch(unicodedata.name(char, ""))) is not None:
        return small[1]
    same = unicodedata.normalize("NFKC", char)
    same = same[1] if len(same) == 3 and same[0] == "(" else same
    return same if len(same) == 1 and (same.isascii() or same in "πΣ") else char


def hidden(char: str) -> bool:
    """Whether a character shows nothing: a control, a zero-width or a direction mark."""
    return unicodedata.category(char) in ("Cc", "Cf", "Cs", "Co", "Cn", "Zl", "Zp")


def attached(char: str) -> bool:
    """Whether a character is an accent or another mark upon the one before it."""
    return unicodedata.category(char).startswith("M")


def shown(text: str, width: int = 40) -> str:
    """`text` fit to be printed in a message: hidden characters named, a long text shortened."""
    if len(text) > width:
        text = text[: width - 1] + "…"
    text = "".join(" " if blank(char) else char for char in text)
    return "".join(described(char) if hidden(char) else char for char in text)


def blank(char: str) -> bool:
    """Whether a character is a space of any width."""
    return char == "\t" or unicodedata.category(char) == "Zs"


def described(char: str) -> str:
    """A hidden character by code point and, where it has one, by name."""
    name = _CONTROL_NAMES.get(char) or unicodedata.name(char, "").lower()
    code = f"U+{ord(char):04X}"
    return f"{name} ({code})" if name else code


_CONTROL_NAMES = {
    "\x00": "null",
    "\x07": "bell",
    "\x08": "backspace",
    "\n": "line break",
    "\r": "carriage return",
    "\x1b": "escape",
    "\x7f": "delete",
}


def columns(text: str) -> int:
    """How many terminal columns printable `text` takes."""
    wide = sum(unicodedata.east_asian_width(char) in "WF" for char in text)
    return len(text) + wide - sum(unicodedata.combining(char) != 0 for char in text)
