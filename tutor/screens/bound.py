"""Which keys do the deeds of a screen? Apart from lines and bars, which not every screen needs at once."""

from __future__ import annotations

from collections.abc import Sequence

from textual.binding import Binding

from tutor.screens.deeds import Deed


def bindings(deeds: Sequence[Deed], screen: str, *, letters: bool = True) -> list[Binding]:
    """A binding for each deed, which calls the screen's `action_deed`, and escape for the bar.

    Without `letters`, a letter alone does its deed on the bar only.
    """
    return [
        *(
            Binding(
                d.keys if letters else d.keys_while_typing,
                f"deed('{d.id}')",
                d.label,
                show=False,
                id=f"{screen}.{d.id}",
            )
            for d in deeds
        ),
        Binding("escape", "bar", show=False, id=f"{screen}.bar"),
    ]
