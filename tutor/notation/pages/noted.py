"""What is written as in notes to oneself: "w/ 23.3 at C:", "18 kN up, half of 36", "= 16 T <- compare", "a strut, 624 lb (C)"?"""

from __future__ import annotations

import re

from tutor.notation.elements.source import Source
from tutor.notation.elements.units import FORCES

_MAY = re.compile(
    r"\bw/|<-|[pn]/down|t/right|half of|\b(?:strut|tie|compression|tension)[,:]|ratio of|, ?=|[A-Za-z]'[dlmrsv]|n't |\bby +[sijngo]|[Aa]ngle|∠|instead|\b(?:sideways|and down|and right|vertical|horizontal)|…|\.\.|\b(?:us|me|you)\b|mistaken|wrong"
)
_WITH = re.compile(r"(?<![^ ,;])w/ ?(?=[0-9A-Za-z])")
_UP_DOWN = re.compile(r"(?<=[0-9A-Z] )up/down(?= +(?:it|it['’]?s|is|we|just|only)\b)")
_LEFT_RIGHT = re.compile(r"(?<=[0-9A-Z] )left/right(?= +(?:it|it['’]?s|is|we|just|only)\b)")
_POINTS_BACK = re.compile(r" +<-+ *(?=[a-z]{3})")
_COMMA_IN_CHAIN = re.compile(r"(?<=[0-9)\w]) ?,(?= ?=(?!>) *[-+(0-9.√])")
_CONTRACTED = re.compile(r"\b(?P<who>[Ii]|you|You|[Ww]e|[Tt]hey)'(?:ll|d|ve|re)(?= +[a-z])")
_IS = re.compile(
    r"(?P<name>(?<![\w}])[A-Z][\w{}]{1,7})'s +(?=(?:an? +)?(?:tie|strut|tension|compression|zero|in (?:tension|compression)|pushed|pulled|pushing|pulling|squeezed|stretched)\b)"
)
"""What a force is, shortened: CF's a tie."""
_TO_WHOM = re.compile(r"\b(?P<verb>leaves|leaving|gives|giving) +(?:us|me|you)(?: +with)?\b")
_LEADER = re.compile(r" *(?:…|\.{2,}) *(?=[(\[] *[0-9]{1,2} *[)\]] *[;,])")
"""Dots that lead to the number of an equation, where the line goes on: ... (2); with (1), ..."""
_BY_WHAT = re.compile(
    r"(?<=[A-Z}]) +by +(?=(?:symm?\w*|inspection|joint|node|similar|geometry|observation)\b)"
)
"""How it was found that two forces are alike, and no reaction at B: T_AC = T_BC by symmetry."""
_ANGLE_CALLED = re.compile(
    r"(?:\bthe +)?(?:\b[Aa]ngle +|∠ ?)(?:[A-Z][0-9]?){3} *(?:=|\bis\b|\bbe\b) *(?P<letter>[α-ω]) *[,;] *(?:with +|where +|so +)?(?=(?:sin|cos|tan) *\(?(?P=letter))"
)
"""Where an angle lies, before what it is: angle DEC = θ, tan θ = 3/4."""
_JOINT_IS = re.compile(
    r"^ *(?:[Aa]t +)?(?P<joint>[A-Z][0-9]?) +(?P<way>up and down|sideways|left and right|vertical(?:ly)?|horizontal(?:ly)?)"
    r" +(?:is|would be|gives|comes to|becomes|reads)[,:]? +(?=[^=]*=)"
)
"""A joint and a way before their sum: C sideways is CF - AD = 0."""
_POINT_INSTEAD = re.compile(
    r"(?P<point>\b(?:about|around|round|at|from|pivot(?:ing)? +(?:at|about|on)) +(?:the +)?[A-Z]\w?) +instead(?= *[,:;]| +so\b)"
)
"""Another point than before, which takes nothing back: pivot at B instead, ..."""
_TAG = re.compile(
    r",? *(?:(?:is|does|are|has|would)n't (?:it|they)|is it not|no\?|right\?|(?:if|unless) I(?:'m| am) (?:not )?(?:mistaken|wrong)|correct me if I(?:'m| am) wrong)[?.! ]*$",
    re.IGNORECASE,
)
"""What asks at the end for a nod: isn't it?"""
_HALF = re.compile(
    rf", *(?P<half>half of (?:the )?[0-9][0-9.,]*(?: ?(?:{FORCES}))?)(?=[ .]*$)", re.IGNORECASE
)
_WAY_TWICE = re.compile(
    rf"(?P<name>(?<![\w}}])[A-Z][\w{{}}-]*) +is +(?:an? +|in +)?(?P<way>strut|tie|compression|tension), *"
    rf"(?P<size>[0-9][0-9.,]*(?: ?(?:{FORCES}))?) *[(\[](?P<letter>[TC])[)\]](?=[ .]*$)"
)
_WAY_THEN_SIZE = re.compile(
    rf"(?P<lead>(?:^ *|[,;] *)(?:(?:so|and|thus|hence) +)?)(?:it|this|that)(?: +is|'s) +(?:in +|under +|an? +)?(?P<way>strut|tie|compression|tension)[:,] *"
    rf"(?:of +|about +)?(?P<size>[0-9][0-9.,]*(?: ?(?:{FORCES}))?)(?=[ .]*$)",
    re.IGNORECASE,
)
"""The size behind what it does: so it's in compression: 4 kN."""
_RATIO = re.compile(
    r"\bratio of (?:the |its )?(?:components|sides) +(?:is +)?(?P<one>[0-9.]+) ?: ?(?P<two>[0-9.]+)"
)
_LETTERS = {"strut": "C", "compression": "C", "tie": "T", "tension": "T"}


