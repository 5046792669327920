"""How do the screens run in a test? Without painting frames that nobody looks at, without reading the
same styles for each test anew, and without long waits for nothing."""

from __future__ import annotations

from types import CodeType, FunctionType, MethodType
from typing import Any

import pytest
import textual._callback
import textual._wait
import textual.screen
from textual._compositor import Compositor
from textual.css.model import RuleSet
from textual.css.stylesheet import CSSLocation, Stylesheet

render_update = Compositor.render_update
parse_rules = Stylesheet._parse_rules
LAID_OUT = 1 / 125
"""Seconds between two looks at what has to be laid out anew."""
AT_REST = 1 / 100
"""Seconds of rest after which nothing more is expected to come; more than `LAID_OUT`."""
READ: dict[object, list[RuleSet]] = {}
count_parameters = textual._callback._count_parameters
COUNTED: dict[CodeType, int] = {}


def only_whole_frames(self: Compositor, full: bool = False, *args: Any, **given: Any) -> Any:
    """What the library writes for a frame, where someone asked for the frame."""
    if full:
        return render_update(self, full, *args, **given)
    self._dirty_regions.clear()
    return None


def read_once(
    self: Stylesheet, css: str, read_from: CSSLocation, *args: Any, **given: Any
) -> list[RuleSet]:
    """The rules of a style sheet under the colours of now."""
    colours = frozenset(self._variables.items())
    key = (colours, css, read_from, args, tuple(sorted(given.items())))
    if key not in READ:
        READ[key] = parse_rules(self, css, read_from, *args, **given)
    return READ[key]


def counted_once(function: Any) -> int:
    """How many parameters a callback takes; of one made anew for each call, by its code."""
    if isinstance(function, MethodType):
        return counted_once(function.__func__) - 1
    if not isinstance(function, FunctionType) or hasattr(function, "__wrapped__"):
        return count_parameters(function)
    if function.__code__ not in COUNTED:
        COUNTED[function.__code__] = count_parameters(function)
    return COUNTED[function.__code__]


@pytest.fixture(autouse=True)
def nothing_is_done_that_no_test_sees(monkeypatch: pytest.MonkeyPatch) -> None:
    """An app without a terminal writes its frames nowhere: `seen` and the pictures paint their own."""
    monkeypatch.setattr(Compositor, "render_update", only_whole_frames)
    monkeypatch.setattr(Stylesheet, "_parse_rules", read_once)
    monkeypatch.setattr(textual._callback, "_count_parameters", counted_once)
    monkeypatch.setattr(textual.screen, "UPDATE_PERIOD", LAID_OUT)
    monkeypatch.setattr(textual._wait, "SLEEP_GRANULARITY", AT_REST)
    monkeypatch.setattr(textual._wait, "SLEEP_IDLE", AT_REST / 20)
