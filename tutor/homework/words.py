"""How is the outcome of a review said to a student? Never with a number."""

from __future__ import annotations

from collections.abc import Sequence

from tutor.homework.findings import Finding, Review
from tutor.homework.sheet import place_in_words
from tutor.text import listed

STOPPED = (
    "The truss is large and not every explanation could be looked at: mend this place first, then "
    "check again."
)


def summary(review: Review, numbers: Sequence[int] = ()) -> str:
    """The outcome in a few sentences; `numbers` says in which line of a file each line stands."""
    said = [_outcome(review), review.note]
    undecided = [
        _called(f.name, numbers)
        for f in review.findings
        if _undecided(review, str(f.name), f.state)
    ]
    if undecided:
        said.append(f"{', '.join(undecided)} cannot be decided with so much left blank.")
    if review.decides is not None:
        said.append(f"Enter {review.decides}: it would decide.")
    elif review.more is not None:
        said.append(f"Enter {review.more} next: with it more can be told.")
    if review.stopped and review.first is not None:
        said.append(STOPPED)
    return " ".join(part for part in said if part)


def _called(name: str | int, numbers: Sequence[int]) -> str:
    """An entry by its name, a line by its number as typed."""
    if isinstance(name, str):
        return name
    return f"line {numbers[name] if name < len(numbers) else name + 1}"


def _undecided(review: Review, name: str, state: str) -> bool:
    return state == "unchecked" and name not in {refused.name for refused in review.refused}


def _outcome(review: Review) -> str:
    checked = [f for f in review.findings if f.state != "unchecked"]
    if not checked:
        return "There was nothing to check yet."
    if review.first is None and all(f.state == "right" for f in checked):
        return "Everything that was checked is right."
    if review.first is None:
        return "The values are right; a line is not what its heading says."
    where = " or ".join(place_in_words(place) for place in review.places)
    if not review.clear:
        return f"Something is wrong. The numbers do not tell for certain where: look at {where}."
    if review.rests:
        return ""
    if len(review.places) > 1:
        return f"It first goes wrong at {where}; the numbers alone do not tell which of them."
    return f"It first goes wrong at {where}."


def headline(review: Review) -> str:
    """The outcome, and first of all how much of the work could not be read."""
    names = list(dict.fromkeys(refused.name for refused in review.refused))
    if not names:
        return review.said
    what = "1 entry" if len(names) == 1 else f"{len(names)} entries"
    left_out = f"{what} could not be read and {'was' if len(names) == 1 else 'were'} not checked"
    if review.right:
        return f"{left_out[0].upper()}{left_out[1:]}: {listed(names)}. All that could be read is right."
    return f"{review.said} {left_out[0].upper()}{left_out[1:]}: {listed(names)}."


STATES = {
    "right": "is right",
    "wrong": "is wrong",
    "unchecked": "was not checked",
}
STANDS = "is right as an equation, and the value behind it is wrong"
OF_CAUSE = {"certain": "", "likely": "Most likely: ", "unclear": "Perhaps: "}
FOLLOWS = {
    "certain": "is wrong only because of what came before",
    "likely": "is wrong, most likely only because of what came before",
    "unclear": "is wrong; how it came about is not clear",
}


def outcome(finding: Finding, about: str = "") -> str:
    """What is said of one entry, as the end of a sentence, with its mistake and where it was made.

    `about` is the equation in which the mistake was made, in words.
    """
    if finding.state == "follows":
        return f"{FOLLOWS[finding.sure]}."
    said = f"{STANDS if finding.stands else STATES[finding.state]}."
    if finding.state != "wrong":
        return said
    if finding.cause is None:
        return said if finding.sure == "certain" else f"{FOLLOWS['unclear']}."
    where = f"In {about}: {finding.cause.text}" if about else finding.cause.text
    return f"{said} {OF_CAUSE[finding.sure]}{where}"
