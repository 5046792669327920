"""Where does a problem stand on the list, in words?"""

from __future__ import annotations

from collections.abc import Mapping

WHERE: Mapping[str, str] = {
    "idealise": "at the idealisation",
    "free body": "at the free body",
    "reactions": "at the reactions",
    "joints": "at the joints",
    "close": "at the closing check",
    "table": "done",
}
DONE = WHERE["table"]
WATCHED = "watched"
BEGUN = "begun"
CHANGED = "begun, and changed since"
FINISHED = frozenset({DONE, WATCHED})
"""Where a problem stands that is not proposed again."""
