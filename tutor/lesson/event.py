"""What did the student do? One event for each thing done, plain enough to keep as JSON."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from tutor.notation.elements.fact import fact

LATEST = 1e11
"""No event is later than this (seconds since 1970: some three thousand years)."""


@fact
class Event:
    """One thing a student did: its kind, its data, and when (seconds since 1970, UTC)."""

    kind: str
    data: Mapping[str, Any]
    time: float

    def text(self, key: str) -> str:
        """The string under `key`; empty where it is missing or no string."""
        value = self.data.get(key)
        return value if isinstance(value, str) else ""

    def strings(self, key: str) -> frozenset[str]:
        """The strings in the list `data[key]`; empty where it is missing or no list."""
        values = self.data.get(key)
        return (
            frozenset(v for v in values if isinstance(v, str))
            if isinstance(values, list | tuple)
            else frozenset()
        )

    def as_record(self) -> dict[str, Any]:
        """The event as a mapping of JSON values."""
        return {**self.data, "kind": self.kind, "time": self.time}

    @classmethod
    def from_record(cls, record: Mapping[str, Any]) -> Event:
        """The event that `as_record` wrote. ValueError where the mapping is not one."""
        kind, time = record.get("kind"), record.get("time")
        if not isinstance(kind, str) or isinstance(time, bool) or not isinstance(time, int | float):
            raise ValueError("a kept event lacks its kind or its time")
        if not 0 <= time <= LATEST:
            raise ValueError("the time of a kept event is out of range")
        rest = {key: value for key, value in record.items() if key not in ("kind", "time")}
        return cls(kind, rest, float(time))
