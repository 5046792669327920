"""Which numbered lines does a sentence of elimination speak of: from (3), dividing (2) by cos 30°?

The numbers are those of the writer's own page: they say that the equation behind them follows from lines
written before, and nothing else. What says so is taken out of the text, and told apart from factors by the
words around it.
"""

from __future__ import annotations

import re

from tutor.notation.elements.source import Source
from tutor.notation.naming.symbols import COUNT

_NAMED = r"(?:eqn?s?|eqs|equations?|lines?)\b\.? *"
_ONE = rf"(?:(?:{_NAMED})?[(\[] *{COUNT} *[)\]]|{_NAMED}{COUNT}(?![\w.])|[①-⑳])"
_BOTH = rf"{_ONE}(?: *(?:,|and\b|&) *(?:and +)?{_ONE})*"
_DONE = (
    r"(?:adding|add|subtracting|subtract|dividing|divide|multiplying|multiply|combining|combine|solving|solve|"
    r"rearranging|substituting|substitute|putting|comparing|eliminating|using|doubling|halving|equating|simplifying)"
)
_ENDS = r"(?: *(?:[:,;]|⇒|∴|→|=+>|[-]+>|(?:gives?|giving|we (?:get|have|find|obtain)|yields?|so|then|thus|hence)\b:?))"
_FROM = rf"(?:and +)?(?:then +)?\b(?:from|by|out of|because of) +{_BOTH}(?: above)?{_ENDS}?(?= *[^ ,.;])"
_ANYTHING = r"(?:(?!Σ|moment|section|joint|node|cut|part\b)[^=,:;∴⇒→])*?"
_DOING = rf"(?:and +)?(?:then +)?\b{_DONE}\b{_ANYTHING}{_ONE}{_ANYTHING}{_ENDS}"
_TIMES = r"(?:[0-9.,]+(?: */ *[0-9]+)? *[*x]? *)?"
_SUM = rf"^ *{_TIMES}{_ONE} *[-+] *{_TIMES}{_ONE}{_ENDS}"
_OF_A_SUM = re.compile(
    rf"^ *(?:then +|now +)?\b{_DONE}\b +(?:both sides of +|through +)?(?:the +)?(?P<sum>Σ *\w+(?: *= *0)?) +(?:throughout +|through +)?by +[^=:;]*:",
    re.IGNORECASE,
)
"""A sum that is only scaled keeps its heading: dividing ΣH by cos 30°."""
_BARE = re.compile(
    rf"(?:and +)?(?:then +)?\b(?:[Aa]dding|[Ss]ubtracting|by addition|by subtraction)\b(?: (?:these|them|both|up))*{_ENDS}?"
    rf"(?= *[-+]?[0-9./ ]*[A-Z])"
)
_SCALED = re.compile(
    r"(?:[;,.] *|(?<= ))(?:and +|then +|now +)?(?:dividing|multiplying|divide|multiply)(?: +(?:both sides|through|throughout|all|it|this|out))*"
    r" +by +[0-9.]+(?: ?/ ?[0-9.]+)? *,(?= *[-+(]? ?[0-9/ ]*[A-Z(])",
    re.IGNORECASE,
)
"""What is done to both sides before the next equation: dividing by 4/5, ..."""
_CLAUSE = re.compile(rf"{_DOING}|{_FROM}|{_SUM}", re.IGNORECASE)
_REFERENCE = re.compile(_ONE, re.IGNORECASE)
_NUMBER = re.compile(rf"{COUNT}(?= *[)\]]?$)|[①-⑳]", re.IGNORECASE)
_OPEN = re.compile(r"(?:^|[:;,∴⇒→]|[-=]>) *(?:∴|⇒|so|hence|thus|therefore)? *$", re.IGNORECASE)


def referred(source: Source) -> tuple[Source, tuple[str, ...]]:
    """The source without the words that refer to numbered lines, and their numbers as "(3)"."""
    numbers = [
        f"({_NUMBER.findall(each)[-1]})"
        for clause in _CLAUSE.finditer(source.text)
        for each in _REFERENCE.findall(clause[0])
    ]
    source = source.rewritten(_OF_A_SUM, lambda found: f"{found['sum']}:")
    source = source.rewritten(_SCALED, _put_together)
    source = source.rewritten(_CLAUSE, _apart).rewritten(_BARE, _put_together)
    return source, tuple(dict.fromkeys(numbers))


def _put_together(found: re.Match[str]) -> str | None:
    """As `_apart`, behind an equation."""
    return _apart(found) if "=" in found.string[: found.start()] else None


def _apart(found: re.Match[str]) -> str:
    """A blank where a statement may begin as it is, else a mark that sets it apart."""
    return " " if _OPEN.search(found.string[: found.start()]) else "; "
