"""Which equation does the student say the line is? The part before a colon: ΣF_x: or ΣM_A:"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Literal

from tutor.notation.names import Names
from tutor.notation.tree import Span
from tutor.notation.unreadable import Broken

LabelKind = Literal["x", "y", "moment", "along"]

_TURNS = "↺↻"
_WAY = (
    r"(?:[←→↑↓↺↻^]|<[-=]++>?|[-=]++>"
    r"|\b(?:up|down|left|right)(?:wards?)?\b|\ba?c?cw\b|\b(?:counter|anti)?-?clockwise\b|\bpositive\b)"
)
_MARK = rf"(?:\((?: *+(?:\+|{_WAY}))++ *+\)|\+ *+\)|\+|{_WAY})"
_MARKS = re.compile(_MARK, re.IGNORECASE)
_SUM = r"(?:Σ|sigma\b|sums?(?: of)?\b)"
_JOINT = r"[^\W_][^\W_']*"
_AT = r"(?:at joint|at|joint) ++"
_IN = r"(?: *+(?:in|along)\b)?(?: *+the\b)?"
_FORCES = rf"(?:{_SUM} *+)?(?:forces?|F){_IN} *+(?:_ *+)?(?:[{{(] *+)?"
_AXIS = r"(?:[xyhv]|horizontal|vertical)"
_CLOSED = r"(?: *+[})])?"
_ALTERNATIVES = (
    rf"{_FORCES}(?P<axis>{_AXIS})\b(?:[- ]*+direction)?{_CLOSED}",
    rf"(?:{_FORCES}(?:along *+)?|along *+)(?P<angle>-?[0-9]+(?:[.,][0-9]+)?)(?: *+(?:°|deg))?{_CLOSED}",
    rf"(?:{_SUM} *+)?(?:moments?\b|M) *+(?:(?:about\b|at\b|@|_) *+)?(?:[{{(] *+)?(?P<point>{_JOINT}){_CLOSED}",
    rf"{_SUM} *+(?P<bare>[FM]?)(?![\w{{])",
    r"(?P<alone>[xy]\b)",
)
_HEAD = re.compile(
    rf" *+(?:(?:{_AT}(?P<before>{_JOINT}) *+[,:;]?|(?P<first>{_JOINT}) *+[,:;]) *+)?"
    rf"(?:{'|'.join(_ALTERNATIVES)})(?: ++{_AT}(?P<after>{_JOINT}))?",
    re.IGNORECASE,
)
_ONLY_JOINT = re.compile(rf" *+(?:{_AT})?(?P<joint>{_JOINT})? *+")
_ZERO = re.compile(r" *+(?:= *+0(?:[.,]0*+)?)? *+$")
_STARTS_WITH_SUM = re.compile(rf"(?: |{_MARK})*+{_SUM}", re.IGNORECASE)


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

    It ends at the last colon, or, where it says that the sum is zero, at a semicolon, a comma or an
    arrow; or it stands in square brackets of its own. Marks of the positive sense, such as "+→" or
    "(ccw +)", say nothing where the sum is named: it is zero either way round.
    """
    summed = _STARTS_WITH_SUM.match(text) is not None
    if not summed and ":" not in text and "[" not in text:
        return None, 0
    if (set_off := _set_off(text)) is not None:
        within, end = set_off
        label, _ = split_label(within, names)
        return label, end
    colon = text.rfind(":")
    if colon < 0:
        if summed:
            raise _without_colon(text)
        return None, 0
    start = len(text) - len(text.lstrip())
    span = Span(start, colon)
    head = _unmarked(text[:colon])
    label = _named(head, text[:colon], span, names) or _pointed(head, text[:colon], span, names)
    if label is None:
        raise Broken("label", start, max(start + 1, colon))
    return label, colon + 1


def _unmarked(head: str) -> str:
    """`head` with spaces for the marks of the positive sense: "+→", "(+ up)", "↺+", "+ccw"."""
    return _MARKS.sub(lambda found: " " * len(found[0]), head)


def _named(head: str, typed: str, span: Span, names: Names) -> Label | None:
    """The label that says by name which sum it is, or with the sum sign alone and an arrow."""
    found = _HEAD.match(head)
    if found is None or not _ZERO.match(head, found.end()):
        return None
    where = next(
        filter(None, (_joint(found, g, names) for g in ("before", "first", "after"))), None
    )
    axis = found["axis"] or found["alone"]
    if found["alone"] and names.joint(found["alone"]) is not None:
        return None
    if axis:
        return Label("x" if axis[0] in "xXhH" else "y", where, None, span)
    if found["angle"]:
        return Label("along", where, float(found["angle"].replace(",", ".")), span)
    if found["point"]:
        return Label("moment", _joint(found, "point", names), None, span)
    arrow = _arrow(typed)
    return Label(arrow, where, None, span) if arrow and found["bare"] not in ("M", "m") else None


def _pointed(head: str, typed: str, span: Span, names: Names) -> Label | None:
    """The label that is an arrow alone, "→" or "↑", or a turning arrow and a joint, "↺ A"."""
    found = _ONLY_JOINT.fullmatch(head)
    if found is None:
        return None
    if any(turn in typed for turn in _TURNS):
        point = _joint(found, "joint", names)
        return Label("moment", point, None, span) if point else None
    arrow = _arrow(typed)
    return Label(arrow, _joint(found, "joint", names), None, span) if arrow else None


def _arrow(typed: str) -> Literal["x", "y"] | None:
    """The axis that the arrows in a label point along, if they agree."""
    level = re.search(r"[←→]|[-=]>|<[-=]", typed) is not None
    upright = re.search(r"[↑↓^]", typed) is not None
    if level == upright:
        return None
    return "x" if level else "y"


_BRACKETED = re.compile(r"(\s*)\[([^\[\]:=]*(?:= *0)?)\](?: *:)?")
_SET_APART = re.compile(r"((?:[^;:=,<]|<=*+|=+>)*+= *0) *(?:;|,(?![0-9])|(?:[-=]+>|→)(?!.*:))")


def _set_off(text: str) -> tuple[str, int] | None:
    """A label in brackets or before a semicolon, comma or arrow, as if it had a colon, and where it ends."""
    found = _BRACKETED.match(text)
    if found is not None and _STARTS_WITH_SUM.match(found[2]):
        return f"{found[1]} {found[2]}:", found.end()
    found = _SET_APART.match(text)
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


def _without_colon(text: str) -> Broken:
    """The complaint about ΣF_x without a colon: it would be read as part of the formula."""
    found = _HEAD.match(_unmarked(text))
    end = found.end() if found else len(text)
    label = text[:end].strip()
    start = len(text) - len(text.lstrip())
    second = text.find("=", text.find("=") + 1)
    if text.count("=") > 1 and not text[end : text.find("=")].strip():
        return Broken("two-equals/label", second, second + 1, label=label)
    return Broken("label/missing-colon", start, start + len(label), label=label)
