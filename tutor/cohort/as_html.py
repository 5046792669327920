"""How does the report on a class look as one HTML page that needs nothing beside it?

No script, font or picture is fetched, and none is run. What can be opened is a `details`, what can be
followed a link, so that all of it is reached by keyboard; printed, everything is open.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from html import escape

from tutor.cohort.as_text import (
    called_in_full,
    checked_in_words,
    counted,
    middle,
    shown_in_words,
    works_on,
)
from tutor.cohort.facts import STATES, ClassReport, KindOverSet, Mistaken, Student
from tutor.cohort.plots import PlottedBar, ShareOfClass, Strip, bars, shares, strips
from tutor.cohort.skilled import skilled
from tutor.model.caution import CAUTION
from tutor.skills import MASTERED
from tutor.skills.mastery import IN_PLAIN_WORDS
from tutor.skills.places import place_in_words
from tutor.text import so_many, so_often

MOST_BARS = 15
MOST_TYPED = 12
SAFE = "default-src 'none'; style-src 'unsafe-inline'"
STYLE = """\
@page { size: A4; margin: 16mm; }
body { font: 16px/1.45 system-ui, 'Segoe UI', 'Liberation Sans', sans-serif; color: #111;
  background: #fff; max-width: 50rem; margin: 1.5rem auto; padding: 0 1rem; }
h1 { font-size: 1.5rem; margin: 0; }
h2 { font-size: 1.15rem; margin: 2rem 0 .4rem; break-after: avoid; }
section, figure, tr { break-inside: avoid; }
section.long { break-inside: auto; }
ol.again li { margin: .4rem 0; }
figure { margin: .5rem 0; }
svg { display: block; width: 100%; height: auto; font-size: 13px; }
svg a:focus-visible rect, svg a:hover rect { stroke: #c2410c; stroke-width: 3; }
a:focus-visible, summary:focus-visible { outline: 3px solid #c2410c; outline-offset: 2px; }
table { border-collapse: collapse; width: 100%; margin: .4rem 0; }
th, td { border-bottom: 1px solid #bbb; padding: .2rem .5rem; text-align: left; vertical-align: top; }
td.n, th.n { text-align: right; font-variant-numeric: tabular-nums; }
details { margin: .3rem 0; border-left: 3px solid #1d4f72; padding: .1rem .7rem; }
summary { cursor: pointer; }
details:target { background: #eef4f8; }
code { font-family: ui-monospace, 'Liberation Mono', monospace; font-size: .9em; overflow-wrap: anywhere; }
details table { table-layout: fixed; } details th.n { width: 4.4rem; } details th:first-child { width: 11rem; }
details summary, details tr:first-child { break-after: avoid; } .typed { columns: 9rem; }
.typed div { break-inside: avoid; }
nav a { margin-right: .9rem; }
.caution, .quiet { font-size: .88em; color: #333; }
@media print { nav { display: none; } body { font-size: 10.5pt; margin: 0; max-width: none; }
  details::details-content { content-visibility: visible; height: auto; } a { color: inherit; } }
"""


def as_html(report: ClassReport) -> str:
    """The whole text of the page."""
    parts = [
        _opening(report),
        _again(report),
        _mistakes(report),
        _problems(report),
        _stops(report),
        _skills(report),
        _students(report.students),
        _faults(report),
        _closing(report),
    ]
    body = "\n".join("\n".join(part) for part in parts)
    return (
        '<!DOCTYPE html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n'
        f'<meta http-equiv="Content-Security-Policy" content="{SAFE}">\n'
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        f"<title>{escape(report.title)}: what the class gets wrong</title>\n"
        f"<style>\n{STYLE}</style>\n</head>\n<body>\n{body}\n</body>\n</html>\n"
    )


def _opening(report: ClassReport) -> Iterator[str]:
    yield f"<h1>{escape(report.title)}</h1>"
    yield f"<p>{report.handed_in} of {len(report.students)} students handed in.</p>"
    names = {"again": "Explain again", "mistakes": "Mistakes", "problems": "Problems"}
    names |= {"skills": "Skills"} if any(s.skills for s in report.students) else {}
    names |= {"students": "Students"} | ({"files": "Files to look at"} if report.faults else {})
    links = "".join(f'<a href="#{key}">{words}</a>' for key, words in names.items())
    yield f"<nav>{links}</nav>"


def _again(report: ClassReport) -> Iterator[str]:
    yield '<section id="again"><h2>What to explain again</h2>\n<ol class="again">'
    yield from (f"<li>{escape(sentence)}</li>" for sentence in report.again)
    yield "</ol></section>"


def _mistakes(report: ClassReport) -> Iterator[str]:
    yield '<section id="mistakes" class="long"><h2>Mistakes, by how many students made them</h2>'
    if not report.kinds:
        yield "<p>None was made.</p></section>"
        return
    shown = report.kinds[:MOST_BARS]
    rows = [
        PlottedBar(
            kind.called,
            kind.students,
            f"{kind.called}: {kind.students} of {report.handed_in} students, {so_often(kind.times)}",
            f"mistake-{kind.code}",
            f"{kind.students}",
        )
        for kind in shown
    ]
    title = "Students who made each mistake; each bar leads to the lines typed"
    yield f"<figure>{bars(rows, report.handed_in, title)}</figure>"
    yield '<p class="quiet">Each bar leads to where the mistake was made and the lines typed.</p>'
    for kind in report.kinds:
        yield from _kind(report, kind)
    yield "</section>"


def _kind(report: ClassReport, kind: KindOverSet) -> Iterator[str]:
    yield f'<details id="mistake-{escape(kind.code)}" open><summary><b>{escape(kind.called)}</b>: '
    yield f"{kind.students} of {report.handed_in} students, {so_often(kind.times)}</summary>"
    yield "<table><tr><th>problem, step</th><th class=n>students</th><th class=n>times</th>"
    yield "<th>lines typed</th></tr>"
    for place in report.mistakes:
        if place.code == kind.code:
            yield _row(
                f"{escape(place.problem)}, {escape(place.step)}",
                place.students,
                place.times,
                _typed(place),
            )
    yield "</table></details>"


def _typed(place: Mistaken) -> str:
    pairs = list(zip(place.counts, place.typed, strict=True))
    if not pairs:
        return "(chosen, not typed)"
    lines = [
        f"<code>{escape(text)}</code>" + (f" × {count}" if count > 1 else "")
        for count, text in pairs[:MOST_TYPED]
    ]
    more = len(pairs) - MOST_TYPED
    lines += [f"and {so_many(more, 'other line')}"] if more > 0 else []
    return f'<div class="typed">{"".join(f"<div>{line}</div>" for line in lines)}</div>'


def _problems(report: ClassReport) -> Iterator[str]:
    yield '<section id="problems"><h2>Problems: who finished what</h2>'
    rows, minutes, table = [], [], []
    for problem in report.problems:
        works = works_on(report.students, problem)
        counts = counted(works)
        rows.append(ShareOfClass(problem.title, counts))
        minutes.append(
            Strip(problem.title, tuple(w.minutes for w in works if w.state == "finished"))
        )
        said = "; ".join(filter(None, (middle(works), shown_in_words(works))))
        table.append(_row(escape(problem.title), *counts, escape(said)))
    title = "Of each problem: finished (full), watched (dotted), begun (hatched), not begun (empty)"
    yield f"<figure>{shares(rows, title)}</figure>"
    yield '<p class="quiet">full: finished, dotted: watched, hatched: begun, empty: not begun</p>'
    heads = "".join(f"<th class=n>{state}</th>" for state in STATES)
    yield f"<table><tr><th>problem</th>{heads}<th>median of those who finished</th></tr>"
    yield "".join(table) + "</table></section>"
    yield "<section><h2>Time on task of those who finished</h2>"
    title = "Minutes that each student took, and the median"
    yield f"<figure>{strips(minutes, 'min', title)}</figure>"
    yield '<p class="quiet">A dot is a student, the tall mark the median; pauses are left out.</p>'
    yield "</section>"


def _stops(report: ClassReport) -> Iterator[str]:
    if not report.stops:
        return
    yield "<section><h2>Where students stopped</h2><table>"
    yield "<tr><th>problem</th><th>step</th><th>last in vain at</th><th class=n>students</th></tr>"
    for stop in report.stops:
        yield _row(
            escape(stop.problem),
            escape(stop.step),
            escape(place_in_words(stop.place)),
            stop.students,
        )
    yield "</table></section>"


def _skills(report: ClassReport) -> Iterator[str]:
    found = skilled(report.students)
    if not found:
        return
    yield '<section id="skills" class="long"><h2>Skills, those mastered by fewest first</h2>'
    rows = [
        PlottedBar(
            each.called,
            each.mastered / each.students,
            f"{each.called}: mastered by {each.mastered} of {each.students}",
            beside=f"{each.mastered} of {each.students}",
        )
        for each in found
    ]
    title = f"Share of students by whom each skill is mastered ({MASTERED:.0%} likely learnt)"
    yield f'<p class="quiet">{escape(IN_PLAIN_WORDS)}</p>'
    yield f"<figure>{bars(rows, 1.0, title)}</figure></section>"


def _students(students: Sequence[Student]) -> Iterator[str]:
    if not students:
        return
    yield '<section id="students" class="long"><h2>Students</h2><table>'
    heads = ("finished", "lines", "hints", "slips", "lines given", "minutes")
    cells = "".join(f"<th class=n>{head}</th>" for head in heads)
    yield f"<tr><th>student</th>{cells}</tr>"
    for student in students:
        works = student.problems
        sums = [sum(getattr(w, key) for w in works) for key in ("lines", "hints", "slips", "told")]
        minutes = f"{sum(work.minutes for work in works):.0f}"
        name = escape(called_in_full(student))
        name += "" if student.handed_in else " (nothing handed in)"
        done = f"<td class=n>{student.finished} of {len(works)}</td>"
        numbers = "".join(f"<td class=n>{each}</td>" for each in (*sums, minutes))
        yield f"<tr><td>{name}</td>{done}{numbers}</tr>"
    yield "</table></section>"


def _faults(report: ClassReport) -> Iterator[str]:
    if not report.faults:
        return
    yield '<section id="files" class="long"><h2>Files to look at</h2><ul>'
    for fault in report.faults:
        yield f"<li><code>{escape(fault.file)}</code>: {escape(fault.message)}</li>"
    yield "</ul></section>"


def _closing(report: ClassReport) -> Iterable[str]:
    yield f'<p class="quiet">{escape(checked_in_words(report.checked))}</p>'
    yield f'<p class="caution">{escape(CAUTION)}</p>'


def _row(*cells: str | int) -> str:
    """A row of a table; numbers to the right."""
    return (
        "<tr>"
        + "".join(
            f"<td class=n>{cell}</td>" if isinstance(cell, int) else f"<td>{cell}</td>"
            for cell in cells
        )
        + "</tr>"
    )
