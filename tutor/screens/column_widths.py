"""How wide is each column of a table, so that the last one is seen as well as the first?"""

from __future__ import annotations

from collections.abc import Sequence


def longest(text: str) -> int:
    """How many cells the longest word of a text takes; no column is made narrower for it."""
    return max(map(len, text.split()), default=0)


def widths(columns: Sequence[Sequence[str]], room: int) -> list[int]:
    """The widths of columns, each with its head and cells, in so much room.

    Where they do not fit, the widest gives way first, down to its longest word; what is longer then
    goes on in a row below.
    """
    found = [max(map(len, column), default=0) for column in columns]
    least = [max(map(longest, column), default=0) for column in columns]
    while sum(found) > room:
        gives = [at for at, width in enumerate(found) if width > least[at]]
        if not gives:
            break
        found[max(gives, key=lambda at: found[at])] -= 1
    return found
