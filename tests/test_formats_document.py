"""Does the page on what is kept say what is written?"""

from __future__ import annotations

import re
from pathlib import Path

from tutor.lesson.fold import ANYWHERE
from tutor.lesson.outcome_parts import PARTS
from tutor.lesson.steps import STEP
from tutor.records import Settings
from tutor.records.contents import FORMAT, VERSION, header_of
from tutor.records.line import MARK, check_sum, whole_line

PAGE = (Path(__file__).parents[1] / "docs" / "formats.md").read_text("utf-8")


def test_the_first_line_shown_is_one() -> None:
    (shown,) = re.findall(r"```json\n(.*?)\n```", PAGE, re.DOTALL)
    body, _, rest = shown.encode().rpartition(MARK)
    assert rest == f'{check_sum(body)}"}}'.encode(), "its own sum"
    line = whole_line(shown.encode())
    assert line is not None
    header = header_of(line)
    assert header is not None
    assert (header.version, line.event["format"]) == (VERSION, FORMAT)
    assert set(line.event) == set(header.event())


def test_every_event_and_every_part_of_an_outcome_is_told() -> None:
    kinds = {kind for step in STEP.values() for kind in step.handles} | ANYWHERE.keys()
    kinds |= {"hint", "undo", "go", "show", "outcome", "outcomes", "compared", "lines"}
    told = set(re.findall(r"`([a-z_]+)`", PAGE))
    assert kinds <= told, kinds - told
    assert PARTS.keys() <= told, PARTS.keys() - told


def test_every_choice_of_the_settings_is_told() -> None:
    told = set(re.findall(r"`([a-z_]+)`", PAGE))
    assert set(Settings._fields) <= told
