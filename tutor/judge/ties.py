"""How is it said that other mistakes explain a line as well as those that are named?"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from tutor.judge.verdict import Mistake

MOST_NAMED = 3
LEVELS = ("text", "reason", "place")


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
    texts, reasons, places = (
        list(dict.fromkeys(getattr(m, level) for m in (mistake, *others)))[:MOST_NAMED]
        for level in LEVELS
    )
    told = replace(mistake, text=_or(texts), reason=" ".join(reasons), place=_or(places))
    return replace(told, alike=_doubted(mistake, others))


def _pair(mistakes: tuple[Mistake, ...], other: tuple[Mistake, ...]) -> tuple[Mistake, ...]:
    """Two mistakes with the other account behind the last; one that both accounts share goes first."""
    own, its = _called(mistakes), _called(other)
    new = [m for m in other if (m.code, m.force) not in own]
    if not new:
        return mistakes
    shared = [m for m in mistakes if (m.code, m.force) in its]
    told = [*shared, *(replace(m, alike=_doubted(m, new)) for m in mistakes if m not in shared)]
    texts, reasons, places = (_behind(level, told, new) for level in LEVELS)
    return tuple(
        replace(m, text=text, reason=reason, place=place)
        for m, text, reason, place in zip(told, texts, reasons, places, strict=True)
    )


def _called(mistakes: Sequence[Mistake]) -> set[tuple[str, str | None]]:
    return {(m.code, m.force) for m in mistakes}


def _behind(level: str, mistakes: Sequence[Mistake], others: Sequence[Mistake]) -> list[str]:
    """What is said of each mistake at a level, with what is new in the others behind the last.

    It stands behind each where all say the same, since that is said once.
    """
    own: list[str] = [getattr(m, level) for m in mistakes]
    found = dict.fromkeys(getattr(m, level) for m in others)
    new = [text for text in found if text and text not in own]
    if not new:
        return own
    last = f"{own[-1]} {new[0]}" if level == "reason" else _or((own[-1], " ".join(new)))
    return [last if text == own[-1] else text for text in own]


def _doubted(mistake: Mistake, others: Sequence[Mistake]) -> tuple[str, ...]:
    """The other forces that may have been meant just as well."""
    forces = [m.force for m in others if m.force is not None and m.force != mistake.force]
    return tuple(dict.fromkeys((*mistake.alike, *forces)))


def _or(sentences: Sequence[str]) -> str:
    return " Or else: ".join(sentences)
