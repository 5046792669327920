"""How is a line laid out: where does one statement end, and which numbers only count the lines?"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Literal

from tutor.notation.elements.lexicon import MEANINGS, folded, says
from tutor.notation.lines.found import Found
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import COUNT, LETTERS, NAME

Joint = Literal["", "so", "beside", "colon"]

_MARK = rf"(?:{COUNT}|[a-hA-H]|\*{{1,3}}|†)'?"
_OF_CHAPTER = r"[1-9][0-9]?\.[0-9]{1,2}[a-z]?"
_IN_CHAPTER = rf"[(\[]{_OF_CHAPTER}[)\]]"
"""The number of a line in a book: (3.12)."""
_EQUATION = r"(?:(?:see +)?(?:eqn?s?|equations?|gl|gleichung|[ée]q|[ée]quation|ec|ecuaci[oó]n|line|step|schritt|[ée]tape|paso|nr|no|fig(?:ure)?)\b\.? *)"
_CIRCLED = "①-⑳❶-❿➀-➉"
_FRONT = re.compile(
    rf" *(?:{_IN_CHAPTER}(?= )|{_OF_CHAPTER}(?:\)?:|\))(?= )|(?:[([]{_EQUATION}?{_MARK}[)\]]|{_MARK}\)|(?:[0-9]{{1,2}}|[ivx]{{1,4}}|[a-h])\.|{_EQUATION}[([]?(?:{_OF_CHAPTER}|{_MARK})[)\]]?)(?=[ :.])[:.]*"
    rf"|[{_CIRCLED}•‣◦▪●○☐☑✓✔»>]+) +",
    re.IGNORECASE,
)
_SPACED_FRONT = re.compile(r" *[0-9]{1,3}(?:\t|  )\s*(?=[^-+*/=^\s0-9]|[0-9.,]+ ?[A-Za-z(√][^=]*=)")
_TABBED_FRONT = re.compile(r" *[1-9][0-9]?\.[0-9]{1,2}\t\s*(?=[^*/=^\s][^\t]*$)")
"""A number with a gap behind it: what a row goes by, or else a factor or, of a section, a term."""
_MAYBE_FACTOR = re.compile(r" *(?:[([][0-9]{1,2}(?:\.[0-9]{1,2})?[)\]] [^ ]|[0-9]{1,2}\. )")
_BACK = re.compile(
    rf"(?<! )(?P<gap> *+(?:(?:\.{{2,}}|…+|[-–—]{{1,}}|→|⇒|-+>|,) *+)?)(?:(?P<count>[([<]{_EQUATION}?{_MARK}[)\]>])|{_EQUATION}[([]?{_MARK}[)\]]?"
    rf"|(?P<circled>[{_CIRCLED}])|(?<=\.\.\.)[0-9]{{1,2}}|(?<=\.\. )[0-9]{{1,2}}|(?<=  ){_IN_CHAPTER})[ .:]*$",
    re.IGNORECASE,
)
_TICKS = re.compile(r"(?:(?<=[^\d. ])\.(?!\.))?[ ,;!?✓✔☑√✅👍□■∎\"»]*$")
_SEPARATOR = re.compile(
    rf"(?<=[0-9)\]}}TtCcNbpkmns])(?= +(?:(?:(?<=  )[0-9.]+ ?\*? ?)?[{LETTERS}][{LETTERS}0-9_'{{}}-]*+ *=|(?:Σ *|[Ss]um *)?[Ff]_?[XYxy](?![{LETTERS}0-9_])))|⇒|∴|∵|=+>|[;,:]|[-]+>|→|(?<![{LETTERS}0-9_'{{])(?:i\.e\.|d\.h\.|which gives|so that|that is|par suite"
    rf"|por lo tanto|por tanto|d'o[ùu]|par cons[ée]quent|[{LETTERS}]{{2,12}})(?![{LETTERS}0-9_'}}(])|\.(?= )"
)
ANGLE = r"(?:[θαβγδφϕψϑ]|theta|alpha|beta|gamma|delta|phi|psi)"
DEFINES = re.compile(
    rf" *(?:(?P<function>sin|cos|tan|sen|tg) *\(? *)?(?P<angle>{ANGLE}) *\)? *=", re.IGNORECASE
)
"""The start of what says how large an angle is: θ = ..., tan θ = ..."""
_LENGTH = re.compile(r"[a-zL] *= *[0-9.(]")
_MORE = re.compile(r"[^ ,;:.)\]]")


@dataclass(frozen=True)
class Piece:
    """A piece of a line, how it is joined to the one before it, and the sign behind it."""

    start: int
    end: int
    joint: Joint
    before_colon: bool = False


@dataclass(frozen=True)
class Numbering:
    """Where the line itself starts and ends, without its own numbers; `unsure` where they may be factors."""

    start: int
    end: int
    unsure: bool


def numbers_apart(text: str, typed: str, factors: bool) -> Numbering:
    """The line without the number it goes by at either end, which is never computed with.

    `typed` is the text before look-alikes were replaced, column for column. With `factors` a bracket
    behind or before one space is taken as a factor after all.
    """
    unsure, start = False, _bullet(text, typed)
    found = _FRONT.match(text, start)
    if found is not None and text[found.end() : found.end() + 1] not in ("", *"=*/^)]}"):
        unsure = _MAYBE_FACTOR.match(text, start) is not None
        if not (unsure and factors):
            start = found.end()
    if (spaced := _SPACED_FRONT.match(typed)) is not None:
        unsure, start = True, spaced.end() if factors else start
    if (tabbed := _TABBED_FRONT.match(typed)) is not None:
        unsure, start = True, start if factors else tabbed.end()
    end = _unticked(text, len(text))
    if (found := _BACK.search(text[:end])) is not None and found.start() > start:
        kind = _apart(found, text, typed)
        unsure = unsure or kind == "unsure"
        if kind == "number" or (kind == "unsure" and not factors):
            end = found.start()
    return Numbering(start, end, unsure)


def _bullet(text: str, typed: str) -> int:
    """Where the line starts behind a bullet or an opening quotation mark."""
    start = len(text) - len(text.lstrip())
    mark = typed[start : start + 1]
    listed = mark == "*" and text[start + 1 : start + 2] == " "
    return start + 1 if listed or (mark and mark in '•·◦“„«"') else 0


def _unticked(text: str, end: int) -> int:
    """Where the text ends without the ticks and stops behind it; a number keeps its point."""
    found = _TICKS.search(text[:end])
    return found.start() if found is not None and found[0].strip() else end


def _apart(found: re.Match[str], text: str, typed: str) -> str:
    """Whether a number at the end counts the lines, is a factor, or may be either."""
    gap, before = found["gap"], text[: found.start()].rstrip()
    if not before or before[-1] in "=+*/^(-" or ("=" not in before and not found["circled"]):
        return "factor"
    if found["count"] is None:
        return "number"
    dashes = gap.strip()
    if dashes in ("", ","):
        if not gap:
            return "factor"
        plain = re.fullmatch(r"[([][0-9]{1,2}[)\]]", found["count"]) is not None
        if re.fullmatch(r"[([<][cC][)\]>]", found["count"]):
            return "factor"
        return "unsure" if plain and gap == " " else "number"
    if re.fullmatch(r"-", dashes):
        at = found.start() + len(gap) - len(gap.lstrip())
        return (
            "number"
            if typed[at : at + 1] in "—–" and gap.startswith(" ")
            else ("unsure" if gap == " - " else "factor")
        )
    return "number"


def pieces(text: str, start: int, end: int, line: Found) -> list[Piece]:
    """The statements and headings of a line, cut at what stands between whole ones.

    A number and a name behind it, as in AB = 5 BC = 3, may be a product or the end of one statement
    and the beginning of the next: that is a choice of the line.
    """
    found: list[Piece] = []
    depth, at, counted = 0, start, start
    joint: Joint = ""
    for sign in _SEPARATOR.finditer(text, start, end):
        depth = _depth(text, counted, sign.start(), depth)
        counted = sign.start()
        kind = _kind(text, at, sign, end, line) if depth == 0 else None
        if kind is None:
            continue
        found.append(Piece(at, sign.start(), joint, kind == "colon"))
        at, joint = sign.end(), kind
        counted = at
    return [*found, Piece(at, end, joint)]


def _depth(text: str, start: int, end: int, depth: int) -> int:
    for char in text[start:end]:
        if char in "([{":
            depth += 1
        elif char in ")]}":
            depth = max(0, depth - 1)
    return depth


def _kind(text: str, at: int, sign: re.Match[str], end: int, line: Found) -> Joint | None:
    """How a sign joins what stands before it with what follows; None where it joins nothing."""
    names = line.names
    said, start, stop = sign.group(), sign.start(), sign.end()
    before, after = text[at:start].strip(), text[stop:end].strip()
    if said == "":
        return _blank(before, after, text.startswith("  ", stop), line)
    if said in ";∵":
        return "beside"
    if said in "⇒∴" or (said[0] == "=" and said[-1] == ">"):
        return "so"
    if said == ":":
        ratio = text[start - 1 : start].isdigit() and text[stop : stop + 1].isdigit()
        return None if ratio else "colon"
    if said == ",":
        digits = text[start - 1 : start].isdigit() and text[stop : stop + 1].isdigit()
        return None if digits else "beside"
    if said == ".":
        if "=" not in before and after and _place_in_words(before, names):
            return "beside"
        sentence = before and "=" in before and "=" in after and not before[-1].isspace()
        return (
            "beside"
            if (sentence and not re.search(r"\b[A-Za-z]{1,4}$", before))
            or (sentence and re.search(r"(?:kN|N|lb|kip|kips|m|ft|[TC]|[0-9)])$", before))
            else None
        )
    if said == "→" or said.endswith(">"):
        return _arrow(before, after, text, start)
    led = text[:at].strip() if said.lower() == "or" and not before else before
    return _word(said, led, after, names)


def _blank(before: str, after: str, wide: bool, line: Found) -> Joint | None:
    """Whether a name behind a number and a blank, or a wide gap, begins a statement of its own."""
    factor = re.match(r"[0-9.]+ ?\*? ?", after) if wide else None
    word = NAME.match(after, factor.end() if factor else 0)
    if "=" not in before or "=" not in after or word is None or not _NUMBER_ENDS.search(before):
        return None
    if _ZERO.search(before) and after[word.end() :].lstrip()[:1] == "=":
        return "beside"
    unknown = line.names.plainly(word[0])
    if not unknown and after[word.end() :].lstrip()[:1] == "=":
        unknown = line.names.meant(word[0])
    if _SUM.match(after):
        return None if unknown else "beside"
    if not unknown:
        return None
    earlier = {name for each in _NAMES.findall(before) for name in line.names.plainly(each)}
    if _ENDED.search(before) or factor or earlier & set(unknown):
        return "beside"
    line.open.add("apart")
    return "beside" if line.choice.apart != (wide and bool(earlier)) else None


_NAMES = re.compile(rf"[{LETTERS}][{LETTERS}0-9_'{{}}]*+")
_ZERO = re.compile(r"= ?0$")
_SUM = re.compile(rf"(?:Σ *|[Ss]um *)?[Ff]_?[XYxy](?![{LETTERS}0-9_])")
_FORCE = r"(?:[kM]?N|KN|lbf?|lbs|kips?|k)"
_LONG = r"(?:mm?|cm|ft|in)"
_ENDED = re.compile(
    rf"[0-9] ?(?:(?:{_FORCE}(?:[ .*·-]?{_LONG})?|{_LONG}[ .*·-]?{_FORCE})(?: ?\(?[TtCc]\)?)?|\(?[TtCc]\)?)$"
)
_NUMBER_ENDS = re.compile(
    rf"[0-9TtCcNbpk)\]}}]$|[0-9)\]}}] ?(?:{_FORCE}[ .*·-]?)?(?:{_FORCE}|{_LONG})$"
)


def _place_in_words(text: str, names: Names) -> bool:
    """Whether a sentence only says where: "Joint E", "Consider the left part"."""
    words = _WORDS.findall(text)
    spoken = [word for word in words if len(word) > 2 and folded(word) in MEANINGS]
    named = [word for word in words if names.joint(word) is not None]
    return bool(spoken) and len({*spoken, *named, *_SHORT}) == len({*words, *_SHORT})


_WORDS = re.compile(rf"[{LETTERS}][{LETTERS}0-9'-]*|[^ ,{LETTERS}]")
_SHORT = frozenset({"at", "of", "in", "a", "on", "um"})


def _arrow(before: str, after: str, text: str, start: int) -> Joint | None:
    """An arrow between two statements concludes; at the end of one it says which way, before one it heads."""
    if not before or not after or after[0] in ",;:)+Σ=":
        return None
    if "=" in text[:start] and "=" in after and _SPOKEN.fullmatch(before):
        return "so"
    if before[-1] in "+(" or ("=" not in before and not any(map(str.isdigit, before))):
        return None
    if _VALUE_ALONE.fullmatch(before) and after[0] in "+-":
        return None
    return "so"


_SPOKEN = re.compile(r"(?:[a-z]+ )+[a-z]{3,}|[a-z]{4,}")
"""Words behind a statement, before what is concluded."""
_VALUE_ALONE = re.compile(r"[0-9.,]+ ?(?:kN|N|lb|kips?|k)?")
"""A load with its arrow, before the sum goes on: 8 kN → - 0.8 F_AC."""


def _word(word: str, before: str, after: str, names: Names) -> Joint | None:
    if word.lower() in _REASON:
        return "beside" if "=" in before and _is_formula(word, after, names) else None
    if (
        " " not in word
        and "'" not in word
        and not says(word, "so", "and", "where")
        and word.lower() != "or"
    ):
        return None
    if len(word) < 2 or names.plainly(word) or not (word.islower() or word.istitle()):
        return None
    if says(word, "where") and (DEFINES.match(after) or _LENGTH.match(after)):
        return "beside"
    if " " in word or "'" in word or "." in word:
        return "so"
    if after[:1] == ":":
        return None
    if says(word, "so") and _MORE.search(after):
        return None if word.lower() == "also" and _VERB.search(before) else "so"
    if (says(word, "and") or word.lower() == "or") and "=" in before and ("=" in after):
        return "beside" if says(word, "and") else "so"
    return None


_VERB = re.compile(r"\b(?:is|are|was|were|be|has|have)$")
"""Behind these "also" is the English word: AB is also a strut."""
_REASON = frozenset(("because", "since", "bc", "bcs", "cause"))
"""Words before the equation that a value was found from."""


def _is_formula(word: str, text: str, names: Names) -> bool:
    """Whether nothing but an equation of forces stands behind a word that names none itself."""
    if "=" not in text or names.plainly(word) or names.two_joints(word):
        return False
    words = _NAMES.findall(text)
    return any(map(names.meanings, words)) and not any(
        len(each) > 2 and folded(each) in MEANINGS and not names.meanings(each) for each in words
    )
