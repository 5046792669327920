"""How are mistakes told that read otherwise at a value than in a line?"""

from __future__ import annotations

WORDS = {
    "sign": (
        "The size is right; the sign is not.",
        "A minus in the result means that the force acts against the arrow on the diagram: solve the "
        "equation, and keep the sign that comes out.",
        "A sign was lost on the way to {thing}: a term that changes sides changes its sign.",
    ),
    "sense": (
        "The size is right; its sign does not go with the arrow you drew.",
        "The number is read along your own arrow: plus if the force acts as drawn, minus if it acts "
        "against it.",
        "{subject} is given as if its arrow were drawn the other way: read it along your own arrow.",
    ),
    "unit": (
        "The figures fit, but not the unit they are read in.",
        "The value is read in the unit of the problem unless another stands behind it.",
        "{subject} came out in another unit: write that unit behind the number.",
    ),
    "rounding": (
        "This value is rounded too hard.",
        "What is rounded early spreads into every later result; three figures keep later sums closed.",
        "The value of {thing} needs more figures.",
    ),
    "no-arm": (
        "This is a moment still, not a force.",
        "In a sum of moments the unknown stands with its arm; the last step divides by that arm.",
        "{subject} was not divided by the arm that stands beside it in its equation.",
    ),
    "component": (
        "This is a component, or the force divided or multiplied by the wrong factor.",
        "An equation holds the unknown times the factor of its component; the force is what is left after "
        "dividing by that very factor.",
        "{subject} has a factor beside it in its equation: divide by that one, once.",
    ),
    "upside-down": (
        "A ratio in the working of this value stands upside down.",
        "From one component of a member to the other the slope triangle gives the ratio: the side along what "
        "is wanted stands above, the side along what is known below.",
        "In the working of {thing}: see which of the two lengths belongs below.",
    ),
    "angle-mode": (
        "This follows from your line only with its angle taken as radians.",
        "Sine and cosine need to know which angle they are given: degrees, for this line.",
        "Set the calculator to degrees and work {thing} out once more.",
    ),
    "missing": (
        "A number of your line did not come into this value.",
        "Everything in the line but the unknown goes to the other side, with its sign turned.",
        "One of the numbers in the line of {thing} was left behind on the way: go through them.",
    ),
    "carried": (
        "This is the value of something else.",
        "Each line is solved for the unknown that is named; write the name beside the number.",
        "What you give for {thing} is your result for another force: see for which one you solved.",
    ),
}
"""Look, reason and place of mistakes that read otherwise at a value than in a line."""

MOVED = (
    "A number of your line came into this value with the wrong sign.",
    "A term that goes over to the other side of the equals sign changes its sign.",
    "One of the numbers in the line of {thing} kept its sign on the way, or turned it where it stood.",
)
"""The same of a value whose size is wrong because a number was moved with its sign."""

POINT_SAID = (
    "The figures fit, but the decimal point does not stand where it belongs.",
    "A glance at the size of the loads shows how large a force can be; each step from one unit to another moves the "
    "point by three places.",
    "Count the places once more in the value of {thing}, and between one unit and another.",
)
"""The same of a value that is ten or a hundred times too large or too small."""

UNIT_SAID = (
    "The figures fit, but not the unit written behind them.",
    "The forces of a line come out in the unit that its loads are given in.",
    "{subject} came out in another unit than the one behind it: write the one it came out in, or turn the "
    "figures into yours.",
)
"""The same of a value with another unit written behind it."""

LENGTHS_MIXED = (
    "The figures fit only where a distance in {other} counts as one in {own}.",
    "A distance keeps its unit: before numbers are multiplied or divided, all distances of a line go into "
    "one unit.",
    "In the line of {thing} one distance is in {other}, and others are in {own}: turn it into {own} first.",
)
"""The same of a value from a line in which distances stand in two units, as it says itself."""

WAY_SAID = (
    "The size is right; the way it acts is not.",
    "A plus in the result means that the force acts along its arrow on the diagram, a minus that it "
    "acts against it; the word follows from both.",
    "The way {thing} acts was read off wrongly: take the sign of your result, and your arrow.",
)
"""The same of a wrong sign or sense where the student says in a word how the force acts."""

OF_OTHER_SUPPORT = (
    "This is the value of something else.",
    "A sum of moments about one support leaves out what acts there, and gives what acts at another.",
    "What you give for {thing} acts at another support: see about which point you took the moments.",
)
"""The same of a reaction that is given as what another support does."""

OF_OTHER_MEMBER = (
    WORDS["carried"][0],
    WORDS["carried"][1],
    "What you give for {thing} is what another member carries: see for which one you solved.",
)
"""The same of a member that is given what another one carries."""


def words_of_value(
    code: str, *, way: bool, moved: bool, unit: bool, point: bool
) -> tuple[str, str, str] | None:
    """The words for a mistake in a value, None for those of its line.

    `way`: its sense is said in words or by an arrow; `moved`: a sign of its working, not its own; `unit`: it has one behind it;
    `point`: only its decimal point is elsewhere.
    """
    if point:
        return POINT_SAID
    if way:
        return WAY_SAID
    if moved:
        return MOVED
    return UNIT_SAID if unit else WORDS.get(code)
