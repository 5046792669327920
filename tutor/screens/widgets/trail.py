"""Where in the walk is the student? The problem's title, the steps, and whether it is kept."""

from __future__ import annotations

from rich.cells import cell_len, set_cell_size
from textual.content import Content
from textual.geometry import Size
from textual.reactive import reactive
from textual.widget import Widget

from tutor.lesson import STEPS
from tutor.screens.clean import one_line


class Trail(Widget):
    """One row: title, the steps with the present one in brackets, the state of keeping."""

    title: reactive[str] = reactive("")
    step: reactive[str] = reactive("")
    keeping: reactive[str] = reactive("")

    def show(self, title: str, step: str, keeping: str) -> None:
        """Show these."""
        self.title, self.step, self.keeping = one_line(title), step, one_line(keeping)

    def get_content_height(self, container: Size, viewport: Size, width: int) -> int:
        return 1

    def render(self) -> Content:
        wide = self.size.width
        steps = [f"[{s.capitalize()}]" if s == self.step else s.capitalize() for s in STEPS]
        trail = " ".join(steps)
        if wide < cell_len(self.title) + cell_len(trail) + len(self.keeping) + 4:
            place = STEPS.index(self.step) + 1 if self.step in STEPS else 0
            trail = f"[{self.step.capitalize()}] {place} of {len(STEPS)}"
        right = f"{trail}  {self.keeping}"
        room = max(0, wide - cell_len(right) - 2)
        title = self.title
        if cell_len(title) > room:
            title = set_cell_size(title, max(0, room - 1)).rstrip() + "…" if room > 4 else ""
        gap = " " * max(1, wide - cell_len(title) - cell_len(right))
        return Content.assemble((title, "bold"), gap, trail, "  ", (self.keeping, "$quiet"))
