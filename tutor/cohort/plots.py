"""What do the plots of the page on a class look like? Plain SVG, readable without colour.

Bars carry their numbers, states differ by hatching, and what can be followed is a link, so that it is
reached by keyboard. Every plot says in words what it shows.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from html import escape
from statistics import median

from tutor.cohort.facts import STATES, HowFar

WIDTH = 720
LABEL = 300
ROW = 26
BAR = 16
END = 60
TICKS = 5
SPAN = WIDTH - LABEL - END

HATCHES = (
    '<defs><pattern id="begun" width="6" height="6" patternUnits="userSpaceOnUse" '
    'patternTransform="rotate(45)"><rect width="6" height="6" fill="#fff"/>'
    '<line x1="0" y1="0" x2="0" y2="6" stroke="#1d4f72" stroke-width="3"/></pattern>'
    '<pattern id="watched" width="6" height="6" patternUnits="userSpaceOnUse">'
    '<rect width="6" height="6" fill="#fff"/><circle cx="3" cy="3" r="1.6" fill="#1d4f72"/></pattern>'
    "</defs>"
)
FILLS: dict[HowFar, str] = {
    "finished": "#1d4f72",
    "watched": "url(#watched)",
    "begun": "url(#begun)",
    "not begun": "#fff",
}
PATTERNED = ("watched", "begun")


@dataclass(frozen=True)
class PlottedBar:
    """One bar: its label, its number, what is told of it in full, and where it leads."""

    label: str
    value: float
    told: str
    link: str = ""
    beside: str = ""


def bars(rows: Sequence[PlottedBar], most: float, title: str) -> str:
    """Horizontal bars from 0 to `most`, each with its label and what stands beside it."""
    parts = [_head(title, ROW * len(rows))]
    for at, row in enumerate(rows):
        y = at * ROW
        length = SPAN * row.value / most if most else 0.0
        drawn = (
            f"<title>{escape(row.told)}</title>"
            f'<text x="{LABEL - 8}" y="{y + 17}" text-anchor="end">{escape(_cut(row.label))}</text>'
            f'<rect x="{LABEL}" y="{y + 5}" width="{length:.1f}" height="{BAR}" fill="#1d4f72"/>'
            f'<text x="{LABEL + length + 6:.1f}" y="{y + 17}">{escape(row.beside)}</text>'
        )
        parts.append(_followed(drawn, row))
    return "\n".join([*parts, "</svg>"])


def _followed(drawn: str, row: PlottedBar) -> str:
    if not row.link:
        return f"<g>{drawn}</g>"
    told = escape(row.told, quote=True)
    return f'<a href="#{escape(row.link, quote=True)}" aria-label="{told}">{drawn}</a>'


@dataclass(frozen=True)
class ShareOfClass:
    """How many of a class are at one problem in each of `STATES`."""

    label: str
    counts: tuple[int, ...]

    @property
    def told(self) -> str:
        each = (f"{state} by {n}" for state, n in zip(STATES, self.counts, strict=True))
        return f"{self.label}: {', '.join(each)}"


def shares(rows: Sequence[ShareOfClass], title: str) -> str:
    """One bar a problem, parted by `STATES`: full, dotted, hatched and empty."""
    parts = [_head(title, ROW * len(rows) + 4), HATCHES]
    for at, row in enumerate(rows):
        y = at * ROW
        of = sum(row.counts)
        parts.append(f"<g><title>{escape(row.told)}</title>")
        parts.append(
            f'<text x="{LABEL - 8}" y="{y + 17}" text-anchor="end">{escape(_cut(row.label))}</text>'
        )
        x = float(LABEL)
        for state, count in zip(STATES, row.counts, strict=True):
            long = SPAN * count / of if of else 0.0
            if count:
                ink = "#fff" if state == "finished" else "#000"
                parts.append(
                    f'<rect x="{x:.1f}" y="{y + 4}" width="{long:.1f}" height="18" fill="{FILLS[state]}" '
                    'stroke="#1d4f72"/>'
                )
                parts.append(_number(x + long / 2, y + 17, count, ink, state in PATTERNED))
            x += long
        parts.append("</g>")
    return "\n".join([*parts, "</svg>"])


def _number(x: float, y: float, count: int, ink: str, boxed: bool) -> str:
    text = f'<text x="{x:.1f}" y="{y:.1f}" text-anchor="middle" fill="{ink}">{count}</text>'
    if not boxed:
        return text
    wide = 8 * len(str(count)) + 4
    return f'<rect x="{x - wide / 2:.1f}" y="{y - 12:.1f}" width="{wide}" height="15" fill="#fff"/>{text}'


@dataclass(frozen=True)
class Strip:
    """The minutes that each student took over one problem."""

    label: str
    values: tuple[float, ...]


def strips(rows: Sequence[Strip], unit: str, title: str) -> str:
    """One dot for each value, one row for each label, a tall mark at the median, an axis below."""
    most = max((value for row in rows for value in row.values), default=0.0)
    reach = TICKS * max(1, math.ceil(most / TICKS))
    height = ROW * len(rows) + 34
    parts = [_head(title, height)]
    for at, row in enumerate(rows):
        y = at * ROW + 13
        parts.append(f"<g><title>{escape(strip_in_words(row, unit))}</title>")
        parts.append(
            f'<text x="{LABEL - 8}" y="{y + 4}" text-anchor="end">{escape(_cut(row.label))}</text>'
        )
        parts.append(f'<line x1="{LABEL}" y1="{y}" x2="{LABEL + SPAN}" y2="{y}" stroke="#bbb"/>')
        parts += [
            f'<circle cx="{LABEL + SPAN * v / reach:.1f}" cy="{y}" r="4" fill="#1d4f72" '
            'fill-opacity=".45"/>'
            for v in row.values
        ]
        if row.values:
            x = LABEL + SPAN * median(row.values) / reach
            parts.append(
                f'<line x1="{x:.1f}" y1="{y - 10}" x2="{x:.1f}" y2="{y + 10}" stroke="#000" '
                'stroke-width="2.5"/>'
            )
        parts.append("</g>")
    foot = ROW * len(rows) + 18
    for tick in range(TICKS + 1):
        x, value = LABEL + SPAN * tick / TICKS, reach * tick / TICKS
        end = f" {unit}" if tick == TICKS else ""
        parts.append(f'<text x="{x:.1f}" y="{foot}" text-anchor="middle">{value:.0f}{end}</text>')
    return "\n".join([*parts, "</svg>"])


def strip_in_words(row: Strip, unit: str) -> str:
    """ "Lamp arm: 12 students, from 4 to 31, half of them in at most 9 min"."""
    if not row.values:
        return f"{row.label}: nobody"
    low, high = min(row.values), max(row.values)
    return (
        f"{row.label}: {len(row.values)} students, from {low:.0f} to {high:.0f}, "
        f"half of them in at most {median(row.values):.0f} {unit}"
    )


def _head(title: str, height: int) -> str:
    told = escape(title, quote=True)
    return (
        f'<svg viewBox="0 0 {WIDTH} {height}" role="group" aria-label="{told}" '
        'xmlns="http://www.w3.org/2000/svg">'
    )


def _cut(label: str, most: int = 41) -> str:
    return label if len(label) <= most else f"{label[: most - 1]}…"
