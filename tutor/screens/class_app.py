"""What did the class get wrong? Tables to look through, to sort and to open; nothing is worked out here."""

from __future__ import annotations

from collections.abc import Sequence
from typing import ClassVar

from rich.text import Text
from textual.app import App, ComposeResult
from textual.binding import Binding, BindingType
from textual.content import Content
from textual.filter import LineFilter
from textual.widgets import DataTable, Static

from tutor.cohort import ClassReport
from tutor.cohort.views import View, ViewRow, views
from tutor.model.caution import CAUTION
from tutor.screens.clean import one_line
from tutor.screens.column_widths import widths
from tutor.screens.dialogs.told import Told
from tutor.screens.filters import AsciiOnly, Harmless
from tutor.screens.looks import speaks_utf8
from tutor.screens.terminal import driver
from tutor.screens.themes import THEMES

BESIDE = 2
"""The columns of the terminal that stand empty beside those of a table, and beside its rows."""
KEYS = "{views} tables   s sort by the next column   r turn round   enter open   q leave"
NOTHING = "There is nothing here."


class ClassApp(App[int]):
    """The report on a class on the screen."""

    CSS_PATH = "class_app.tcss"
    TITLE = "pinjoint class"
    ENABLE_COMMAND_PALETTE = False
    BINDINGS: ClassVar[list[BindingType]] = [
        *(Binding(str(n), f"show({n - 1})", show=False, id=f"class.table{n}") for n in range(1, 7)),
        Binding("right,tab", "step(1)", show=False, priority=True, id="class.next"),
        Binding("left,shift+tab", "step(-1)", show=False, priority=True, id="class.before"),
        Binding("s", "sort", show=False, id="class.sort"),
        Binding("r", "turn", show=False, id="class.turn"),
        Binding("q,escape", "leave", show=False, id="class.leave"),
    ]

    def __init__(self, report: ClassReport, utf8: bool = True, theme: str = "dark") -> None:
        super().__init__(driver_class=driver())
        self.report = report
        self.views = views(report)
        self.at = 0
        self.column = -1
        self.turned = False
        self._filled_for = 0
        self.rows: tuple[ViewRow, ...] = ()
        self.gates: list[LineFilter] = [Harmless(), *([] if utf8 else [AsciiOnly()])]
        for each in THEMES.values():
            self.register_theme(each)
        self.theme = theme if theme in THEMES else "dark"

    @property
    def view(self) -> View:
        """The table that is shown."""
        return self.views[self.at]

    def get_theme_variable_defaults(self) -> dict[str, str]:
        return dict(THEMES["dark"].variables)

    def get_line_filters(self) -> Sequence[LineFilter]:
        """What every line goes through on its way out."""
        return self.gates

    def compose(self) -> ComposeResult:
        yield Static(id="class-head")
        yield Static(id="class-tables")
        yield DataTable(cursor_type="row", zebra_stripes=False, id="class-rows")
        yield Static(Content(KEYS.format(views=f"1-{len(self.views)}")), id="class-keys")
        yield Static(Content(CAUTION), id="class-caution")

    def on_mount(self) -> None:
        report = self.report
        said = f"{report.title}: {report.handed_in} of {len(report.students)} students handed in"
        self.query_one("#class-head", Static).update(Content(one_line(said)))
        self.action_show(0)

    def action_show(self, at: int) -> None:
        """Another table, in its own order."""
        self.at, self.column, self.turned = at, -1, False
        self._fill()

    def action_step(self, by: int) -> None:
        """The next table, or the one before."""
        if len(self.screen_stack) == 1:
            self.action_show((self.at + by) % len(self.views))

    def action_sort(self) -> None:
        """By the next column, numbers from the largest down; after the last, as it was."""
        self.column += 1
        if self.column >= len(self.view.heads):
            self.column = -1
        first = self.view.rows[0].cells[self.column] if self.view.rows else ""
        self.turned = self.column >= 0 and isinstance(first, int)
        self._fill()

    def action_turn(self) -> None:
        """The other way round."""
        self.turned = not self.turned
        self._fill()

    def action_leave(self) -> None:
        self.exit(0)

    def on_data_table_row_selected(self, message: DataTable.RowSelected) -> None:
        """Open a row."""
        if 0 <= message.cursor_row < len(self.rows):
            row = self.rows[message.cursor_row]
            self.push_screen(Told(row.title, row.text))

    def on_resize(self) -> None:
        """The columns fit the terminal, whatever its width is now."""
        self.call_after_refresh(self._fit)

    def _fit(self) -> None:
        """Fill the table anew where the width is another one; the row stays."""
        if self._filled_for != self.size.width:
            table = self.query_one("#class-rows", DataTable)
            at = table.cursor_row
            self._fill()
            table.move_cursor(row=at)

    def _fill(self) -> None:
        """Show the table; what is longer than its column goes on in a row below."""
        self._filled_for = self.size.width
        names = Content("   ").join(
            Content.styled(f"{at + 1} {view.name}", "bold reverse" if at == self.at else "")
            for at, view in enumerate(self.views)
        )
        self.query_one("#class-tables", Static).update(names)
        rows = self.view.sorted_by(self.column, self.turned)
        self.rows = tuple(reversed(rows)) if self.column < 0 and self.turned else rows
        table = self.query_one("#class-rows", DataTable)
        table.clear(columns=True)
        mark = " v" if self.turned else " ^"
        heads = [f"{head}{mark * (at == self.column)}" for at, head in enumerate(self.view.heads)]
        cells = [[_cell(cell) for cell in row.cells] for row in self.rows]
        columns = list(zip(heads, *cells, strict=True))
        room = self.size.width - BESIDE * (len(heads) + 1)
        for head, width in zip(heads, widths(columns, room), strict=True):
            table.add_column(Text(head), width=width)
        for row in cells:
            table.add_row(*map(Text, row), height=None)
        if not self.rows:
            table.add_row(Text(NOTHING))
        table.focus()


def _cell(cell: str | int) -> str:
    text = one_line(str(cell))
    return f"{text:>6}" if isinstance(cell, int) else text


def show_class(report: ClassReport, mouse: bool) -> int:
    """Show a report until it is left; the exit status."""
    app = ClassApp(report, speaks_utf8())
    status = app.run(mouse=mouse)
    return (app.return_code or 0) if status is None else status
