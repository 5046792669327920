"""What does the palette offer? The deeds of the screen, the colours, and the way out."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import partial
from typing import TYPE_CHECKING, cast

from textual.app import SystemCommand
from textual.command import (
    Command,
    CommandList,
    CommandPalette,
    DiscoveryHit,
    Hit,
    Hits,
    Provider,
    SearchIcon,
)
from textual.screen import Screen

from tutor.screens.deeds import Deed
from tutor.screens.guiding import change_guide

if TYPE_CHECKING:
    from tutor.screens.app import TutorApp


def open_palette(app: TutorApp) -> None:
    """Put the palette over the screen, unless it is there."""
    if not isinstance(app.screen, Palette):
        app.push_screen(Palette())


class Offered(Provider):
    """All commands, in the order of the bar, the way out last."""

    def _all(self) -> Iterator[SystemCommand]:
        return commands(cast("TutorApp", self.app), self.screen)

    async def discover(self) -> Hits:
        for name, does, command, _ in self._all():
            yield DiscoveryHit(name, command, help=does)

    async def search(self, query: str) -> Hits:
        matcher = self.matcher(query)
        for name, does, command, _ in self._all():
            match = matcher.match(name)
            if match > 0:
                yield Hit(match, matcher.highlight(name), command, help=does)


class Palette(CommandPalette):
    """The palette. Nothing is chosen until something is typed or an arrow or an enter chooses it."""

    def __init__(self) -> None:
        super().__init__(providers=[Offered], id="--command-palette")

    def on_mount(self) -> None:
        self.query_one(SearchIcon).icon = ">"

    def _refresh_command_list(
        self, command_list: CommandList, commands: list[Command], clear_current: bool
    ) -> None:
        super()._refresh_command_list(command_list, commands, clear_current)
        if commands and isinstance(commands[0].hit, DiscoveryHit):
            command_list.highlighted = None


def commands(app: TutorApp, screen: Screen[object]) -> Iterator[SystemCommand]:
    """The commands there are on this screen."""
    deeds: Sequence[Deed] = getattr(screen, "deeds", tuple)()
    for deed in deeds:
        do = partial(getattr(screen, "action_deed"), deed.id)  # noqa: B009 - screens with deeds
        yield SystemCommand(deed.label.capitalize(), deed.does, do)
    yield SystemCommand("Light or dark colours", "Change the colours", app.change_light)
    remarks = "Leave out" if app.settings.remarks else "Make"
    yield SystemCommand(
        f"{remarks} remarks on an easier way", "Beside right lines", app.change_remarks
    )
    guide = "Leave out" if app.guided else "Tell"
    yield SystemCommand(
        f"{guide} what comes next and what you can do",
        "On the list, on opening a problem and after its table",
        partial(change_guide, app),
    )
    yield SystemCommand("Paint anew", "Where the terminal shows something else", app.paint_anew)
    yield SystemCommand("End the program", "Everything done is kept", app.action_leave_all)
