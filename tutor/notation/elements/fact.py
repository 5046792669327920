"""How is a fact declared of which a line makes dozens?

A frozen dataclass sets each field by a call, so that making it costs four times as much as making
an open one, and half of the time in which a line is read went there. A `fact` is frozen for the
type checker, which is where a field that is set anew has to be seen, and open while it runs.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from functools import cached_property
from typing import TYPE_CHECKING, Any, TypeVar, dataclass_transform

Kind = TypeVar("Kind")


@dataclass_transform(frozen_default=True, field_specifiers=(field,))
def fact(kind: type[Kind]) -> type[Kind]:
    """A dataclass that is compared and hashed by its fields, which are never set anew."""
    return dataclass(unsafe_hash=True)(kind)


if TYPE_CHECKING:
    kept = cached_property
else:

    class kept:  # noqa: N801 - stands where `cached_property` would
        """What follows from a fact, worked out when first asked for.

        A `cached_property` without the lock that Python 3.11 takes at each: a fact is looked at by
        one thread, and two would only work out the same twice.
        """

        def __init__(self, make: Callable[[Any], Any]) -> None:
            self.make, self.__doc__ = make, make.__doc__

        def __set_name__(self, owner: type, name: str) -> None:
            self.name = name

        def __get__(self, instance: Any, owner: type | None = None) -> Any:
            if instance is None:
                return self
            value = instance.__dict__[self.name] = self.make(instance)
            return value
