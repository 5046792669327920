"""What must stand beside everything that is shown at the end, printed or exported?"""

from __future__ import annotations

CAUTION = (
    "pinjoint teaches statics. It is not for the design of real structures: that is for the local "
    "codes and a licensed engineer."
)
