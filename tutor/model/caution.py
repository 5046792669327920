"""What must stand beside everything that is shown at the end, printed, exported or said?"""

from __future__ import annotations

CAUTION = (
    "pinjoint teaches statics. It is not for the design of real structures: that is for the local "
    "codes and a licensed engineer."
)
SHORT_CAUTION = "For learning statics only, not for the design of real structures."
"""What stands beside a later result, where the whole was heard before."""
