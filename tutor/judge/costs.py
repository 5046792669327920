"""How much less plausible does each part of an explanation make it, in steps of the scale?

Which of them a mistake takes stands in its own file under `mistakes/`. The costs of an explanation are
added up, and the cheapest one is told first. All is our judgement of what is seen on marked sheets; it
ranks explanations and never decides whether a line is right.
"""

from __future__ import annotations

from tutor.judge.scale import A_SLIP, FAR_LESS, HARDLY, SLIGHTLY, SOMEWHAT

# The scale of the whole line.
SCALED_SUM = A_SLIP
"""A sum of forces is hardly ever multiplied by anything."""
SCALED_MOMENT = SOMEWHAT + SLIGHTLY
"""A sum of moments is often divided by an arm."""
IN_OTHER_UNIT = SLIGHTLY
"""A sum of moments has all its lengths in another unit, in metres for millimetres."""

# What the typed factors say.
MISPLACED = SOMEWHAT
"""The other of size and factor is the one typed wrong: the mistake lies where the text is right."""
UNSEEN = A_SLIP
"""A typed product holds neither the size nor the factor of the force it is taken for."""
MINUS_ASTRAY = FAR_LESS
"""A minus in brackets belongs to an earlier result that is negative, and to nothing else."""
AS_FOUND = SLIGHTLY
"""An earlier result stands there with the sign it was found with: what is beside it is turned, not the result."""
OF_ANOTHER = A_SLIP
"""A number by itself that is another own result is taken for a component of this one."""
TURNED_ELSEWHERE = HARDLY
"""A force from elsewhere has not the sign that it has where it acts."""
LOOSE = SOMEWHAT
"""The number is met only within its rounding, or within the second tolerance."""
BEYOND = SOMEWHAT
"""A number is rounded beyond what is let pass, and not every number of the line is rounded as hard."""

# Terms that no rule makes.
OTHER_ARM = SOMEWHAT
"""Some distance that no rule gives."""
SIZE_SHOWN = SLIGHTLY
"""Some distance beside a size that is written out."""
OTHER_SIZE = A_SLIP
"""Some number that is neither size nor factor of the force."""
OTHER_SLOPE = FAR_LESS
"""A factor that could be a component, of no slope in the truss."""
WITHOUT_PLACE = FAR_LESS
"""A number that stands for no force, besides the cost of a term too many."""
SEEN_TWICE = A_SLIP
"""A number or an unknown that stands there once more, in so many words."""

# Several terms and one force, one number and several forces.
IS_ITSELF = FAR_LESS
"""A lone number that is one of the numbers of the line is taken for a sum."""
LUMPED = FAR_LESS + SLIGHTLY
"""A number that could be any sum: nothing is said but that it does not follow."""
PRODUCT = SOMEWHAT + SLIGHTLY
"""The same of a typed product, which is no sum."""

# What runs through a line.
ONCE_MORE = SOMEWHAT
"""What a mistake that runs through a line costs at each further force, as a share."""
NOT_RECORDED = SOMEWHAT + SLIGHTLY
"""A value is put in that was not recorded before."""

# How near two explanations are told together.
CLOSE = SOMEWHAT
"""Explanations of one mistake that cost less than this more are told as a tie."""
CLOSE_PAIRS = SLIGHTLY
"""The same of two mistakes."""

# Which equation a wrong line is meant to be, where none was chosen.
ONE_SLIP = A_SLIP + SOMEWHAT
"""At most this much costs a line that is one equation but for a single plain slip."""
APART = SOMEWHAT
"""And so much more as any other equation."""
