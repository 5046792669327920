"""Which kept lessons belong to a problem? Apart from the keeping, so that this loads no problem files."""

from __future__ import annotations

from collections.abc import Iterable

from tutor.model import Problem
from tutor.records.belonging import Belonging, belonging, first_key_of, key_of
from tutor.records.kept import Kept


class Lessons:
    """Kept lessons, to be looked up by the problem they belong to."""

    def __init__(self, lessons: Iterable[Kept]) -> None:
        self._by_key: dict[str, list[tuple[int, Kept]]] = {}
        self._by_title: dict[str, list[tuple[int, Kept]]] = {}
        self._first = False
        for place, kept in enumerate(kept for kept in lessons if kept.readable):
            self._by_key.setdefault(kept.problem, []).append((place, kept))
            self._by_title.setdefault(kept.title, []).append((place, kept))
            self._first = self._first or not kept.content

    def of(self, problem: Problem) -> tuple[tuple[Kept, Belonging], ...]:
        """Those that belong to a problem, in their order, and how."""
        keys = [key_of(problem), *([first_key_of(problem)] if self._first else [])]
        near = [each for key in keys for each in self._by_key.get(key, ())]
        near += self._by_title.get(problem.title, ())
        found = []
        for _, kept in sorted(dict(near).items()):
            how = belonging(problem, kept.problem, kept.content, kept.title)
            if how is not None:
                found.append((kept, how))
        return tuple(found)
