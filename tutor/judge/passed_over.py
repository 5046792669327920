"""What of a right line was not read as it stands there, and is therefore told?"""

from __future__ import annotations

from tutor.judge.verdict import Remark
from tutor.notation import Line
from tutor.notation.lexicon import known_word

PASSED = "Passed over without being read: {words}."
LETTER_FOR_ZERO = "The letter {letter} is read as the number 0."


def remarks_on(line: Line) -> tuple[Remark, ...]:
    """A remark on words that nothing was made of, and one on a letter that was read as a figure."""
    unread = [
        word
        for span in line.passed
        if (word := line.text[span.start : span.end])
        and (span in line.unread or not all(map(known_word, word.split())))
    ]
    said = []
    if unread:
        said.append(PASSED.format(words=", ".join(f"“{word}”" for word in unread)))
    sides = (side for step in line.steps for side in step.sides if side.numeric)
    letters = {line.text[side.span.start : side.span.end] for side in sides} & {"O", "o"}
    said += [LETTER_FOR_ZERO.format(letter=letter) for letter in sorted(letters)]
    return tuple(Remark("passed", text) for text in said)
