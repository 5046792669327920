"""What does a formula in MathML say? <msub><mi>F</mi><mi>AB</mi></msub>, element by element from within."""

from __future__ import annotations

import re
from collections.abc import Mapping

from tutor.notation.elements.source import Source

_OPEN, _SHUT = "⟦", "⟧"
_ANY = rf"{_OPEN}([^{_OPEN}{_SHUT}]*){_SHUT}"
_INSIDE = rf"(?P<parts>(?:\s*{_OPEN}[^{_OPEN}{_SHUT}]*{_SHUT})*)\s*"
_LEAF = re.compile(
    r"<(?P<tag>m(?:i|n|o|text|space))(?: [^<>]{0,80})?(?:/>|>(?P<text>[^<>]{0,40})</(?P=tag)>)"
)
_ELEMENT = re.compile(
    rf"<(?P<tag>m(?:row|style|sub|sup|subsup|frac|sqrt|under|over|underover|stack|padded|phantom|fenced|table|tr|td)|math|semantics)(?: [^<>]{{0,200}})?>"
    rf"{_INSIDE}</(?P=tag)>"
)
_PARTS = re.compile(_ANY)
_NOTES = re.compile(r"<annotation(?: [^<>]{0,80})?>[^<>]*</annotation>")
MOST_LAYERS = 16
_FORMS: Mapping[str, tuple[int, str]] = {
    "msub": (2, "{}_{{{}}}"),
    "munder": (2, "{}_{{{}}} "),
    "msup": (2, "{}^({})"),
    "mover": (2, "{}"),
    "msubsup": (3, "{}_{{{}}}^({})"),
    "munderover": (3, "{}"),
    "mfrac": (2, "(({})/({}))"),
    "msqrt": (1, "sqrt({})"),
    "mfenced": (1, "({})"),
}
"""How many parts an element has, and how they are typed; all others stand side by side."""


def without_mathml(source: Source) -> Source:
    """The source with MathML as one types it; text without any stays as it is."""
    if "<m" not in source.text:
        return source
    source = source.rewritten(_NOTES, "").rewritten(_LEAF, _leaf)
    for _ in range(MOST_LAYERS):
        before = source.text
        source = source.rewritten(_ELEMENT, _element)
        if source.text == before:
            break
    return source.rewritten(re.compile(f"[{_OPEN}{_SHUT}]"), "")


def _leaf(found: re.Match[str]) -> str:
    text = found["text"] or " "
    spaced = text in "+-=" if found["tag"] == "mo" else len(text) > 2 and found["tag"] == "mi"
    return f"{_OPEN}{f' {text} ' if spaced else text}{_SHUT}"


def _element(found: re.Match[str]) -> str:
    parts = _PARTS.findall(found["parts"])
    size, form = _FORMS.get(found["tag"], (0, ""))
    if size == 1:
        made = form.format("".join(parts))
    elif size and len(parts) == size:
        degrees = found["tag"] == "msup" and parts[1].strip() in ("°", "∘")
        made = f"{parts[0]}°" if degrees else form.format(*(part.strip() for part in parts))
    else:
        made = "".join(parts)
    return f"{_OPEN}{made}{_SHUT}"
