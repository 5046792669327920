"""What time is it? By the clock that lessons are kept by, which a test may set."""

from __future__ import annotations

from collections.abc import Callable
from datetime import UTC, datetime

Clock = Callable[[], datetime]


def utc_now() -> datetime:
    """The present time, with its zone."""
    return datetime.now(UTC)
