"""Which numbers does this student get? A problem with `[vary]` becomes the problem of one student.

The numbers follow from (set, problem, student) alone (`lot`), so they are the same on every machine
and are never kept. `makes` puts numbers in, `mirror` turns the truss round, `conditions` says what
numbers must meet, and `choose` takes the first that do. Many choices are looked at side by side: `outlines`
says where each puts the joints and what acts on them, `statics.many` solves them all, `sure` tells what
of the conditions is beyond doubt, and what is not is looked at by itself.
"""

from tutor.variants.choose import NoVariant, Varied, variant, variant_of
from tutor.variants.conditions import is_short, pulling_rollers
from tutor.variants.mirror import is_turned
from tutor.variants.one_student import personal
from tutor.variants.slopes import awkward_slopes

__all__ = [
    "NoVariant",
    "Varied",
    "awkward_slopes",
    "is_short",
    "is_turned",
    "personal",
    "pulling_rollers",
    "variant",
    "variant_of",
]
