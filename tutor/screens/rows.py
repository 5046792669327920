"""How is a problem told on the list: its row, and what stands beside it?"""

from __future__ import annotations

from collections.abc import Mapping

from rich.cells import cell_len
from textual.content import Content

from tutor.screens.clean import one_line
from tutor.screens.shelf import Entry
from tutor.text import visible

NOT_BEGUN = "not begun"
LATER = "for later"
FIRST = "Best after {titles}; it can be opened at any time."


def row_of(entry: Entry, wide: int, left: Mapping[str, str]) -> Content:
    """A row of the list: title, level and where it was left; or how many defects a file has."""
    if entry.problem is None:
        count = len(entry.defects)
        what = "1 thing to mend" if count == 1 else f"{count} things to mend"
        return Content.assemble(
            "  ", ("broken", "bold underline"), f"  {one_line(entry.title)}: {what}"
        )
    problem = entry.problem
    level = f"level {problem.level}" if problem.level else "no level"
    waits = entry.waits_for(left)
    where = left.get(entry.key, LATER if waits else NOT_BEGUN)
    title = one_line(problem.title) + (" (see remark)" if entry.defects else "")
    gap = " " * max(2, wide - cell_len(title) + 2)
    return Content.assemble(
        f"  {title}{gap}",
        f"{level}  ",
        (one_line(where), "bold" if entry.key in left else ""),
    )


def about(entry: Entry) -> Content:
    """What there is to say of a row: the story, or every defect with its line and cure."""
    defects = "\n".join(
        f"line {d.line}: {visible(d.message)}; {visible(d.cure)}." for d in entry.defects
    )
    if entry.problem is None:
        where = "" if entry.path is None else one_line(str(entry.path))
        return Content.assemble((f"{where} cannot be used yet\n\n", "bold"), defects)
    problem = entry.problem
    counts = f"{len(problem.members)} members, {len(problem.joints)} joints"
    topics = one_line(", ".join(problem.topics))
    parts = [
        Content.styled(one_line(problem.title), "bold"),
        Content(visible(problem.story).strip()),
    ]
    parts.append(Content(f"{counts}. Topics: {topics}." if topics else f"{counts}."))
    if entry.before:
        titles = ", ".join(one_line(title) for _, title in entry.before)
        parts.append(Content(FIRST.format(titles=titles)))
    if defects:
        parts.append(Content(defects))
    if entry.note:
        parts.append(Content(entry.note))
    return Content("\n\n").join(part for part in parts if part.plain)
