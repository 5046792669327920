"""Along which line does a heading add forces, where it says so in words: at right angles to the rafter?

Which line of members that is, a truss has to say; here stand the words.
"""

from __future__ import annotations

import re
from dataclasses import replace

from tutor.notation.elements.label import Label
from tutor.notation.elements.lexicon import folded
from tutor.notation.elements.source import Source
from tutor.notation.lines.line import Line

LINES = frozenset(
    [
        "rafter",
        "chord",
        "diagonal",
        "brace",
        "slope",
        "incline",
        "member",
        "bar",
        "rod",
        "web",
        "post",
        "strut",
        "tie",
        "link",
    ]
)
"""What the line of a member may be called by."""
_LINE = rf"(?:{'|'.join(sorted(LINES))})"
_RIGHT_ANGLES = re.compile(
    r"\b(?:at +(?:a +)?right[ -]+angles?|at +90 ?(?:°|deg(?:rees)?)?|orthogonal(?:ly)?|normally|squarely|transverse(?:ly)?)"
    r" +(?:to|with)\b",
    re.IGNORECASE,
)
_ITS_NORMAL = re.compile(rf"\b(?:along +)?(?P<line>(?:the +)?{_LINE})'s +normal\b", re.IGNORECASE)
_ALONG = re.compile(
    rf"\b(?:in +(?:the +)?(?:direction|line) +of|parallel +with|(?<=resolving )(?:up|down)(?= +(?:the +)?{_LINE}\b)|"
    rf"(?<=resolve )(?:up|down)(?= +(?:the +)?{_LINE}\b))(?= )",
    re.IGNORECASE,
)
_SAID = re.compile(rf"\b{_LINE}\b", re.IGNORECASE)
_ACROSS = re.compile(
    r"perpendicular|right[ -]+angle|normal|square|orthogonal|transverse|⊥|⟂|\bacross\b|\bperp\b|\b90\b",
    re.IGNORECASE,
)


def directed(source: Source) -> Source:
    """The source with a direction in many words as "perpendicular to" and "along"."""
    source = source.rewritten(_RIGHT_ANGLES, "perpendicular to")
    source = source.rewritten(_ITS_NORMAL, lambda found: f"perpendicular to {found['line']}")
    return source.rewritten(_ALONG, "along")


def with_line_said(line: Line) -> Line:
    """The line with the words in its headings for the line of members that forces are added along."""
    label = None if line.label is None else line_said(line.label, line.text)
    if all(step.label is None for step in line.steps):
        return line if label is line.label else replace(line, label=label)
    steps = tuple(
        step if step.label is None else replace(step, label=line_said(step.label, line.text))
        for step in line.steps
    )
    return replace(line, label=label, steps=steps)


def line_said(label: Label, text: str) -> Label:
    """A heading with what it calls the line that it adds forces along; as it is where it names that line.

    Across, and across nothing, is across the sheet: horizontal.
    """
    if label.kind != "along" or (label.degrees, label.between) != (None, None):
        return label
    words = _SAID.findall(text, 0, label.span.end)
    across = _ACROSS.search(text, 0, label.span.end)
    if across is not None and not words and across[0].lower() == "across":
        return replace(label, kind="x")
    line = folded(words[-1]) if words else ""
    return replace(label, line=line, across=across is not None)
