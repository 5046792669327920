"""What does a clause of words tell of the size in it: of which force it is, T or C, which way?

A subject, a verb of coming to, the size, and what is said behind it. The subject is a name, a noun for a member or a support,
or a word that points back. What may tell the size of something else, of a share or of several, tells nothing here.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from tutor.notation.elements.lexicon import WAYS, Meaning, folded, said, says
from tutor.notation.elements.tree import Span
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import LETTERS
from tutor.notation.sentences.aside_said import denied
from tutor.notation.sides.heeded import DENIES

MEMBERS = frozenset((
    "bar", "member", "rod", "strut", "tie", "post", "hanger", "jib", "rafter", "chord", "diagonal", "brace", "leg", "boom",
    "cable", "rope", "stay", "guy", "link", "mast", "spar", "pole", "string", "chain", "kingpost", "beam",
))  # fmt: skip
"""Nouns for what a member is."""
SUPPORTS = frozenset((
    "pin", "roller", "rest", "support", "bearing", "wall", "floor", "ground", "hinge", "reaction", "prop", "abutment", "guy",
    "stay", "link", "cable", "rope", "shoe", "pier", "pad", "chain",
))  # fmt: skip
"""Nouns for what holds a truss."""
_DRAWS = frozenset(("guy", "stay", "link", "cable", "rope", "chain", "tie", "string"))
"""What can hold by pulling alone."""
COMES = r"(?:works?|worked|comes?|came|turns?|turned|ends?|ended|amounts?)(?: +(?:out|up|down))?(?: +(?:at|to|as))?(?: +(?:be|being))?"
_SAYING = frozenset(("tie", "strut"))
"""Nouns that say T or C."""
_VERB = (
    rf"(?:{COMES}|coming|amounting|carr(?:y|ies|ied|ying)|tak(?:e|es|ing)|bear(?:s|ing)?|hold(?:s|ing)?|feel(?:s|ing)?|get(?:s|ting)?|got|sees|has|is"
    r"|makes?|making|push(?:es|ing|ed)?|pull(?:s|ing|ed)?|press(?:es|ing|ed)?|lift(?:s|ing)?|squeezed|squashed|stretched)"
)
_LINK = (
    r"(?:an?|the|of|by|in|with|at|to|as|it|that|this|back|down|up|left|right|upwards?|downwards?|together|apart|now|then|force|about"
    r"|around|roughly|its|on|both|joints?|ends?|pins?|truss|frame|bracket|roof|bridge|structure|approximately|approx|just|exactly|some|nearly|almost|be|being|carrying|taking|axial|straight"
    r"|tension|compression|ties?|struts?|pull|push|squeezed|squashed|pushed|pressed|pulled|stretched)"
)
_RUN = re.compile(rf"\b(?:{_VERB})(?:,? +{_LINK}\b)*+,? *$")
_IS = re.compile(r"(?:is|has|gets?|got|sees)\b")
"""Verbs by which a size without a way may be anything of the subject, and one of no subject is only said again: that is 6 kN (C)."""
_AS = re.compile(
    r"\b(?:makes?|making)\b(?P<between>[^,;:=0-9]*?)\ban? +(?:tie|strut|pull|push)(?: +(?:of|with|carrying))?(?: +(?:about|around|roughly))?,? *$"
)
"""That makes the end post a strut of 48 kip."""
_WORD = re.compile(rf"[{LETTERS}][\w{{}}'’-]*")
_ONLY_WORDS = re.compile(rf"[{LETTERS} ,'’-]*")
_AT_JOINT = re.compile(r"\b(?i:from|at|by|of) +(?:joint|node|pin) +[A-Z]\w?\b")
_LEADS = frozenset((
    "so", "then", "hence", "thus", "therefore", "and", "that", "this", "which", "means", "now", "the", "force", "in", "axial", "we",
    "i", "get", "gives", "it", "see", "find", "know", "a", "an", "finally", "its", "it's", "says", "my", "answer", "result", "value", "for", "of", "works", "out",
))  # fmt: skip
_WHICH_ONE = frozenset((
    "right", "left", "last", "top", "bottom", "inner", "outer", "upper", "lower", "end", "middle", "king", "queen", "long", "short",
    "sloping", "sloped", "inclined", "tilted", "slanted",
))  # fmt: skip
"""What tells one member from another of its kind."""
_OF_MORE = frozenset((
    "share", "shares", "part", "portion", "component", "components", "half", "double", "twice", "third", "quarter", "sum", "total", "all",
    "both", "two", "three", "four", "moment", "moments", "load", "loads", "weight", "weights", "lever", "distance", "length", "height",
    "span", "angle", "ratio", "difference", "times", "per", "each", "less", "more", "than", "rise", "average", "limit", "capacity",
    "most", "least", "could", "can", "might", "may", "would", "should", "if", "unless", "guess", "guessed", "thought", "think", "first",
    "before", "earlier", "instead", "expected", "without", "except", "wind", "had", "was", "were", "did", "other", "others", "vertical",
    "horizontal", "vertically", "horizontally", "sideways", "wrote", "unlike", "like", "opposite", "combined", "extra", "another", "stress",
    "neither", "minus", "plus", "beside", "besides", "suppose", "assume", "assumed", "drawn", "drew", "safe", "allowed",
))  # fmt: skip
"""Words by which a size may be that of something else than one force, or of none."""
_BEHIND = _LEADS | MEMBERS | SUPPORTS | frozenset((
    "is", "be", "being", "must", "under", "of", "on", "to", "left", "right", "there", "here", "pushed", "pressed", "squeezed", "squashed",
    "pulled", "stretched", "together", "apart", "with", "as", "acting", "acts", "upwards", "downwards", "what", "why", "really", "same", "one",
))  # fmt: skip
_ONE = re.compile(r" +ones?\b")
"""Behind a way that tells one member from another: the same as the left one."""
_UP_OF_VERB = re.compile(r"\b(?:work|come|came|turn|end|amount|hold|tak|mak|carr|bear|prop)\w* +$")
_ACTS = re.compile(r"push\w*|pull\w*|press\w*|lift\w*")
_OTHER_FORMS: dict[str, Meaning] = dict.fromkeys(("pressed", "presses", "pressing"), "C")


@dataclass(frozen=True)
class WayWord:
    """A word that says T or C, or which way, and where it stands."""

    start: int
    end: int
    means: Meaning


@dataclass(frozen=True)
class SizeTold:
    """What a clause tells of its size: the force it names or the nouns for one, the column of its verb, and the ways that it says."""

    name: Span | None
    nouns: frozenset[str]
    verb: int
    along: tuple[WayWord, ...]
    across: tuple[WayWord, ...]


def told_of_size(text: str, first: int, start: int, end: int, names: Names) -> SizeTold | None:
    """What the clause from `first` on tells of the size from `start` to `end`; None where it may tell anything else."""
    run = _RUN.search(text, first, start) or _AS.search(text, first, start)
    if run is None or denied(text[end:], text[:end], names):
        return None
    if denied(text[first:start], "", names) or DENIES.search(text, first) is not None:
        return None
    places = [Span(*found.span()) for found in _WORD.finditer(text, first, start)]
    named = [place for place in places if meant(text[place.start : place.end], names)]
    between = run.groupdict().get("between") or ""
    subject = _AT_JOINT.sub(" ", text[first : run.start()])
    for place in named:
        subject, between = (
            each.replace(text[place.start : place.end], " ") for each in (subject, between)
        )
    words = [re.sub(r"['’]s$", "", word) for word in _WORD.findall(subject + between)]
    low = [folded(word) for word in words]
    nouns = frozenset(low) & (MEMBERS | SUPPORTS)
    bare = _ONLY_WORDS.fullmatch(subject) is not None and not set(low) & _OF_MORE
    closed = set(low) <= _LEADS | MEMBERS | _WHICH_ONE
    if (
        len(named) > 1
        or any(meant(word, names) for word in words)
        or not bare
        or not (closed or (nouns and not named))
    ):
        return None
    if named:
        nouns |= frozenset() if _of_member(text, named[0], names) else {"reaction"}
    ways = _ways(text, (first, run.start(), start, end), nouns, named, names)
    if ways is None or (_IS.match(text, run.start()) and not (any(ways) and (nouns or named))):
        return None
    return SizeTold(named[0] if named else None, nouns, run.start(), *ways)


def leads_to_name(said: str) -> bool:
    """Whether words before a name only lead to it: so the force in."""
    words = {folded(word) for word in _WORD.findall(said)}
    return _ONLY_WORDS.fullmatch(said) is not None and words <= _LEADS | MEMBERS - _SAYING


def meant(word: str, names: Names) -> tuple[str, ...]:
    """The forces that a word may name; in small letters not one that is a word of such a sentence."""
    low = folded(word)
    everyday = word.islower() and (low in _BEHIND or low in _OF_MORE or says(word, *WAYS))
    return () if len(word) < 2 or everyday else names.plainly(word)


def _of_member(text: str, place: Span, names: Names) -> bool:
    own = meant(text[place.start : place.end], names)
    return any(name in own for name, _, _ in names.members)


def _ways(
    text: str,
    columns: tuple[int, int, int, int],
    nouns: frozenset[str],
    named: Sequence[Span],
    names: Names,
) -> tuple[tuple[WayWord, ...], tuple[WayWord, ...]] | None:
    """The words for T and C, and for ways; None where two of them contradict each other, or words behind say more."""
    first, verb, start, end = columns
    own = meant(text[named[0].start : named[0].end], names) if named else ()
    if not _only_says(text[end:], own, names):
        return None
    holds = bool(nouns & SUPPORTS)
    acts = {folded(found[0])[:4] for found in _acting(text, first, start)} if holds else set()
    if ("pull" in acts and not nouns & _DRAWS) or (acts & {"push", "pres"} and nouns & _DRAWS):
        return None
    along, across = [], []
    for found in _WORD.finditer(text, first):
        at, word = found.start(), folded(found[0])
        if start <= at < end or (holds and at < start and _ACTS.fullmatch(word)):
            continue
        if _ONE.match(text, found.end()) is not None:
            continue
        means = _OTHER_FORMS.get(word) or said(word, *WAYS)
        if len(word) == 1 and at < start:
            continue
        if means in ("T", "C"):
            along.append(WayWord(*found.span(), means))
        elif means is not None and at > verb and (holds or not nouns) and not _of_verb(text, at):
            across.append(WayWord(*found.span(), means))
    several = any(len({way.means for way in ways}) > 1 for ways in (along, across))
    return None if several or (along and across) else (tuple(along), tuple(across))


def _acting(text: str, first: int, start: int) -> Iterator[re.Match[str]]:
    return (found for found in _WORD.finditer(text, first, start) if _ACTS.fullmatch(found[0]))


def _of_verb(text: str, at: int) -> bool:
    """Whether a word belongs to the verb before it, and is no way: ends up, holds up."""
    return _UP_OF_VERB.search(text[max(0, at - 12) : at]) is not None


def _only_says(behind: str, own: Sequence[str], names: Names) -> bool:
    """Whether what stands behind a size only says T or C of it, or which way."""
    if any(map(str.isdigit, _WORD.sub(" ", behind))) or re.search(r"[^\w ,;:.!()'’*-]", behind):
        return False
    for word in _WORD.findall(behind):
        low = folded(word)
        if (force := meant(word, names)) and force != tuple(own):
            return False
        if (
            not force
            and low not in _BEHIND
            and not says(word, *WAYS, "filler", "so")
            and low != "ans"
        ):
            return False
    return True
