"""What of a sentence only gives its reason: "D is unloaded and AD and BD are in line, so F_CD = 0"?

A reason is not judged: it is taken out of the text, apart from the joint that it speaks of.
"""

from __future__ import annotations

import re

from tutor.notation.elements.source import Source
from tutor.notation.naming.names import Names

_SEEN = (
    r"\b(?:in (?:one|a|the same)?(?: straight)? ?line|collinear|colinear|aligned|unloaded|not loaded|"
    r"no (?:external )?(?:loads?|reactions?|forces?)|two members|three members|(?:by (?:it|them)sel(?:f|ves)|on (?:its|their) own|alone)(?= *[,;]? *(?:so|hence|thus|therefore)\b| *[.,;]? *$)|keine (?:[äa]u[sß]+ere )?(?:last|kraft)|unbelastet)\b"
)
_LEADING = re.compile(
    rf"^(?P<kind> *zero[- ]force member *:)?(?P<head>[^=:;]*: *)?(?P<reason>[^=:;]*?{_SEEN}[^=:;]*?)[,;]? *"
    r"(?:\b(?:so|hence|thus|therefore)\b|∴|⇒|→)(?: that)?,? *(?=[^=:;]*=)",
    re.IGNORECASE,
)
_TRAILING = re.compile(
    rf"[,;]? *\b(?:since|because|as|for|bcs?|cuz|cause) +(?P<reason>[^=:;]*?{_SEEN}[^=:;]*)$",
    re.IGNORECASE,
)
_NO_PART = re.compile(
    r",? *\b(?:since|because|as|for) +(?:neither|none|nothing|no(?:ne)? of)\b[^=:;,]*?\b(?:arm|moment|lever|component|part|share|effect|say)\b[^=:;]*$",
    re.IGNORECASE,
)
"""What does not enter, behind the line: since neither the link nor the 170 N has an arm there."""
_PLACE = re.compile(
    r"\b(?:joint|node|at|pin) +(?:the +)?(?:unloaded +)?(?:(?:joint|node|pin) +)?(?P<joint>[A-Z]\w?)\b"
)
_ELIMINATES = re.compile(
    r" *+(?P<open>[(\[] *+)?(?:,? *+\b(?:which|this|thus|thereby|so as to|in order to|to)\b +)?"
    r"\b(?:eliminat(?:es?|ing)|avoid(?:s|ing)?|exclud(?:es?|ing))\b +[^()\[\]=:,;+*/]*(?(open)[)\]]|(?= *[:,]))",
    re.IGNORECASE,
)
_NOT_MET = re.compile(
    r",? *\b(?:so +(?:that|as)|such +that|where|in +which|which +means(?: +that)?|as|since|because) +(?:the +)?(?:force +in +|bar +|member +)?"
    r"[A-Z][\w{}'-]*(?:(?:,| and| or|, and)? +[A-Z][\w{}'-]*)* +"
    r"(?:(?:(?:is|are) +not|(?:do|does) +not|isn't|aren't|doesn't|don't|never|has +no|have +no) +(?:met|meet|enter|appear|come +in|involved|needed|count|matter|moment|arm|part|component)\w*|drops? +out|vanish(?:es)?|cancels?(?: +out)?|is +avoided|are +avoided)"
    r"[^=:;,]*(?= *[:,])",
    re.IGNORECASE,
)
_BESIDE_JOINT = re.compile(
    r"\b(?:just|immediately|slightly|directly) +(?:to +the +)?(?:right|left) +(?:of|from) +"
    r"(?:(?:joint|node|panel point) +)?[A-Z]\w?\b *,?",
    re.IGNORECASE,
)
_WITH_VALUE = re.compile(
    r",? +(?:with|using|putting|taking) +(?P<value>[A-Z]\w*(?:_\{?\w+\}?)? *= *[-+]?[0-9.]+ *(?:k?N|MN|lbs?|kips?|k)?) *"
    r"(?P<end>[,;]|(?=∴|⇒|→|\bso\b)|$)"
)