def noted(source: Source) -> Source:
    """The source with such marks and words as one types them in a line."""
    if _MAY.search(source.text) is None:
        return source
    source = source.rewritten(_TAG, "").rewritten(_CONTRACTED, lambda found: found["who"])
    source = source.rewritten(_TO_WHOM, lambda found: found["verb"])
    source = source.rewritten(_POINT_INSTEAD, lambda found: found["point"])
    source = source.rewritten(_JOINT_IS, _joint_and_way)
    source = source.rewritten(_BY_WHAT, ", by ").rewritten(_ANGLE_CALLED, "")
    source = source.rewritten(_LEADER, " ").rewritten(_IS, lambda found: f"{found['name']} is ")
    source = source.rewritten(_WAY_THEN_SIZE, _way_behind)
    source = source.rewritten(_WITH, "with ").rewritten(_UP_DOWN, "vertically")
    source = source.rewritten(_LEFT_RIGHT, "horizontally").rewritten(_POINTS_BACK, ", ")
    source = source.rewritten(_COMMA_IN_CHAIN, " ")
    source = source.rewritten(_HALF, lambda found: f" ({found['half']})")
    source = source.rewritten(_RATIO, lambda found: f"ratio {found['one']}:{found['two']}")
    return source.rewritten(_WAY_TWICE, _said_once)


def _joint_and_way(found: re.Match[str]) -> str:
    across = found["way"][:4] in ("side", "left", "hori")
    return f"Joint {found['joint']} {'horizontally' if across else 'vertically'}: "


def _way_behind(found: re.Match[str]) -> str:
    mark = ": " if found["lead"].strip()[:1] in (",", ";") else ""
    return f"{mark}{found['size']} ({_LETTERS[found['way'].lower()]})"


def _said_once(found: re.Match[str]) -> str | None:
    """A size of which the way is said before and behind it, with the letter alone."""
    if _LETTERS[found["way"]] != found["letter"]:
        return None
    return f"{found['name']} = {found['size']} ({found['letter']})"
