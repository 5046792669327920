"""How is the outcome of a review said to a student? Never with a number."""

from __future__ import annotations

from tutor.homework.findings import Review
from tutor.homework.sheet import place_in_words


def summary(review: Review) -> str:
    """The outcome in a sentence or two."""
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
    if len(review.places) > 1:
        return f"It first goes wrong at {where}; the numbers alone do not tell which of them."
    return f"It first goes wrong at {where}."
