"""How is a time written that was counted in seconds?"""

from __future__ import annotations

from datetime import UTC, datetime

LAST = 253_402_300_799.0
"""The last second of the year 9999, in seconds since 1970: beyond it no date can be written."""


def moment(seconds: float | None) -> str | None:
    """Seconds since 1970 as a time in UTC (ISO 8601), or None."""
    if seconds is None:
        return None
    at = datetime.fromtimestamp(min(seconds, LAST), UTC)
    return f"{at:%Y-%m-%dT%H:%M:%S}.{at.microsecond // 1000:03}Z"


def day(seconds: float | None) -> str:
    """The day of a moment in UTC, "2026-11-02"; empty for None."""
    return "" if seconds is None else (moment(seconds) or "")[:10]
