"""Which equation does the student say the line is? The part before a colon: ΣF_x: or ΣM_A:"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Literal

from tutor.notation.names import Names
from tutor.notation.tree import Span
from tutor.notation.unreadable import Broken

LabelKind = Literal["x", "y", "moment", "along"]

_ARROWS = r"(?:\(\+\)|[+ ←→↑↓↺↻⟲⟳])*"
_SUM = r"(?:Σ|sums?(?: of)?\b)"
_JOINT = r"[^\W_][^\W_']*"
_AT = r"(?:at joint|at|joint) +"
_FORCES = rf"(?:{_SUM} *)?(?:forces? *(?:in|along)?|F) *_? *[{{(]? *"
_ALTERNATIVES = (
    rf"{_FORCES}(?P<axis>[xy])\b(?: *[}})])?",
    rf"(?:{_FORCES}(?:along *)?|along *)(?P<angle>-?[0-9]+(?:[.,][0-9]+)?)(?: *°| *deg)?(?: *[}})])?",
    rf"(?:{_SUM} *)?(?:moments?\b|M) *(?:about\b|at\b|_)? *[{{(]? *(?P<point>{_JOINT})(?: *[}})])?",
    rf"{_SUM} *(?P<bare>[FM]?)(?![\w{{])",
)
_HEAD = re.compile(
    rf"{_ARROWS}(?:{_AT}(?P<before>{_JOINT}) *[,:;]? *)?"
    rf"(?:{'|'.join(_ALTERNATIVES)})(?: +{_AT}(?P<after>{_JOINT}))?",
    re.IGNORECASE,
)
_ZERO = re.compile(r" *(= *0(?:[.,]0*)?)? *$")
_STARTS_WITH_SUM = re.compile(rf"{_ARROWS}{_SUM}", re.IGNORECASE)


@dataclass(frozen=True)
class Label:
    """The equation a line is said to be.

    `kind` is "x", "y", "along" (then `degrees` from +x) or "moment"; `point` is the joint named,
    if any: the point of a moment, or the joint whose forces are added. `span` is its text.
    """

    kind: LabelKind
    point: str | None
    degrees: float | None
    span: Span


def split_label(text: str, names: Names) -> tuple[Label | None, int]:
    """The label at the head of plain `text`, and the column where the equation starts.

    It ends at the last colon, or, where it says that the sum is zero, at a semicolon; or it stands
    in square brackets of its own.
    """
    if (set_off := _set_off(text)) is not None:
        within, end = set_off
        label, _ = split_label(within, names)
        return label, end
    colon = text.rfind(":")
    if colon < 0:
        _check_unmarked(text)
        return None, 0
    start = len(text) - len(text.lstrip())
    found = _HEAD.match(text[:colon])
    if found is None or found["bare"] is not None or not _ZERO.match(text[:colon], found.end()):
        raise Broken("label", start, max(start + 1, colon))
    span = Span(start, colon)
    where = _joint(found, "before", names) or _joint(found, "after", names)
    if found["axis"]:
        kind: LabelKind = "x" if found["axis"] in "xX" else "y"
        return Label(kind, where, None, span), colon + 1
    if found["angle"]:
        degrees = float(found["angle"].replace(",", "."))
        return Label("along", where, degrees, span), colon + 1
    return Label("moment", _joint(found, "point", names), None, span), colon + 1


_BRACKETED = re.compile(r"(\s*)\[([^\[\]:=]*(?:= *0)?)\]")
_SEMICOLON = re.compile(r"([^;:=]*= *0) *;")


def _set_off(text: str) -> tuple[str, int] | None:
    """A label in brackets or before a semicolon, as if it had a colon, and where it ends."""
    found = _BRACKETED.match(text)
    if found is not None and _STARTS_WITH_SUM.match(found[2]):
        return f"{found[1]} {found[2]}:", found.end()
    found = _SEMICOLON.match(text)
    if found is not None and _STARTS_WITH_SUM.match(found[1]):
        return f"{found[1]}:", found.end()
    return None


def _joint(found: re.Match[str], group: str, names: Names) -> str | None:
    if found[group] is None:
        return None
    joint = names.joint(found[group])
    if joint is None:
        joints = ", ".join(names.joints[:12]) + (" and so on" if len(names.joints) > 12 else "")
        raise Broken("label/joint", found.start(group), found.end(group), joints=joints)
    return joint


def _check_unmarked(text: str) -> None:
    """Raises Broken for ΣF_x without a colon: it would be read as part of the formula."""
    if not _STARTS_WITH_SUM.match(text):
        return
    found = _HEAD.match(text)
    end = found.end() if found else len(text)
    label = text[:end].strip()
    start = len(text) - len(text.lstrip())
    second = text.find("=", text.find("=") + 1)
    if text.count("=") > 1 and not text[end : text.find("=")].strip():
        raise Broken("two-equals/label", second, second + 1, label=label)
    raise Broken("label/missing-colon", start, start + len(label), label=label)
