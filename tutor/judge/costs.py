"""What does each part of an explanation cost? One table; lower is more plausible.

What a mistake itself costs stands in its own file under `mistakes/`. All weights are our judgement
of what is seen on marked sheets; they rank explanations and never decide whether a line is right.
"""

from __future__ import annotations

# The scale of the whole line.
TURNED_ROUND = 0.04
"""All signs changed: terms were moved to the other side. As good as written."""
SCALED_SUM = 1.15
"""A sum of forces is hardly ever multiplied by anything."""
SCALED_MOMENT = 0.6
"""A sum of moments is often divided by an arm."""
SCALED_ALONE = 0.3
"""One force and no number: what was beside the force is divided out without a thought."""
ON_A_SLIP = 0.2
"""The scale rests on a term that is itself wrong."""
PER_DECADE = 0.1
"""Nobody multiplies a line by a thousand."""

# What the typed factors say.
MISPLACED = 0.5
"""The other of size and factor is the one typed wrong: the mistake lies where the text is right."""
UNSEEN = 1.0
"""A typed product holds neither the size nor the factor of the force it is taken for."""
MINUS_ASTRAY = 5.0
"""A minus in brackets belongs to an earlier result that is negative, and to nothing else."""
AS_FOUND = 0.2
"""An earlier result stands there with the sign it was found with: what is beside it is turned, not the result."""
LOOSE = 0.5
"""The number is met only within its rounding."""
FAR = 0.5
"""The number is met only within the second tolerance."""
BARELY = 0.15
"""A right coefficient, rounded hard."""
BEYOND = 0.2
"""A number is rounded beyond what is let pass."""
BY_HOW_MUCH = 6.0
"""And by how much, as a share: far off it is another one."""
CUT = 0.2
"""Figures were cut off where they should have been rounded."""

# Terms that no rule makes.
OTHER_FACTOR = 0.4
"""Beside a force without a part: some factor that no rule gives."""
OTHER_ARM = 0.6
"""Some distance that no rule gives."""
SIZE_SHOWN = 0.3
"""Some distance beside a size that is written out."""
OTHER_SIZE = 2.4
"""Some number that is neither size nor factor of the force."""
BARE_SIZE = 1.6
"""A lone number where the force counts whole: its size, copied wrongly."""
ELSEWHERE = 0.4
"""So much less costs a wrong size that is, in so many words, the load of another joint."""
OTHER_SLOPE = 2.2
"""A factor that could be a component, of no slope in the truss."""
OTHER_SLOPE_TURNED = 0.4
"""The same, with the wrong sign."""
WITHOUT_PLACE = 1.8
"""A number that stands for no force, besides the cost of a term too many."""
SEEN_TWICE = 0.6
"""A number that stands there once more, in so many words."""

# Forces from elsewhere.
STRAY_TURNED = 0.1
"""A force of another joint with the wrong sign."""
STRAY_SIZE = 0.8
"""A force of another joint with a factor it has nowhere."""
STRAY_WHOLE = 0.2
"""A load of another joint, whole."""

# Several terms and one force, one number and several forces.
MORE_THAN_THERE = 0.3
"""More numbers than forces, though they add up."""
IN_PARTS = 0.05
"""An inclined force is written as its two components."""
AS_ONE = 0.8
"""Two slips at the components of one force are one slip."""
BY_SUM = 0.1
"""Numbers were added up before they were typed."""
SUM_OF_TWO = 0.25
"""In a sum of two or three numbers, a slip that changes a factor."""
IS_ITSELF = 1.3
"""A lone number that is one of the numbers of the line is taken for a sum."""
LUMPED = 2.3
"""A number that could be any sum: nothing is said but that it does not follow."""
PRODUCT = 0.5
"""The same of a typed product, which is no sum."""
HALF_RIGHT = 0.6
"""Of an unknown in several terms, one is right."""

# What is left out, and what runs through.
LEFT_OUT_IDLE = 0.3
"""A force that is zero anyhow is left out."""
ONCE_MORE = 0.4
"""What a mistake that runs through a line costs at each further force, as a share."""
NOT_RECORDED = 0.3
"""A value is put in that was not recorded before."""
IN_RADIANS = 0.5
"""The whole line comes out right with its angles as radians."""

# How near two explanations are told together.
CLOSE = 0.35
"""Explanations of one mistake that cost about the same are told as a tie."""
CLOSE_PAIRS = 0.12
"""The same of two mistakes."""

# Which equation a wrong line is meant to be, where none was chosen.
ONE_SLIP = 1.5
"""At most this much costs a line that is one equation but for a single plain slip."""
APART = 1.0
"""And so much more as any other equation."""
FEW_SLIPS = 3.5
"""At most this much costs a line that is one of the two sums of its joint, however wrong."""
