"""May a clause of a sentence be left out, and how does it lead on to the formula behind it?

Talk is left out: reasons, what is called how, what is done next. What takes back what is said, belongs to
a formula or draws a force otherwise is no talk, however much of it is words.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, field

from tutor.notation.elements.lexicon import DENYING, MEANINGS, WAYS, folded, says
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import LETTERS, NAME
from tutor.notation.sentences.bits import Bit
from tutor.notation.sides.ending import COUNTING, SMALL, unknown

_REVERSE = re.compile(
    rf"\b(?:{DENYING}|wrong(?:ly)?|false(?:ly)?|incorrect(?:ly)?|instead|rather than|mistaken?(?:ly)?|mistakes?|errors?|untrue|"
    r"unlike|nor|cannot|contrary|opposed|no longer|falsch\w*|statt|doubt\w*|forg[eo]t\w*|"
    r"should have been|ought to|would (?:be|have)|is it|does it)\b|\w+n't\b|\b(?:is|are|was|do|does|did|ca|could|wo|would|should|has|have|had)nt\b|\?",
    re.IGNORECASE,
)
TURNS_NOTHING = re.compile(
    r"\b(?:(?:do not|don'?t|not to|never|let's not) forget\w*|(?:not|isn'?t|aren'?t) (?:loaded|in (?:one |a )?(?:straight )?line|collinear|forgetting|yet)"
    r"|(?:does not|doesn'?t|do not|don'?t|cannot|can not|can'?t|won'?t) (?:act|pass|push|pull|move|turn|resist|come|appear|enter|matter|need|take|carry|bear|contribute|feel|sit|hang|lie|stand|meet|touch|reach|show|exist|help|change|lift|stop|stretch|lean|slide|bend|tip|swing|support|rise|sink|fall|drop|spread|rock|roll|budge|hold (?:up|it|any|the|on)|do (?:any|much|a thing|it))\w*"
    r"|keine?[rn]? (?:[a-zäöü]+ ){0,2}(?:last|kraft|lasten|kr[äa]fte|belastung(?:en)?)|not (?:up|down|left|(?<!this is not )(?<!that is not )(?<!it is not )(?<!'s not )(?<!ts not )right|\w+wards?)\b|(?:(?<=[a-z][xyhv] )|(?<=[a-z]_[xyhv] ))not there\b|not in (?:this|that|it|here|the (?:sum|equation))\b|not only|if not|whether or not)\b"
    r"|\b(?:compression|compressive|a strut|struts?|druck)\b,? *(?:and *|but *|so *)?not *(?:in |an? |under )?(?:tension|tensile|a tie|ties?|zug)\b"
    r"|\b(?:tension|tensile|a tie|ties?|zug)\b,? *(?:and *|but *|so *)?not *(?:in |an? |under )?(?:compression|compressive|a strut|struts?|druck)\b",
    re.IGNORECASE,
)
BECAUSE = frozenset((
    "since", "because", "bc", "bcs", "bec", "cuz", "coz", "as", "for", "da", "weil", "denn", "seeing", "noting", "note", "owing", "due", "from", "given",
))  # fmt: skip
PREMISE = frozenset((
    "with", "using", "putting", "substituting", "inserting", "recall", "recalling", "know", "knowing", "known", "since",
    "because", "as", "given", "where", "mit", "remember", "remembering", "had", "found", "plugging", "setzt", "sub", "subs",
    "subst", "subbing", "substitute", "substituted", "plug", "put", "use", "insert", "w",
))  # fmt: skip
CONCLUDING = frozenset((
    "whence", "yields", "yield", "yielding", "requires", "require", "obtain", "obtains", "get", "gets", "find", "finds",
    "leaves", "or", "meaning", "thats", "that's",
))  # fmt: skip


GIVEN = re.compile(
    rf" *[{LETTERS}][{LETTERS}0-9_{{}}]* *= *[-+]? ?[0-9.,]*[0-9] (?=[{LETTERS}][\w{{}}]* *=)"
)
"""A value that is put in, with the next statement right behind it."""


@dataclass
class Clause:
    """The bits of a clause, and what they say: pieces to be kept with what they are spelled as."""

    bits: Sequence[Bit]
    pieces: list[tuple[int, int, str]] = field(default_factory=list)

    @property
    def start(self) -> int:
        return self.bits[0].start

    @property
    def end(self) -> int:
        return self.bits[-1].end

    def keep(self, start: int, end: int, spelled: str) -> None:
        """Keeps a piece under a spelling that is no longer than it is."""
        self.pieces.append((start, end, spelled.ljust(end - start)))


def piece_of_formula(
    text: str, clause: Clause, names: Names, behind: bool, leads: bool
) -> tuple[int, int] | None:
    """Where a clause has something in it that belongs to a formula, which must not be left out; else None.

    An operator; beside a formula also a number, a word that counts, or what is no word of any language.
    """
    if not any(
        bit.kind != "formula" or names.meanings(text[bit.start : bit.end]) for bit in clause.bits
    ):
        return clause.start, clause.end
    for index, bit in enumerate(clause.bits):
        said = text[bit.start : bit.end]
        if bit.kind == "formula" and _OPERATED.search(_RATIO.sub(" ", said)) is not None:
            return bit.start, bit.end
        if bit.kind == "formula" and (term := _TERM.fullmatch(said)) and names.plainly(term[1]):
            return bit.start, bit.end
        if not behind and not leads:
            continue
        if bit.kind == "word" and not is_speech(said, names):
            return bit.start, bit.end
        if bit.kind == "aside" and (index or behind) and text[bit.start - 1] != " ":
            return bit.start, bit.end
        beside = (behind and index == 0) or (leads and index == len(clause.bits) - 1)
        if beside and (said.lower() in COUNTING or (bit.kind == "formula" and said[0].isdigit())):
            return bit.start, bit.end
    return None


_OPERATED = re.compile(r"[-+*/^√=°|<>&]")
_TERM = re.compile(rf"[0-9][0-9.,]* ?([{LETTERS}][\w{{}}-]*)")
"""A force with its factor: 4Ax."""
_RATIO = re.compile(
    r"[0-9.]+ ?°|(?<![\w.])[0-9]+(?:[-/][0-9]+)+(?![\w.])|(?<=[A-Z0-9])-(?=[A-Z][0-9])|^[-+](?=[0-9.]+)"
)
"""An angle, a slope, a triangle of 3-4-5 or the name of a member, which calculate nothing in talk."""


def is_speech(word: str, names: Names) -> bool:
    """Whether a word is one of a language: of the lexicon, or with letters alone, three at least."""
    if (
        word == "."
        or names.joint(word) is not None
        or folded(word) in MEANINGS
        or word.lower() in SMALL
    ):
        return True
    if not all(part.isalpha() for part in re.split(r"['-]", word) if part):
        return False
    return len(word) > 2 and unknown(word.replace("'", ""), names)


def reverses(text: str, clause: Clause) -> re.Match[str] | None:
    """The word by which a clause takes back what is said, if it has one that no reason explains."""
    said = text[clause.start : clause.end]
    harmless = TURNS_NOTHING.sub(lambda found: " " * len(found[0]), said)
    first = folded(text[clause.bits[0].start : clause.bits[0].end])
    if (
        first in BECAUSE
        and _REVERSE.search(re.sub(r"\b(?:not|nicht|kein\w*)\b|\w+n't\b", " ", harmless)) is None
    ):
        return None
    return _REVERSE.search(harmless)


def declares(text: str, clause: Clause) -> bool | None:
    """Whether a clause only says how things are called or drawn: "let F_AB be the tension in AB".

    None where it draws a force otherwise than it is taken here, so that what follows means something else.
    """
    words = words_of(text, clause)
    if not words or words[0] not in (
        "let",
        "assume",
        "assuming",
        "suppose",
        "supposing",
        "denote",
        "call",
        "calling",
    ):
        return False
    if any(bit.kind == "formula" for bit in clause.bits):
        return True
    turned = any(
        says(word, "C", "left", "right", "up", "down") and not says(word, "y", "x")
        for word in words
    )
    return None if turned else True


def introduces(text: str, clause: Clause) -> bool:
    """Whether a clause ends in a word that an equation may follow: so, gives, we have, that."""
    words = [bit for bit in clause.bits if bit.kind == "word"]
    last = folded(text[words[-1].start : words[-1].end]) if words else ""
    leads = says(last, "so", "and", "where", "lead", "because", "sum", "resolve")
    return (
        leads
        or last in CONCLUDING
        or last in PREMISE
        or last in ("that", "write", "reads", "equation", "or")
    )


def concludes(text: str, clause: Clause) -> bool:
    """Whether a clause has a word by which what follows is said to come out of what stands before."""
    words = words_of(text, clause)
    return any(says(word, "so") or word in CONCLUDING for word in words)


def puts_in(text: str, clause: Clause) -> bool:
    """Whether the formula behind a clause is a value that is put in, or given as a reason."""
    words = words_of(text, clause)
    near = {*words[:2], *words[-3:]}
    return bool(near & PREMISE) and not any(says(word, "so") for word in words[-2:])


def holds(text: str, clause: Clause) -> bool:
    """Whether talk has a number, a force or a word of a result in it, and so may say more than was read."""
    if len(clause.bits) == 1 and clause.bits[0].kind == "word":
        return False
    for bit in clause.bits:
        said = text[bit.start : bit.end]
        if bit.kind == "formula" or (bit.kind == "aside" and re.search(r"[0-9]", said)):
            return True
        words = [said] if bit.kind == "word" else re.findall(r"[^\W\d_]+", said)
        if any(says(word, *WAYS, "zero") for word in words):
            return True
    return False


def claims(text: str, clause: Clause, names: Names) -> bool:
    """Whether a clause is an equation, or names a force and has a number beside it."""
    formulas = [text[bit.start : bit.end] for bit in clause.bits if bit.kind == "formula"]
    named = any(map(names.meanings, NAME.findall(" ".join(formulas))))
    figure = any(
        said[0].isdigit() or ("=" in said and any(map(str.isdigit, said))) for said in formulas
    )
    equation = any("=" in said for said in formulas)
    return (named and (figure or equation)) or (figure and equation)


def words_of(text: str, clause: Clause) -> list[str]:
    return [folded(text[bit.start : bit.end]) for bit in clause.bits if bit.kind == "word"]
