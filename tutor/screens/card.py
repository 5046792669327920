"""Which characters does this terminal show well? The same small picture in each, to choose by eye."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, ClassVar, cast

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Horizontal, VerticalScroll
from textual.content import Content
from textual.screen import Screen
from textual.widgets import Static

from tutor.figure import Glyphs, test_card
from tutor.screens.widgets.choices import Choices, OneOption, Picked

if TYPE_CHECKING:
    from tutor.screens.app import TutorApp

NAMES = {
    "braille": "fine dots",
    "blocks": "blocks",
    "ascii": "plain characters",
    "words": "words, no picture",
}
WORDS = "Member AB: no force. Member AD: tension 13 kN. Member BD: compression 5 kN."
QUESTION = (
    "Choose the first picture that looks right: a triangle on two supports, under a load. Type "
    "its number; your choice is kept."
)


def choose(app: TutorApp, then: Callable[[], None] | None) -> None:
    """Ask which pictures look right, keep the answer, and go on with `then`."""

    def chosen(glyphs: str | None) -> None:
        if glyphs is not None:
            app.glyphs = None
            app.change(app.settings._replace(glyphs=glyphs))
            app.sheet.look(app.looks)
        if then is not None:
            then()

    app.push_screen(CardScreen(app.glyphs or app.settings.glyphs), chosen)


class CardScreen(Screen[str | None]):
    """The glyphs chosen; None where the student leaves it open."""

    CSS_PATH = "card.tcss"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("escape,q", "leave", show=False, id="card.leave"),
    ]

    def __init__(self, standing: str | None = None) -> None:
        super().__init__()
        self.standing = standing

    def compose(self) -> ComposeResult:
        yield Static(Content(QUESTION), id="card-question")
        with VerticalScroll(id="cards", can_focus=False), Horizontal(id="card-row"):
            for number, (glyphs, name) in enumerate(NAMES.items(), start=1):
                text = WORDS if glyphs == "words" else test_card(cast(Glyphs, glyphs))
                card = Static(Content(text.strip("\n").rstrip()), classes="card")
                card.border_title = Content(f"{number} {name}")
                yield card
        yield Choices(id="card-choices")

    def on_mount(self) -> None:
        choices = self.query_one(Choices)
        choices.offer(
            [OneOption(glyphs, name, glyphs == self.standing) for glyphs, name in NAMES.items()]
        )
        choices.focus()

    def on_picked(self, message: Picked) -> None:
        message.stop()
        self.dismiss(message.keys[0])

    def action_leave(self) -> None:
        self.dismiss(None)
