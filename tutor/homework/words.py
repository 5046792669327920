"""How is the outcome of a review said to a student? Never with a number."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from tutor.homework.findings import Finding, Review
from tutor.homework.sheet import place_in_words
from tutor.text import listed, raised

COARSE = (
    "{names} {verb} farther off than a right value should be, which rounding may explain: work {them} "
    "out again with one figure more."
)
UNSOLVED = "Statics alone cannot give the forces of this truss, so nothing could be checked."
MOST_NAMED = 4
STOPPED = (
    "The truss is large and not every explanation could be looked at: mend this place first, then "
    "check again."
)


def summary(review: Review, numbers: Sequence[int] = ()) -> str:
    """The outcome in a few sentences; `numbers` says in which line of a file each line stands."""
    if review.first is None and not review.clear:
        return UNSOLVED
    said = [_outcome(review), review.note]
    undecided = [_called(f.name, numbers) for f in review.findings if _undecided(review, f)]
    if undecided:
        said.append(f"{', '.join(undecided)} cannot be decided with so much left blank.")
    said += _coarse(review)
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


def _undecided(review: Review, finding: Finding) -> bool:
    """Whether it is blanks that leave an entry open."""
    told = {*(refused.name for refused in review.refused), *review.coarse}
    return finding.state == "unchecked" and str(finding.name) not in told


def _coarse(review: Review) -> Iterator[str]:
    """What to do about entries that rounding may have put so far off, and which bodies show it."""
    doubtful = [place_in_words(c.name) for c in review.closures if c.doubtful]
    if doubtful and review.first is None:
        where = listed(doubtful)
        verb = "does" if len(doubtful) == 1 else "do"
        yield f"{raised(where)} {verb} not quite close."
    if review.coarse:
        verb, them = ("is", "it") if len(review.coarse) == 1 else ("are", "them")
        yield COARSE.format(names=listed(_several(review.coarse)), verb=verb, them=them)


def _several(names: Sequence[str], of_others: str = "") -> list[str]:
    """The first of many names, and how many there are besides."""
    if len(names) <= MOST_NAMED:
        return list(names)
    others = len(names) - MOST_NAMED + 1
    return [*names[: MOST_NAMED - 1], f"{of_others}{others} others"]


def _outcome(review: Review) -> str:
    checked = [f for f in review.findings if f.state != "unchecked"]
    if not checked:
        return "There was nothing to check yet."
    if review.first is None and all(f.state == "right" for f in checked):
        if review.coarse or any(closure.doubtful for closure in review.closures):
            return "What could be decided is right."
        return "Everything that was checked is right."
    if review.first is None:
        return "The values are right; a line is not what its heading says."
    where = " or ".join(_several(list(map(place_in_words, review.places)), "one of "))
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
        return f"{raised(left_out)}: {listed(names)}. All that could be read is right."
    return f"{review.said} {raised(left_out)}: {listed(names)}."


STATES = {
    "right": "is right",
    "wrong": "is wrong",
    "unchecked": "was not checked",
    "undecided": "could not be decided",
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
    state = "undecided" if finding.undecided else finding.state
    said = f"{STANDS if finding.stands else STATES[state]}."
    if finding.state != "wrong":
        return said
    if finding.cause is None:
        return f"{FOLLOWS['unclear']}."
    where = f"In {about}: {finding.cause.text}" if about else finding.cause.text
    return f"{said} {OF_CAUSE[finding.sure]}{where}"