_BRACKETED = re.compile(
    r"(?<=[^ ]) +[(\[] *(?P<value>[A-Z]\w*(?:_\{?\w+\}?)? *= *[-+]? ?[0-9.,]*[0-9] *(?:k?N|MN|lbs?|kips?|k)?)(?P<end>) *[)\]] *$"
)
"""A value that is put in, in brackets behind the line."""
_COMPONENTS = re.compile(
    r"^ *(?:so +)?the +components? +of +(?:(?:the +)?(?:force +)?in +|member +)?(?P<name>[A-Z][\w{}'-]*) +(?:are|is|being)[ :]+"
    r"(?P<one>[VHXY]) *=(?P<rest>.*?)(?:(?P<and>(?:,| and\b|,? and\b) *)(?P<two>[VHXY]) *=|$)",
    re.IGNORECASE,
)
_INTO = re.compile(
    r"^ *(?:resolving|resolve|splitting|split) +[A-Z]\w* +into +(?:its +components +|components +)?(?=[A-Z]\w* *=)",
    re.IGNORECASE,
)
_GIVES = re.compile(
    r"(?<=[, ])(?P<sum>(?:taking +)?moments +about +[A-Z]\w?) +(?:gives?|yields?|then) +",
    re.IGNORECASE,
)
_BY_TRIANGLE = re.compile(
    r"^ *(?:(?:from|by|using) +)?(?:the +)?(?:triangle of forces|force triangle|similar triangles|proportions?|lami['’]?s|sine rule)\b[^=,:;]*[,:] *",
    re.IGNORECASE,
)


_ONLY = re.compile(
    r"^ *(?:since|as|because)? *(?:there +(?:is|are) +|the +)?(?:only|no|sole)(?: other)?(?: external)? (?P<way>horizontal|vertical) "
    r"(?:loads?|forces?)(?: component)?\b[^=:;]*?(?:,? *(?:so|hence|thus|therefore)(?: that)?,?|,|∴|⇒) *(?=[A-Z]\w* *=)",
    re.IGNORECASE,
)
"""That one load alone acts in a direction, which says what is summed behind it."""


def gives_reason(text: str) -> bool:
    """Whether a text says of a joint that nothing acts there, or that members lie in one line."""
    return re.search(_SEEN, text, re.IGNORECASE) is not None


def without_reasons(source: Source, names: Names) -> Source:
    """The source without what only says why, with values that are put in set apart."""
    source = source.rewritten(_BY_TRIANGLE, " ")
    source = (
        source.rewritten(_BESIDE_JOINT, " ").rewritten(_ELIMINATES, " ").rewritten(_NOT_MET, "")
    )
    source = source.rewritten(_INTO, " ").rewritten(_GIVES, lambda found: f"{found['sum']}: ")
    source = source.rewritten(_COMPONENTS, lambda found: _components(found, names))
    source = source.rewritten(_LEADING, lambda found: _place(found, names))
    source = source.rewritten(_ONLY, lambda found: f"ΣF{'x' if found['way'][0] in 'hH' else 'y'}: ")
    source = source.rewritten(_TRAILING, lambda found: None if "=" in found["reason"] else " ")
    source = source.rewritten(
        _NO_PART, lambda found: None if "=" not in found.string[: found.start()] else " "
    )
    for said in (_WITH_VALUE, _BRACKETED):
        source = source.rewritten(said, lambda found: _set_apart(found, names))
    return source


def _components(found: re.Match[str], names: Names) -> str | None:
    """The two components of a force by their own names: V = 15 as V_AB = 15."""
    one, two = (f"{found[key]}_{{{found['name']}}}" if found[key] else "" for key in ("one", "two"))
    if not names.meanings(one):
        return None
    more = f"; {two} =" if two else ""
    return f"{one} ={found['rest']}{more}"


def _place(found: re.Match[str], names: Names) -> str:
    """The joint that a reason speaks of, as a heading; a blank where it names none."""
    if found["head"]:
        return str(found["head"])
    there = _PLACE.search(found["reason"])
    joint = None if there is None else names.joint(there["joint"])
    return " " if joint is None else f"Joint {joint}: "


def _set_apart(found: re.Match[str], names: Names) -> str | None:
    """A value that a line says it puts in, as a statement behind the equation."""
    name = found["value"].partition("=")[0].strip()
    if len(names.meanings(name)) != 1 or "=" not in found.string[: found.start()]:
        return None
    return f"; {found['value']};"
