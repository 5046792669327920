"""Every problem that comes along can be walked in a window of 80 by 24: nothing asked is out of sight.

Each walk is gone through to its end; it is laid out wherever what is asked has a shape of its own.
"""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

import pytest
from every_problem import FILES
from pressing import opened, settle, shows, walk_of
from textual.pilot import Pilot
from textual.widget import Widget

from tutor.lesson import Say
from tutor.screens.brief import brief
from tutor.screens.walk import WalkScreen
from tutor.screens.widgets.action_bar import ActionBar
from tutor.screens.widgets.answer_pane import AnswerPane
from tutor.screens.widgets.choices import Choices
from tutor.screens.widgets.figure_pane import Drawing

USUALLY = frozenset({"mirror-prop"})
LEAST_ROWS = 7
LEAST_BESIDE_REASONS = 6
"""Six reasons to choose from are read without the picture, which can be had large."""
MOST_STEPS = 400
WIDTH = 78


def out_of_sight(walk: WalkScreen) -> list[str]:
    """What of a question cannot be seen or reached, in words."""
    parts: list[Widget] = [walk.query_one("#ask"), walk.query_one(ActionBar)]
    parts += [part for part in walk.query_one(AnswerPane).children if part.display]
    found = [f"{part!r} is cut" for part in parts if not _whole(walk, part)]
    ask = walk.query_one("#ask")
    if ask.virtual_size.height > ask.size.height:
        found.append("the question has more rows than it is given")
    if not walk.query_one("#reply").size.height:
        found.append("there is no room for an answer")
    drawing = walk.query_one("#figure Drawing", Drawing)
    least = LEAST_BESIDE_REASONS if walk.ask.kind == "reasons" else LEAST_ROWS
    if drawing.size.height < least:
        found.append(f"the picture has {drawing.size.height} rows")
    return found


def _whole(walk: WalkScreen, part: Widget) -> bool:
    """Whether all of a part is on the screen; a list that scrolls shows some of its rows at least."""
    placed = walk.find_widget(part)
    seen = placed.visible_region.intersection(walk.region)
    return seen == placed.region or (isinstance(part, Choices) and seen.height >= 3)


@pytest.mark.parametrize(
    "path",
    [
        pytest.param(path, id=path.stem, marks=() if path.stem in USUALLY else pytest.mark.slow)
        for path in FILES
    ],
)
async def test_every_problem_fits_and_is_walkable_at_80_by_24(tmp_path: Path, path: Path) -> None:
    alone = tmp_path / "alone" / path.name  # without its set, some of which show nothing
    alone.parent.mkdir()
    alone.write_bytes(path.read_bytes())
    async with opened(tmp_path / "kept", alone) as pilot:
        await settle(pilot, lambda: shows(pilot, WalkScreen))
        walk: WalkScreen = walk_of(pilot)
        looked_at: set[tuple[str, int, int]] = set()
        said: Sequence[Say] = walk.said
        for _ in range(MOST_STEPS):
            ask = walk.ask
            if ask.kind == "table":
                break
            layout = (ask.kind, len(f"{ask.title}  {ask.question}") // WIDTH, len(ask.options))
            if layout not in looked_at:
                walk.show(said)
                await _settled(pilot)
                assert out_of_sight(walk) == [], (ask.title, ask.question)
                looked_at.add(layout)
            reply = walk.session.do("show")
            assert reply.accepted
            said = brief(reply.said)
        assert walk.ask.kind == "table"
        assert len(looked_at) > 2


async def _settled(pilot: Pilot[int]) -> None:
    """Until what was said last is laid out."""
    await pilot.pause()
    await pilot.pause()
