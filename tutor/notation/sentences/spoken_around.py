"""What is said around a statement as people speak: "you'll get F_AB = 12", "CF's a tie", "..., isn't it?", "about B instead"?

It is spelled as one types it, or left out where it only asks for a nod. Each rule says what of a text it needs.
"""

from __future__ import annotations

import re

from tutor.notation.elements.source import Rule, Source

_CONTRACTED = re.compile(r"\b(?P<who>[Ii]|you|You|[Ww]e|[Tt]hey)'(?:ll|d|ve|re)(?= +[a-z])")
_IS = re.compile(
    r"(?P<name>(?<![\w}])[A-Z][\w{}]{1,7})'s +(?=(?:an? +)?(?:tie|strut|tension|compression|zero|in (?:tension|compression)|pushed|pulled|pushing|pulling|squeezed|stretched)\b)"
)
"""What a force is, shortened: CF's a tie."""
_TO_WHOM = re.compile(r"\b(?P<verb>leaves|leaving|gives|giving) +(?:us|me|you)(?: +with)?\b")
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


def spoken_around(source: Source) -> Source:
    """The source with such words spelled out."""
    return source.by_rules(_RULES)


def _joint_and_way(found: re.Match[str]) -> str:
    across = found["way"][:4] in ("side", "left", "hori")
    return f"Joint {found['joint']} {'horizontally' if across else 'vertically'}: "


_RULES: tuple[Rule, ...] = (
    Rule(("'t ", "not", "no", "right", "wrong", "mistaken"), _TAG, ""),
    Rule(("'",), _CONTRACTED, lambda found: found["who"]),
    Rule((" us", " me", " you"), _TO_WHOM, lambda found: found["verb"]),
    Rule(("instead",), _POINT_INSTEAD, lambda found: found["point"]),
    Rule(("sideways", "and", "vertical", "horizontal"), _JOINT_IS, _joint_and_way),
    Rule((" by ",), _BY_WHAT, ", by "),
    Rule(("ngle", "∠"), _ANGLE_CALLED, ""),
    Rule(("'s ",), _IS, lambda found: f"{found['name']} is "),
)
