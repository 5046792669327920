"""Which marks only set statements of a line apart: "... = 0 :: 600 - 0.8 GJ = 0 >> GJ = -125", "BE 12.7 kN - C"?"""

from __future__ import annotations

import re
from dataclasses import replace

from tutor.notation.elements.source import Source
from tutor.notation.elements.units import FORCES_AND_SIGNS
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import LETTERS, POINTS
from tutor.notation.sentences.aside_words import complete

_MARK = re.compile(r"(?<=[^ ]) +(?P<mark>::|//|>>+|»|[~-] ?>|_{2,}|\|\||[•·∙⋅]|:)(?= +[^ ])")
_STOP = re.compile(
    rf"(?<=[{LETTERS}0-9)\]])\.(?= +(?:(?:So|Hence|Thus) +)?(?:[A-Z][\w{{}}-]*|It|This|That) +(?:is|must be)\b)"
)
"""The full stop behind a value, before a sentence that says what it is: F_BD = -559 N. BD is in compression."""
_NAME = rf"[{LETTERS}][\w{{}}-]*"
_AGAIN = re.compile(rf"= *[^=;:]*?(?<![\w}}])(?P<name>{_NAME})(?P<gap> +)(?=(?P=name) *=)")
"""A blank between a name and the value of its force: ... = 12 G_y   G_y = 20."""
_EQUATION = re.compile(r"[^;:=]*=")
_HEADS = re.compile(r"(?:Σ|[Ss]um\b)[^=]*= *[0Oo] *$")
"""The sum that a colon sets apart from its terms."""
_SIDE = re.compile(r" *[0-9.]+ *(?:,(?![0-9])|[;=]|$|\b(?:so|hence|thus|and)\b)")
"""The last number of a ratio: F_AB : A_y = 13 : 5, so ..."""
_CONCLUDES = frozenset((">", "»"))
_DASHED = re.compile(
    rf"^ *(?P<name>{_NAME})(?P<sign> *[:=]? *| - )(?P<value>-?[0-9][0-9.,]*(?: ?(?:{FORCES_AND_SIGNS}))?)(?: -|,? /) (?P<way>[TtCc]\b|tension\b|compression\b|comp\b|tens\b)(?= *(?:$|[(\[,;.]))"
)


def set_apart(source: Source, typed: str, names: Names) -> Source:
    """The source with ; or ∴ for the marks between its statements; `typed` is it before look-alikes were replaced."""
    source = source.rewritten(_DASHED, lambda found: _with_way(found, names))
    if "=" not in source.text:
        return source
    chars = list(source.text)
    for stop in _STOP.finditer(source.text):
        if complete(source.text[: stop.start()]):
            chars[stop.start()] = ";"
    for again in _AGAIN.finditer(source.text):
        if names.meanings(again["name"]):
            chars[again.start("gap")] = ";"
    for found in _MARK.finditer(typed):
        before, behind = source.text[: found.start()], source.text[found.end() :]
        if "=" not in before or _EQUATION.match(behind) is None or not complete(before):
            continue
        ratio = before[-1].isdigit() and _SIDE.match(behind) is not None
        if found["mark"] == ":" and (ratio or _HEADS.search(before)):
            continue
        if found["mark"] in POINTS and re.search(r"= *0 *$", before) is None:
            continue
        chars[found.start("mark") : found.end("mark")] = _sign(found["mark"])
    return replace(source, text="".join(chars))


def _sign(mark: str) -> str:
    """A sign of the same width."""
    return ("∴" if mark[-1] in _CONCLUDES else ";").ljust(len(mark))


def _with_way(found: re.Match[str], names: Names) -> str | None:
    """A force, its number and its T or C without the dashes between them."""
    if not names.meanings(found["name"]):
        return None
    return f"{found['name']} = {found['value']} {found['way']}"
