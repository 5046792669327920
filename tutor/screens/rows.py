"""How is a problem told on the list: its row, and what stands beside it?"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from rich.cells import cell_len
from textual.content import Content

from tutor.progress.where import DONE
from tutor.screens.clean import one_line
from tutor.screens.entry import Group, ProblemRow
from tutor.text import so_many, visible

NOT_BEGUN = "not begun"
LATER = "for later"
FIRST = "Best after {titles}; it can be opened at any time."
CHANGED = "changed, being read…"
LONGEST = 44


Row = tuple[Content, ProblemRow | None]


def rows_of(groups: Sequence[Group], left: Mapping[str, str]) -> list[Row]:
    """What the rows say, and of which entry; headings are of none."""
    titles = [one_line(e.title) for group in groups for e in group.entries if not e.broken]
    wide = min(LONGEST, max(map(cell_len, titles), default=0))
    rows: list[Row] = []
    for group in groups:
        rows.append((Content.styled(one_line(group.title), "bold"), None))
        rows += [(row_of(entry, wide, left), entry) for entry in group.entries]
        if group.unread:
            rows.append((Content(f"  {group.unread} more files are being read…"), None))
    return rows


def counted(title: str, entries: Sequence[ProblemRow | None], left: Mapping[str, str]) -> str:
    """The title with how many problems are finished, where one is."""
    usable = [entry for entry in entries if entry is not None and not entry.broken]
    done = sum(left.get(entry.key) == DONE for entry in usable)
    return f"{title}  ({done} of {len(usable)} finished)" if done else title


def row_of(entry: ProblemRow, wide: int, left: Mapping[str, str]) -> Content:
    """A row of the list: title, level and where it was left; or how many defects a file has."""
    if entry.broken:
        what = "1 thing to mend" if entry.faults == 1 else f"{entry.faults} things to mend"
        return Content.assemble(
            "  ", ("broken", "bold underline"), f"  {one_line(entry.title)}: {what}"
        )
    title = one_line(entry.title) + (" (see remark)" if entry.faults else "")
    gap = " " * max(2, wide - cell_len(title) + 2)
    if entry.remembered is not None and entry.remembered.changed:
        return Content(f"  {title}{gap}{CHANGED}")
    level = f"level {entry.level}" if entry.level else "no level"
    waits = entry.waits_for(left)
    where = left.get(entry.key, LATER if waits else NOT_BEGUN)
    return Content.assemble(
        f"  {title}{gap}",
        f"{level}  ",
        (one_line(where), "bold" if entry.key in left else ""),
    )


def about(entry: ProblemRow) -> Content:
    """What there is to say of a row: the story, or every defect with its line and cure."""
    head, below = title_above(entry), told_below(entry)
    if entry.broken:
        return Content.assemble((f"{head}\n\n", "bold"), below)
    return Content("\n\n").join(
        p for p in (Content.styled(head, "bold"), Content(below)) if p.plain
    )


def title_above(entry: ProblemRow) -> str:
    """The title; of a broken file, where it is."""
    if not entry.broken:
        return one_line(entry.title)
    where = "" if entry.path is None else one_line(str(entry.path))
    return f"{where} cannot be used yet"


def told_below(entry: ProblemRow) -> str:
    """What stands below the title, in paragraphs."""
    if entry.remembered is not None:
        return CHANGED if entry.remembered.changed else visible(entry.remembered.told)
    defects = "\n".join(
        f"line {d.line}: {visible(d.message)}; {visible(d.cure)}." for d in entry.defects
    )
    problem = entry.problem
    if problem is None:
        return defects
    counts = f"{so_many(len(problem.members), 'member')}, {so_many(len(problem.joints), 'joint')}"
    topics = one_line(", ".join(problem.topics))
    parts = [visible(problem.story).strip()]
    parts.append(f"{counts}. Topics: {topics}." if topics else f"{counts}.")
    if entry.before:
        titles = ", ".join(one_line(title) for _, title in entry.before)
        parts.append(FIRST.format(titles=titles))
    return "\n\n".join(part for part in (*parts, defects, entry.note) if part)
