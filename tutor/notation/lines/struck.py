"""What of a line was struck out, and does anything stand in its place?

A page strikes out with ~~ ~~, <s> and [s], a message with a stroke through each character, LaTeX with
\\sout and \\cancel, a copy in words with [crossed out: 600]. What is struck out is gone; a term of a sum without another
in its place is nothing.
"""

from __future__ import annotations

import re

from tutor.notation.elements.lexicon import SPEECH
from tutor.notation.elements.source import Source

STROKE = "\u0336"
"""The mark through the character before it."""
_SAID = (
    r"(?:(?:crossed|struck|scratched|scored|rubbed|ruled|lined)[ -]?(?:out|through)|struck|deleted|erased|strike(?:through|out)?|"
    r"durchgestrichen|gestrichen|barré|rayé|tachado)"
)
_NUMBER = r"[0-9][0-9.,]*(?: ?(?:k?N|MN|kips?|k|lbs?)(?!\w))?(?: *[TC](?!\w))?"
_WAYS = "|".join((
    r"~~[^~]{1,200}~~",
    r"<(?P<tag>del|s|strike)>[^<>]{1,200}</(?P=tag)>",
    r"\[(?P<mark>s|del|strike)\][^\[\]]{1,200}\[/(?P=mark)\]",
    rf"(?:[^{STROKE}]{STROKE}+)+",
    r"(?<![^ (])~(?![ ~])[^~\\]{1,80}(?<! )~(?=[ ,;)]|$)",
    rf"\[ *{_SAID}\b *[:;,]? *[^\[\]]{{1,200}}\]",
    rf"\( *{_SAID}\b *[:;,]? *(?:[^()]|\([^()]*\)){{1,200}}\)",
    rf"[\[(] *(?=[-+]? ?[0-9]|[A-Z])[^()\[\]]{{1,80}}?,? +{_SAID} *[\])]",
    rf"(?:(?<=[=+-] )|(?<=[=+-])){_NUMBER} *[\[(] *{_SAID} *[\])](?= *(?:$|[-+]? ?[0-9.(√]))",
    r"\\(?:sout|st) *\{(?:[^{}]|\{[^{}]*\})*\}",
))  # fmt: skip
_STRUCK = re.compile(
    rf"(?:{_WAYS})(?: *(?:~~[^~]{{1,200}}~~|<s>[^<>]{{1,200}}</s>|(?:[^ {STROKE}]{STROKE}+)+))*",
    re.IGNORECASE,
)
_MAY = re.compile(rf"~[^~]+~|</|\[/|\\s|{STROKE}|[\[(][^\[\]()]*{_SAID}", re.IGNORECASE)
_OPERAND = re.compile(
    r" *(?:[0-9.√½⅓⅔¼¾]|\\(?:d?frac|sqrt|sin|cos|tan|left)|[\[({](?! *[a-z]{3}[^0-9]*[)\]])|(?P<word>[A-Za-zα-ω][\w{}]*))"
)
_TALK_GOES_ON = re.compile(r"[',.]? +[A-Za-z]")
_FUNCTIONS = ("sin", "cos", "tan", "sqrt")


def without_struck(source: Source) -> Source:
    """The source without what is struck out."""
    if _MAY.search(source.text) is None:
        return source
    return source.rewritten(_STRUCK, gone)


def gone(found: re.Match[str]) -> str | None:
    """What is left of something struck out; of all of a line None."""
    before, behind = found.string[: found.start()].rstrip(), found.string[found.end() :]
    if not (before or behind.strip()):
        return None
    ends = before[-1:] in ("+", "-") or (before.endswith("=") and behind.strip())
    term = ends and "=" not in found[0].strip("=")
    return "0" if term and not stands_behind_sign(behind) else " "


def stands_behind_sign(behind: str) -> bool:
    """Whether a text begins with what a sign before it can stand for: a number, a force, a bracket."""
    operand = _OPERAND.match(behind)
    if operand is None:
        return False
    word = operand["word"]
    if word is None or word not in SPEECH or word.startswith(_FUNCTIONS):
        return True
    return _TALK_GOES_ON.match(behind, operand.end()) is None
