"""Which number do words say: twelve hundred, seven point oh five, eight seventeenths, one and a half?

The words are lower case, one an entry; one that a hyphen joins to the word before begins with it: "twenty", "-four".
"""

from __future__ import annotations

from collections.abc import Sequence

Words = Sequence[str]
_ONES = "zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen"
_SMALL = {word: number for number, word in enumerate(_ONES.split())} | {"nought": 0, "naught": 0}
_TENS = {
    "twenty": 20, "thirty": 30, "forty": 40, "fourty": 40, "fifty": 50, "sixty": 60, "seventy": 70, "eighty": 80, "ninety": 90,
}  # fmt: skip
_OTHER_PARTS = {
    "half": 2, "halve": 2, "third": 3, "quarter": 4, "fifth": 5, "eighth": 8, "ninth": 9, "twelfth": 12, "hundredth": 100, "thousandth": 1000,
}  # fmt: skip
_PARTS = (
    {f"{word}th": number for word, number in _SMALL.items() if number in (4, 6, 7, *range(10, 20))}
    | {f"{word[:-1]}ieth": number for word, number in _TENS.items()}
    | _OTHER_PARTS
)
NUMBER_WORDS = frozenset((*_SMALL, *_TENS, "half", "point"))
"""Those that a number may begin with, besides figures and the "a" of a half."""


def figure_said(word: str) -> str | None:
    """The figures of a joint's name that a word says: the zero or oh of L zero."""
    if word in _SMALL:
        return str(_SMALL[word])
    return "0" if word == "oh" else word if word.isdecimal() and len(word) <= 2 else None


def number_heard(words: Words, at: int) -> tuple[str, int] | None:
    """The number that begins at a word, as a formula has it, and where it ends; None where none does."""
    if (part := _one_part(words, at)) is not None:
        return f"(1/{part[0]})", part[1]
    whole = _whole(words, at)
    end = at if whole is None else whole[1]
    if _word(words, end) == "point":
        places = _places(words, end + 1)
        return places and (f"{whole[0] if whole else 0}.{places[0]}", places[1])
    if whole is None:
        return None
    if (parts := _fraction(words, at)) is not None:
        return f"({parts[0]}/{parts[1]})", parts[2]
    if _word(words, end) == "and" and (more := _less_than_one(words, end + 1)) is not None:
        return f"({whole[0]}+{more[0]}/{more[1]})", more[2]
    return str(whole[0]), end


def _word(words: Words, at: int) -> str:
    return words[at].lstrip("-") if at < len(words) else ""


def _small(words: Words, at: int) -> tuple[int, int] | None:
    """A number below a hundred, or one in figures."""
    word = _word(words, at)
    if word in _TENS:
        one = _SMALL.get(_word(words, at + 1), 0)
        return (_TENS[word] + one, at + 2) if 0 < one < 10 else (_TENS[word], at + 1)
    if word.isdecimal() and word.isascii() and len(word) < 10:
        return int(word), at + 1
    return (_SMALL[word], at + 1) if word in _SMALL else None


def _hundreds(words: Words, at: int) -> tuple[int, int] | None:
    found = _small(words, at)
    if _word(words, at) == "a" and _word(words, at + 1) in ("hundred", "thousand"):
        found = 1, at + 1
    if found is None or _word(words, found[1]) != "hundred" or not 0 < found[0] < 100:
        return found
    value, end = 100 * found[0], found[1] + 1
    rest = _small(words, _past_and(words, end))
    return (value + rest[0], rest[1]) if rest and 0 < rest[0] < 100 else (value, end)


def _whole(words: Words, at: int) -> tuple[int, int] | None:
    """A whole number below a million, however it is counted: twelve hundred, a thousand and five."""
    found = _hundreds(words, at)
    if found is None or _word(words, found[1]) != "thousand" or not 0 < found[0] < 1000:
        return found
    value, end = 1000 * found[0], found[1] + 1
    rest = _hundreds(words, _past_and(words, end))
    return (value + rest[0], rest[1]) if rest and 0 < rest[0] < 1000 else (value, end)


def _past_and(words: Words, at: int) -> int:
    return at + 1 if _word(words, at) == "and" else at


def _places(words: Words, at: int) -> tuple[str, int] | None:
    """The figures behind a point, one by one, or two of them as one number: point oh eight, point twenty-five."""
    found = _small(words, at)
    if found is not None and (found[0] > 9 or _word(words, at).isdecimal()):
        return (_word(words, at) if _word(words, at).isdecimal() else str(found[0])), found[1]
    figures = ""
    while (word := _word(words, at)) in ("oh", "o") or _SMALL.get(word, 10) < 10:
        figures += str(_SMALL.get(word, 0))
        at += 1
    return (figures, at) if figures else None


def _parts(words: Words, at: int) -> tuple[int, bool, int] | None:
    """How many parts a whole is cut into, whether several of them are said, and where the word ends."""
    tens = _TENS.get(_word(words, at), 0)
    word = _word(words, at + 1 if tens else at)
    many = word.endswith("s")
    found = _PARTS.get(word[:-1] if many else word, 0)
    if not found or (tens and not 2 < found < 10):
        return None
    return tens + found, many, at + (2 if tens else 1)


def _one_part(words: Words, at: int) -> tuple[int, int] | None:
    """The parts of which one is said: a half, a third, half."""
    if _word(words, at) == "half":
        return 2, at + 1
    found = _parts(words, at + 1) if _word(words, at) == "a" else None
    return None if found is None or found[1] else (found[0], found[2])


def _fraction(words: Words, at: int) -> tuple[int, int, int] | None:
    """What stands above and below the bar: eight seventeenths, seven twenty-fifths, one half.

    None where it may be cut in two ways: one hundred twenty fifths.
    """
    cut = _tops(words, at)
    found = [
        (top, parts[0], parts[2])
        for top, end in cut
        if (parts := _parts(words, end)) is not None and parts[1] == (top != 1) and parts[0]
    ]
    return found[0] if len({each[:2] for each in found}) == 1 else None


def _tops(words: Words, at: int) -> list[tuple[int, int]]:
    """The whole numbers that begin at a word and end before parts, with tens of these or without."""
    whole = _whole(words, at)
    if whole is None:
        return []
    tops = [whole]
    before = whole[1] - 1
    if _word(words, before) in _TENS and before > at:
        shorter = _whole(words[:before], at)
        hyphened = words[whole[1]].startswith("-") if whole[1] < len(words) else False
        tops = [shorter] if hyphened and shorter else [*tops, *([shorter] if shorter else [])]
    return tops


def _less_than_one(words: Words, at: int) -> tuple[int, int, int] | None:
    if (one := _one_part(words, at)) is not None:
        return 1, one[0], one[1]
    found = _fraction(words, at)
    return found if found is not None and found[0] < found[1] else None
