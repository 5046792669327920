"""Draws the pictures of the documents from the program: python tests/screens/doc_pictures.py"""

from __future__ import annotations

import asyncio
import re
import sys
import tempfile
from collections.abc import Awaitable, Callable
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent))
sys.path.insert(1, str(Path(__file__).parents[1]))

from pressing import enter_line, finished, opened, pick, seen, settle
from resuming import FREE_BODY, JOINTS, Resumed
from test_pictures import FONT_LINK, drawn
from textual.pilot import Pilot

from tutor.records import Settings
from tutor.screens.sheet import LEAD

FOLDER = Path(__file__).parents[2] / "docs" / "pictures"
SIZE = (110, 34)
TITLE = 32
"""The height of the bar of the title that is cut off."""
Walk = Callable[[Pilot[int]], Awaitable[None]]


async def first_look(pilot: Pilot[int]) -> None:
    await pilot.press("1")
    await settle(pilot, lambda: pilot.app.screen is pilot.app.sheet)  # type: ignore[attr-defined]
    await settle(pilot, lambda: LEAD in seen(pilot))
    await pilot.press("down")


async def arrows(pilot: Pilot[int]) -> None:
    await pilot.press("left")


async def wrong_line(pilot: Pilot[int]) -> None:
    await pick(pilot, "B")
    await enter_line(pilot, "5/13 F_BC + 360 = 0")


async def table(pilot: Pilot[int]) -> None:
    await pick(pilot, "B")
    for line in ("12/13 F_BC + 360 = 0", "BC = 390 C", "Fy", "AB - 5/13*390 = 0", "AB = 150 T"):
        await enter_line(pilot, line)
    await pick(pilot, "C")
    for line in ("AC = 12/13*390", "AC = 360 T"):
        await enter_line(pilot, line)
    await pick(pilot, "Fy @ C")
    await enter_line(pilot, "5/13*390 - 150 = 0")
    await settle(pilot, lambda: finished(pilot))


async def draw() -> None:
    FOLDER.mkdir(exist_ok=True)
    places = {
        "free-body": (FREE_BODY, arrows),
        "walk": (JOINTS, wrong_line),
        "table": (JOINTS, table),
    }
    with tempfile.TemporaryDirectory() as folder:
        async with opened(Path(folder) / "sheet", settings=Settings(), size=SIZE) as pilot:
            await first_look(pilot)
            write("sheet", await drawn(pilot))
        for name, (events, walk) in places.items():
            async with Resumed(Path(folder) / name, events, SIZE) as pilot:
                await walk(pilot)
                write(name, await drawn(pilot))


def write(name: str, svg: str) -> None:
    (FOLDER / f"{name}.svg").write_text(bare(FONT_LINK.sub("", svg)), encoding="utf-8")


def bare(svg: str) -> str:
    """The picture of the program alone: no window of a desktop round it."""
    svg = re.sub(r"<circle[^>]*r=\"7\"[^>]*/>\s*", "", svg)
    svg = re.sub(r"<text class=\"[^\"]*-title\"[^>]*>[^<]*</text>", "", svg)
    svg = svg.replace('stroke="rgba(255,255,255,0.35)"', 'stroke="none"')
    return re.sub(r'viewBox="0 0 (\d+) ([\d.]+)"', _cropped, svg, count=1)


def _cropped(found: re.Match[str]) -> str:
    """Without the bar of the title at the top."""
    return f'viewBox="0 {TITLE} {found[1]} {float(found[2]) - TITLE:g}"'


if __name__ == "__main__":
    asyncio.run(draw())
