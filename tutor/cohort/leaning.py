"""Which of two mistakes that explain a line equally well did this student make?

One line cannot tell, the others of the same student can: where a minus was lost or all members were
reversed, and the student reversed them elsewhere, they were reversed here too.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import replace

from tutor.cohort.facts import AnswerGiven, StudentWork


def leaning(works: Sequence[StudentWork]) -> tuple[StudentWork, ...]:
    """A student's works, each wrong line under that of its mistakes which explains most of their lines.

    Where several explain as many, the one named in the lesson stays.
    """
    answers = [answer for work in works for answer in work.answers]
    explains = Counter(code for answer in answers for code in _any_of(answer))
    return tuple(replace(work, answers=tuple(_leaning(work.answers, explains))) for work in works)


def _any_of(answer: AnswerGiven) -> tuple[str, ...]:
    return tuple(dict.fromkeys((*answer.codes, *answer.others)))


def _leaning(answers: Iterable[AnswerGiven], explains: Counter[str]) -> Iterable[AnswerGiven]:
    for answer in answers:
        if not answer.others:
            yield answer
            continue
        every = _any_of(answer)
        likely = max(every, key=explains.__getitem__)
        rest = tuple(code for code in every if code != likely)
        yield replace(answer, codes=(likely,), others=rest)
