"""What is there on the sheet, and what is still to mend? The list beside the drawing."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from textual.content import Content

from tutor.drafting import PartRow, Soundness, rows
from tutor.model import Problem
from tutor.screens.clean import one_line
from tutor.statics.words import unit_in_words
from tutor.text import visible

HEADINGS: Mapping[str, str] = {
    "joint": "Joints",
    "member": "Members",
    "support": "Supports",
    "load": "Loads",
    "spread": "On members",
}


def inventory(problem: Problem, stands: Soundness, chosen: str | None, ascii_only: bool) -> Content:
    """What is wrong, each with its cure; then all that is there, marked where something is wrong."""
    held = bool(problem.members and problem.supports)
    parts = [faults(stands, ascii_only), counts(stands, ascii_only, held)]
    at = {name for fault in stands.faults for name in fault.at}
    found = rows(problem)
    for kind, heading in HEADINGS.items():
        of_kind = [row for row in found if row.kind == kind]
        if of_kind:
            parts.append(_section(heading, of_kind, at, chosen))
    units = f"Forces in {unit_in_words(problem.force)}, lengths in {unit_in_words(problem.length)}."
    parts.append(Content.styled(one_line(units), "$quiet"))
    return Content("\n\n").join(part for part in parts if part.plain)


def faults(stands: Soundness, ascii_only: bool) -> Content:
    """What is missing or wrong, the harmless last."""
    lines = []
    for fault in sorted(stands.faults, key=lambda fault: fault.warning):
        sign = "-" if fault.warning else ("x" if ascii_only else "✗")
        word = "look" if fault.warning else "mend"
        lines.append(
            Content.assemble((f"{sign} {word} ", "bold"), visible(f"{fault.message} {fault.cure}"))
        )
    return Content("\n").join(lines)


def counts(stands: Soundness, ascii_only: bool, held: bool) -> Content:
    """m + r against 2j, whether it is stable, and if not, how it moves, once anything holds it."""
    if stands.counted is None:
        return Content("")
    count = f"Count: {stands.counted.said}"
    if stands.stable is None or not held:
        return Content(visible(count))
    good, bad = ("+", "x") if ascii_only else ("✓", "✗")
    if stands.stable:
        said = (f"{good} stable", "bold")
        return Content.assemble(visible(count), " ", said, ".")
    return Content.assemble(visible(count), "\n", (f"{bad} it moves ", "bold"), visible(stands.how))


def _section(heading: str, found: Sequence[PartRow], at: set[str], chosen: str | None) -> Content:
    lines: list[Content] = [Content.styled(heading, "bold underline")]
    if found[0].kind == "member":
        names = [f"{row.name}!" if row.name in at else row.name for row in found]
        lines.append(Content(one_line("  ".join(names)).replace(" ", "  ")))
        return Content("\n").join(lines)
    for row in found:
        mark = "! " if row.kind == "joint" and row.name in at else ""
        here = "› " if row.kind == "joint" and row.name == chosen else ""
        lines.append(Content(f"{here}{mark}{visible(row.text)}"))
    return Content("\n").join(lines)
