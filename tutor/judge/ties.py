"""How is it said that other mistakes explain a line as well as those that are named?"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from tutor.judge.verdict import Mistake
from tutor.text import lowered

MOST_NAMED = 3
LEVELS = ("text", "reason", "place")
SUBJECT = re.compile(r"([^.?:;]+?) ((?:has|is|stands) .*)")
NEXT = re.compile(r"(?<=[.?]) (?=[A-ZΣ])")


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
    told = replace(mistake, text=either(texts), reason=" ".join(reasons), place=either(places))
    return replace(told, alike=_doubted(mistake, others))


def _pair(mistakes: tuple[Mistake, ...], other: tuple[Mistake, ...]) -> tuple[Mistake, ...]:
    """Two mistakes with the other account beside them; one that both accounts share goes first."""
    own, its = _called(mistakes), _called(other)
    new = [m for m in other if (m.code, m.force) not in own]
    if not new:
        return mistakes
    shared = [m for m in mistakes if (m.code, m.force) in its]
    told = [*shared, *(replace(m, alike=_doubted(m, new)) for m in mistakes if m not in shared)]
    texts, reasons, places = (_beside(level, told, new, shared) for level in LEVELS)
    return tuple(
        replace(m, text=text, reason=reason, place=place)
        for m, text, reason, place in zip(told, texts, reasons, places, strict=True)
    )


def _called(mistakes: Sequence[Mistake]) -> set[tuple[str, str | None]]:
    return {(m.code, m.force) for m in mistakes}


def _beside(
    level: str, mistakes: Sequence[Mistake], others: Sequence[Mistake], shared: Sequence[Mistake]
) -> list[str]:
    """What is said of each mistake at a level, with what is new in the others.

    What both accounts say is certain; only one thing in doubt is told as a choice, with the rest
    behind it or before it.
    """
    own: list[str] = [getattr(m, level) for m in mistakes]
    theirs = dict.fromkeys(getattr(m, level) for m in others)
    new = [text for text in theirs if text and text not in own]
    if not new:
        return own
    if level == "reason":
        return [f"{text} {new[0]}" if text == own[-1] else text for text in own]
    certain = {getattr(m, level) for m in shared} | theirs.keys()
    doubtful = list(dict.fromkeys(text for text in own if text not in certain))
    if len(doubtful) == 1:
        choice = either((doubtful[0], " ".join(new)))
        return [choice if text == doubtful[0] else text for text in own]
    begin = "Or neither is so" if doubtful else "There may be more"
    last = f"{own[-1]} {begin}: {lowered(claim(' '.join(new)))}."
    return [last if text == own[-1] else text for text in own]


def _doubted(mistake: Mistake, others: Sequence[Mistake]) -> tuple[str, ...]:
    """The other forces that may have been meant just as well."""
    forces = [m.force for m in others if m.force is not None and m.force != mistake.force]
    return tuple(dict.fromkeys((*mistake.alike, *forces)))


def either(sentences: Sequence[str]) -> str:
    """One sentence that says what each of these says, as a choice.

    Where they say the same of several things, it is said once; else they stand without their advice.
    """
    if len(sentences) == 1:
        return sentences[0]
    parts = [SUBJECT.fullmatch(text) for text in sentences]
    subjects = [lowered(part[1]) for part in parts if part is not None]
    said = {part[2] for part in parts if part is not None}
    if len(subjects) == len(sentences) and len(said) == 1:
        return f"Either {' or '.join(subjects)} {said.pop()}"
    return f"Either {'; or '.join(lowered(claim(text)) for text in sentences)}."


def claim(text: str) -> str:
    """What a hint says is wrong, without the full stop and without the advice behind its colon."""
    return ", and ".join(
        said if place == 0 else lowered(said)
        for place, said in enumerate(
            sentence.partition(": ")[0].rstrip(".?") for sentence in NEXT.split(text)
        )
    )
