"""Which complaints are there? One table of sentences, cures and the broken inputs that earn them.

A key is a stable code, with a variant after "/" where one code has several sentences. In `says`
and `cure`, {found} is the text pointed at. The examples are read in a truss with the members AB,
AC, BC, BD, CD and IN, reactions A_x, A_y and R_D, joints A, B, C, D, I and N, kN and m; each pairs
an input with the column it points at.
"""

from __future__ import annotations

from collections.abc import Mapping

from tutor.notation.elements.complaints import (
    figures,
    functions,
    names,
    results,
    shape,
    units,
    whole,
)
from tutor.notation.elements.complaints.complaint import Complaint

COMPLAINTS: Mapping[str, Complaint] = {
    key: complaint
    for subject in (whole, figures, shape, names, functions, units, results)
    for key, complaint in subject.COMPLAINTS.items()
}
"""All complaints by key."""

__all__ = ["COMPLAINTS", "Complaint"]
