"""How is a fact declared of which a line makes dozens?

A frozen dataclass sets each field by a call, so that making it costs four times as much as making
an open one, and half of the time in which a line is read went there. A `fact` is frozen for the
type checker, which is where a field that is set anew has to be seen, and open while it runs.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TypeVar, dataclass_transform

Kind = TypeVar("Kind")


@dataclass_transform(frozen_default=True, field_specifiers=(field,))
def fact(kind: type[Kind]) -> type[Kind]:
    """A dataclass that is compared and hashed by its fields, which are never set anew."""
    return dataclass(unsafe_hash=True)(kind)
