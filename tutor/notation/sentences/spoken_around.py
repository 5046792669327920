"""What is said around a statement as people speak: "you'll get F_AB = 12", "CF's a tie", "..., isn't it?", "about B instead"?

It is spelled as one types it, or left out where it only asks for a nod. Each rule says what of a text it needs.
"""

from __future__ import annotations

import re

from tutor.notation.elements.source import Rule, Source

_CONTRACTED = re.compile(r"\b(?P<who>[Ii]|you|You|[Ww]e|[Tt]hey)'(?:ll|d|ve|re)(?= +[a-z])")
_IS = re.compile(
    r"(?P<name>(?<![\w}])[A-Z][\w{}]{1,7})'s +(?=(?:an? +|being +)?(?:tie|strut|tension|compression|zero|in (?:tension|compression)|pushed|pulled|pushing|pulling|squeezed|stretched)\b)"
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
    r"(?P<point>\b(?:(?:about|around|round|at|from|pivot(?:ing)? +(?:at|about|on)) +(?:the +)?[A-Z]\w?|(?:along|down|up) +[A-Z]\w{0,3})) +instead(?= *[,:;]| +so\b)"
)
"""Another point or line than before, which takes nothing back: pivot at B instead, ..."""
_TAG = re.compile(
    r",? *(?:(?:is|does|are|has|would)n't (?:it|they)|is it not|no\?|right\?|(?:if|unless) I(?:'m| am) (?:not )?(?:mistaken|wrong)|correct me if I(?:'m| am) wrong)[?.! ]*$",
    re.IGNORECASE,
)
"""What asks at the end for a nod: isn't it?"""

_PRESSED = r"(?:pushed|pulled|squeezed|squashed|crushed|stretched|compressed|pressed)"
_BEING = re.compile(
    rf"\bis +being +(?={_PRESSED}\b)|(?P<pressed>\bis +(?:being +)?{_PRESSED}) +(?:together|apart)\b"
)
_BY = re.compile(rf"(?P<pressed>\b(?:is|gets) +{_PRESSED}) +by +(?=(?:about +)?[0-9])")
_PUSHES = r"(?:pushing|pushed|squeezed|squashed|crushed|compressed|in compression|an? strut)"
_PULLS = r"(?:pulling|pulled|stretched|in tension|an? tie)"
_NOT_BUT = re.compile(
    r"(?P<name>(?<![\w}])[A-Z][\w{}]{1,7}) *(?:isn't|is not|'s not) +(?:being +)?"
    rf"(?:(?P<pushes>{_PUSHES})|(?P<pulls>{_PULLS}))(?: +at +all)?(?: *[,;]? *(?:it's|it is)| *,? +but) +(?:being +)?"
    rf"(?P<does>(?(pushes){_PULLS}|{_PUSHES}))\b"
)
"""What a member does, beside what it does not: CE isn't pulling at all, it's being squeezed."""
_BOTH_WAYS = re.compile(
    r"(?P<way>(?<![\w.])(?:[TCtc]|[Tt]ens(?:ion)?|[Cc]omp(?:ression)?)\b\)?) *\(?(?:← *→|→ *←|↔)\)?(?= *(?:$|[,;.(]))"
)
"""Two arrows beside T or C, as they are drawn at both ends of a member: they say no way."""
_NEARLY = re.compile(
    r"= *(?:about|around|roughly|nearly|approx\.?|approximately|some) +(?=[-+]?[0-9.])"
)
_UNIT = r"(?: ?(?:k?N|MN|kips?|k|lbs?))"
_VALUE_OF = re.compile(
    r"(?:,? +(?:(?:with|at|of|is|gives|makes|has|gets) +)?(?:about +|around +|roughly +)?|^ *)(?<![=+*/-] )"
    rf"(?P<value>[0-9][0-9.,]*(?<=[0-9]){_UNIT}(?: [TC]| \([TC]\))?) *,? +(?:and +|so +)?(?:that'?s|that is|which is|this is) +(?P<name>[A-Z][\w{{}}]{{1,7}})[.! ]*$"
)
"""A size before the name of its force: the shoe pushes on it with 455 N, that's R_B."""
_BECAUSE = re.compile(
    r"^(?P<said>[^=]*[0-9][^=]*?),? *\b(?:because|since|as)\b,? +(?P<reason>(?P<name>[A-Z][\w{}]{1,7}) *= *[^=,;:]*[0-9][^=,;:]*?)[. ]*$"
)
"""A value told in words before the working that it comes from: AB is pushed with 13 kN, because F_AB = -26 cos 60."""
_LETTER_WITHIN = re.compile(
    rf"=(?P<value> *[0-9][0-9.]*{_UNIT}? *(?:[TC]|\([TC]\))) *(?P<open>\()?= *(?P<work>[0-9][0-9. */+()°a-z]*?)(?(open)\)) *$"
)
"""A value before the numbers that it comes from: = 13 kN C (= 26 cos 60)."""


def spoken_around(source: Source) -> Source:
    """The source with such words spelled out."""
    return source.by_rules(_RULES)


def _joint_and_way(found: re.Match[str]) -> str:
    across = found["way"][:4] in ("side", "left", "hori")
    return f"Joint {found['joint']} {'horizontally' if across else 'vertically'}: "


def _because(found: re.Match[str]) -> str | None:
    """The working before the value that it gives, where both are of one force."""
    same = found["name"].lstrip("FSNT_{") in found["said"]
    return f"{found['reason']}, so {found['said'].strip()}" if same else None


_RULES: tuple[Rule, ...] = (
    Rule(("'t ", "not", "no", "right", "wrong", "mistaken"), _TAG, ""),
    Rule(("'",), _CONTRACTED, lambda found: found["who"]),
    Rule((" us", " me", " you"), _TO_WHOM, lambda found: found["verb"]),
    Rule(("instead",), _POINT_INSTEAD, lambda found: found["point"]),
    Rule(("sideways", "and", "vertical", "horizontal"), _JOINT_IS, _joint_and_way),
    Rule(("'s ",), _IS, lambda found: f"{found['name']} is "),
    Rule((" being ", " together", " apart"), _BEING, lambda found: found["pressed"] or "is "),
    Rule(
        ("n't ", " not ", "'s not "), _NOT_BUT, lambda found: f"{found['name']} is {found['does']}"
    ),
    Rule(("about", "roughly", "around", "nearly", "approx", "some"), _NEARLY, "= "),
    Rule(
        ("that", "which", "this"), _VALUE_OF, lambda found: f", {found['name']} = {found['value']}"
    ),
    Rule(
        (" C", "(C", " T", "(T"),
        _LETTER_WITHIN,
        lambda found: f"= {found['work']} ={found['value']}",
    ),
    Rule(
        ("because", "since", " as "),
        _BECAUSE,
        _because,
    ),
    Rule(("→", "↔"), _BOTH_WAYS, lambda found: found["way"]),
    Rule((" by ",), _BY, lambda found: f"{found['pressed']} with "),
    Rule((" by ",), _BY_WHAT, ", by "),
    Rule(("ngle", "∠"), _ANGLE_CALLED, ""),
)
