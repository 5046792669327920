"""Where does a problem stand on the list, in words?"""

from __future__ import annotations

DONE = "done"
WATCHED = "watched"
BEGUN = "begun"
CHANGED = "begun, changed since"
FINISHED = frozenset({DONE, WATCHED})
"""Where a problem stands that is not proposed again."""
NO_STEP = frozenset({BEGUN, CHANGED})
"""Where a problem stands of whose lesson the step is not told."""
