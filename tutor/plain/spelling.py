"""How is every sign said in letters? For a voice that reads aloud, and for output that is plain ASCII."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Mapping
from functools import lru_cache

SPELLED: Mapping[str, str] = {
    "ΣM": "sum of moments",
    "ΣF ": "sum of forces ",
    "Σ": "sum of ",
    "°": " degrees",
    "×": "*",
    "÷": "/",
    "−": "-",
    "–": "-",
    "—": "-",
    "√": "sqrt",
    "²": "^2",
    "³": "^3",
    "…": "...",
    "“": '"',
    "”": '"',
    "„": '"',
    "‘": "'",
    "’": "'",
    "←": "left",
    "→": "right",
    "↑": "up",
    "↓": "down",
    "↖": "up and left",
    "↗": "up and right",
    "↘": "down and right",
    "↙": "down and left",
    "⇒": "=>",
    "∴": "so",
    "½": "1/2",
    "¼": "1/4",
    "¾": "3/4",
    "ß": "ss",
    "æ": "ae",
    "ø": "o",
    "Ø": "O",
    "ł": "l",
}
"""Signs in words, the longer ones first."""
LENGTHS: Mapping[str, str] = {
    "m": "metre",
    "ft": "foot",
    "in": "inch",
    "mm": "millimetre",
    "cm": "centimetre",
}
BY_EAR = (
    (re.compile(r"(?<== )[-−](?=[\d.(A-Z])"), "minus "),
    (re.compile(r"(?:(?<=[\s(])|^)[-−](?=[\d.])"), "minus "),
    *(
        (re.compile(rf"\b(N|kN|MN|lb|kip)/{unit}\b"), rf"\1 per {word}")
        for unit, word in LENGTHS.items()
    ),
)
"""What many voices pass over in silence: a sign before a number, and the stroke within a unit."""
LESS = re.compile(r"(?<=[\w)\]}]) [-−] (?=[\d.(A-Z])")
"""The minus between two terms of an equation."""
TYPED = re.compile(
    r"(?<![\w&\\])(minus|plus)\b(?!;)(?! +(?:the|a|an|its|that|those|this|[a-z]{6,})\b) *",
    re.IGNORECASE,
)
UNITS = re.compile(r"(?<=[A-Za-z])·(?=[A-Za-z])")


def spelled(text: str) -> str:
    """`text` in ASCII: signs in words, units of a product apart, accents left off."""
    for sign, words in BY_EAR:
        text = sign.sub(words, text)
    if "=" in text:
        text = LESS.sub(" minus ", text)
    if text.isascii():
        return text
    text = UNITS.sub(" ", text)
    for mark, words in SPELLED.items():
        text = text.replace(mark, words)
    return text if text.isascii() else "".join(map(_letter, text))


def typed_as_heard(text: str) -> str:
    """A typed equation with the signs that were said in words as signs again."""
    if "=" not in text:
        return text
    return TYPED.sub(lambda word: "-" if word[1].lower() == "minus" else "+", text)


@lru_cache(maxsize=1024)
def _letter(char: str) -> str:
    """One character in ASCII: its letter without accents, a Greek letter's name, or what it is called."""
    if char.isascii():
        return char
    if char == "·":
        return "*"
    name = unicodedata.name(char, "")
    if name.startswith("GREEK ") and " LETTER " in name:
        said = name.partition(" LETTER ")[2].split(" ")[0].lower()
        return said.capitalize() if "CAPITAL" in name else said
    bare = unicodedata.normalize("NFKD", char).encode("ascii", "ignore").decode("ascii")
    return bare if bare.isprintable() and bare else f"({name.lower()})" if name else "?"
