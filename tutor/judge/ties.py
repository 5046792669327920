"""How is it said that other mistakes explain a line as well as those that are named?"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from tutor.judge.saying import Saying, either, together
from tutor.judge.verdict import Mistake
from tutor.text import lowered

MOST_NAMED = 3


def told_with(
    mistakes: tuple[Mistake, ...], accounts: Sequence[tuple[Mistake, ...]]
) -> tuple[Mistake, ...]:
    """Mistakes whose hints also speak of the other accounts of the line.

    Of a single mistake all are told, at most `MOST_NAMED`; of two only the best other account,
    since more than that cannot be taken in.
    """
    if not accounts or len(mistakes) > 2:
        return mistakes
    if len(mistakes) == 1:
        return (_one(mistakes[0], [m for account in accounts for m in account]),)
    return _pair(mistakes, accounts[0])


def _one(mistake: Mistake, others: Sequence[Mistake]) -> Mistake:
    """A single mistake with the others that explain the line as well."""
    every = (mistake, *others)
    looks, spots = (
        list(dict.fromkeys(said))[:MOST_NAMED] for said in (_looks(every), _spots(every))
    )
    reasons = list(dict.fromkeys(m.reason for m in every))[:MOST_NAMED]
    told = replace(mistake, text=either(looks), reason=" ".join(reasons), place=either(spots))
    return replace(told, alike=_doubted(mistake, others))


def _pair(mistakes: tuple[Mistake, ...], other: tuple[Mistake, ...]) -> tuple[Mistake, ...]:
    """Two mistakes with the other account beside them; one that both accounts share goes first."""
    own, its = _called(mistakes), _called(other)
    new = [m for m in other if (m.code, m.force) not in own]
    shared = [m for m in mistakes if (m.code, m.force) in its]
    told = [*shared, *(replace(m, alike=_doubted(m, new)) for m in mistakes if m not in shared)]
    texts, places = (_beside(said(told), said(new), said(shared)) for said in (_looks, _spots))
    reasons = _reasons([m.reason for m in told], [m.reason for m in new])
    return tuple(
        replace(m, text=text, reason=reason, place=place)
        for m, text, reason, place in zip(told, texts, reasons, places, strict=True)
    )


def _called(mistakes: Sequence[Mistake]) -> set[tuple[str, str | None]]:
    return {(m.code, m.force) for m in mistakes}


def _looks(mistakes: Sequence[Mistake]) -> list[Saying]:
    """What is said of the kind of each."""
    return [m.look for m in mistakes]


def _spots(mistakes: Sequence[Mistake]) -> list[Saying]:
    """What is said of the term of each."""
    return [m.spot for m in mistakes]


def _reasons(own: list[str], others: Sequence[str]) -> list[str]:
    """The reason of each mistake, with that of the other account behind the last."""
    new = next((text for text in others if text and text not in own), None)
    return own if new is None else [f"{text} {new}" if text == own[-1] else text for text in own]


def _beside(own: list[Saying], others: Sequence[Saying], shared: Sequence[Saying]) -> list[str]:
    """What is said of each mistake at a level, with what is new in the others.

    What both accounts say is certain; only one thing in doubt is told as a choice, with the rest
    behind it or before it.
    """
    texts = [saying.text for saying in own]
    new = [saying for saying in dict.fromkeys(others) if saying not in own]
    if not new:
        return texts
    doubtful = [each for each in dict.fromkeys(own) if each not in shared and each not in others]
    if len(doubtful) == 1:
        choice = either((doubtful[0], together(new)))
        return [choice if saying == doubtful[0] else saying.text for saying in own]
    begin = "Or neither is so" if doubtful else "There may be more"
    last = f"{texts[-1]} {begin}: {lowered(together(new).claim)}."
    return [last if saying == own[-1] else saying.text for saying in own]


def _doubted(mistake: Mistake, others: Sequence[Mistake]) -> tuple[str, ...]:
    """The other forces that may have been meant just as well."""
    forces = [m.force for m in others if m.force is not None and m.force != mistake.force]
    return tuple(dict.fromkeys((*mistake.alike, *forces)))
