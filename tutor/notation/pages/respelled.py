"""What does paper write that a keyboard writes otherwise? F(AB), (F_AE)_y, 12 (kN), (i.e. 4 kN C).

Each rule rewrites the text and keeps the columns. A rule is there only where nothing else can be
meant; what can be meant in two ways is left for the formula to complain about.
"""

from __future__ import annotations

import re

from tutor.notation.elements.source import Source
from tutor.notation.elements.units import METRES, NEWTONS
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import LETTERS
from tutor.notation.pages.figured import figured
from tutor.notation.pages.prose import in_formulas

_FORCES = "|".join(sorted((*NEWTONS, "kips", "lbf", "lbs", "k", "KN"), key=len, reverse=True))
_DOT = re.compile(
    rf"(?:(?<=[^\W\d])|(?<=[)\]}}°])) *\. *(?=[(\[√]|[{LETTERS}])|(?<=[)\]}}]) *\. *(?=[0-9])|(?<=[0-9)]) \. (?=[0-9])"
)
_RESTATED = re.compile(
    r"(?<=[\w)\]}]) *[(\[] *(?P<lead>(?:i\.? ?e\.?|d\. ?h\.|that is|ie|so|hence|thus|meaning|=|or),? *)?"
    r"(?P<value>[0-9][^()\[\]=]*(?:\([TtCc]\) *)?)[)\]]",
    re.IGNORECASE,
)
_SAID_OF = re.compile(
    rf"(?:{_FORCES}) *(?:in |to the |acting |pointing )*(?:[←→↑↓]|[TCtc]|\([TCtc]\)|[{LETTERS}]{{2,12}})[ .]*"
)
"""The unit of a force and a word or a sign that says which way it acts."""
_CALLED = re.compile(
    r"(?<![\w}])([FSNTPfsntp]) ?(?:_ ?\(|\(|\[|_ ?\[) ?([^()\[\]{}+*/=]{2,12}?) ?[)\]]"
)
_SET_APART = re.compile(
    r"(?:(?<![\w}])(?=[FSNT])|(?<=[0-9])(?=[FS]))(\w) ([A-Z][0-9]? [A-Z][0-9]?|[A-Z]\w{1,7})(?![\w])"
)
_AXIS_APART = re.compile(
    r"(?<![\w}._])(?P<joint>[A-Z]\w{0,2}) (?P<axis>y(?![\w-]| *:)|x(?![\w-]| *[:\w(√]))"
)
_PLACE_BEFORE = re.compile(
    r"(?:\b(?:joint|pin|node|support|at|about|of|for|on|hinge|roller)|M) *$", re.I
)
_AXIS_IN_FRONT = re.compile(
    r"^ *(?:[(\[]?(?P<axis>[xyXY])[)\]] +|(?P<way>[xyXY])[ -](?:dir(?:ection)?|axis)\.? *(?:→|[-=]+>) *)(?=[^=]*=)"
)
_JOINT_AND_WAY = re.compile(
    r"^ *(?P<joint>[A-Z]\w{0,2}) *(?P<way>[←→↑↓↖↗↘↙]|[↺↻] ?\+?(?! *[:=])) *(?=[^=:]*[A-Za-z][^=:]*=)"
)
_JOINT_AND_WORD = re.compile(
    rf"^ *(?P<joint>[A-Z]\w{{0,2}}) +[(\[]?(?P<way>vert(?:ical(?:ly)?)?|horiz(?:ontal(?:ly)?)?|[xy]-dir)[)\]]?\.? +(?=(?:[-+(\[√.0-9]|[{LETTERS}]+_|[A-Z][A-Z0-9])[^:]*=)"
)
_JOINT_WAY_AND_PLUS = re.compile(
    r"^ *(?:joint|node|jt|pin|at)\.? +(?P<joint>[A-Z]\w{0,2}),? +(?P<way>up|down|left|right)(?:wards?)? *\+(?!ve) *(?=[^=:]*[A-Za-z][^=:]*=)",
    re.IGNORECASE,
)
"""A joint, the positive sense and its plus before the sum: joint D up +  -CD - 9 = 0."""
_JOINT_BRACKETED = re.compile(
    r"^ *[(\[](?P<joint>[A-Z]\w{1,2})[)\]](?P<way>) +(?=[^=:]*[A-Za-z][^=:]*=)"
)
_JOINT_AND_AXIS = re.compile(
    r"^ *[(\[](?P<joint>[A-Z]\w{0,2}), ?(?P<way>[xy])[)\]]:? +(?=[^=:]*[A-Za-z][^=:]*=)"
)
_AXIS_AND_JOINT = re.compile(
    r"^ *(?P<way>(?:Σ ?)?[Ff]_?[xyXY]|[xyXY]) ?[(\[](?P<joint>[A-Z]\w{0,2})[)\]](?: +(?=[^=: ][^=:]*=)| *=(?=[^=:]+=))"
)
_UNIT_OF_FORCE = re.compile(
    rf"(?<![\w}}])(?P<name>[A-Z]\w*(?:_?\{{\w+\}})?)(?: ?\[ ?(?P<unit>{_FORCES}) ?\]| ?\( ?(?P<round>{_FORCES}) ?\)| (?P<bare>{_FORCES}))(?![\w(])"
)
"""A unit behind a force that is unknown: 0.8 F_AC [kN]."""
_LETTER_FOR_ZERO = re.compile(r"(?<==)( *)[Oo](?= *$)")
_PRESSURE = re.compile(
    r"(?:(?<=[0-9])|(?<=[0-9] (?:kN|lb|MN))|(?<=[0-9] kip)|(?<=[0-9] N)) *(?:[(\[]? *(?:pressure|pressed|press)\b\.? *[)\]]?|[(\[]? *© *[)\]]?)(?= *(?:$|[.,;]))"
)
"""Compression as other languages call it, right behind a value, or the sign that a page has made of (C)."""
_PER_LENGTH = re.compile(
    rf"\(? ?(?P<load>[0-9.]+) ?(?P<force>{_FORCES}) ?/ ?(?P<length>{'|'.join(METRES)})\b ?\)? ?[*]? ?\(? ?(?P<over>[0-9./]+) ?(?P=length)\b ?\)?"
)
"""A load on a length times that length: (1.6 kip/ft)(15 ft)."""
_DOTTED = re.compile(r"(?<![\w}])([FSNTP])\.([A-Z][\w]{1,7})(?![\w(])")
_PART = re.compile(r"[(\[{] ?([\w.{}-]{2,14}?) ?[)\]}] ?_? ?(?:\{([xyXYvVhH])\}|([xyvh])(?![\w]))")
_NESTED = re.compile(
    r"(?<![\w])(\w*?)_?\{((?:[^{}+*/=()]|\{[^{}+*/=()]*\}){1,20})\}(?:_?\{?([xyvh]|\w*)\}?)?"
)
_BARS = re.compile(r"\| ?([^|+*/=()]{1,16}?) ?\|")
_JOINED = re.compile(r"(?<![\w}])((?:[A-Za-z]_?\{?[0-9]{1,2}\}?[-,]?){2})(?![\w])")
_COMMA = re.compile(
    r"(?<![\w])(?:(\w*_?\w+),([xyvhXYVH])|([FSNTPfsntp]_[A-Z][0-9]?),([A-Z][0-9]?))(?![\w{])"
)
_BRACED = re.compile(r"(?<![\w_}])\{([FSNTP])\}(?=_)|(?<=[0-9])\{([.,])\}(?=[0-9])")
_BLANKS = re.compile(r"(?<=[^\W\d_])_ +(?=[\w{])|(?<=\w) +(?=_\{)")


_MEASURES = "|".join((*NEWTONS, *METRES, "kips", "lbf", "lbs", "k", "KN"))
_UNITS = rf"(?:{_MEASURES})(?: ?[* .-]? ?(?:{_MEASURES}))?"
_HEADED_IN = re.compile(
    rf"^(?P<before>[^=]*[^=\s]) *(?:[(\[] *(?:in +)?(?P<unit>{_UNITS}) *[)\]]|/ ?(?P<over>{_UNITS})) *(?P<sign>[:=])"
    r"(?P<value> *[-+]? ?[0-9][0-9.,]*(?= *(?:[A-Z(\[]|$)))?"
)
_ADDED = re.compile(r" *[-+)]")
_SUMMED = re.compile(r"[\w)\]}] *[-+=]")
_SUM_AHEAD = re.compile(r"(?:.*[ :+])?(?:Σ|sum|moment)", re.IGNORECASE)
_UNIT_TIMES = re.compile(rf"(?<=[0-9]) ?\* ?(?:u\.)?(?P<unit>{_FORCES})(?![\w(])(?! *[*·\w])")
"""A unit that is multiplied with its number: -40 * kN."""
_UNIT_BRACKETED = re.compile(rf"(?<=[0-9)]) *[(\[{{] *(?P<unit>{_UNITS}) *[)\]}}](?! *[(\w])")


def respelled(source: Source, names: Names) -> Source:
    """The source with everything spelled as one types it into a formula."""
    source = _measured(source, names)
    if names.force in source.text:
        source = source.rewritten(_UNIT_OF_FORCE, lambda found: _without_unit(found, names))
        if "*" in source.text:
            source = source.rewritten(_UNIT_TIMES, lambda found: _bracketed(found, names))
    source = source.rewritten(_AXIS_IN_FRONT, lambda found: f"F{found['axis'] or found['way']}: ")
    source = source.rewritten(_JOINT_AND_WAY, lambda found: _at_joint(found, names))
    source = source.rewritten(_JOINT_AND_WORD, lambda found: _at_joint(found, names))
    source = source.rewritten(_JOINT_WAY_AND_PLUS, lambda found: _at_joint(found, names))
    source = source.rewritten(_JOINT_AND_AXIS, lambda found: _at_joint(found, names))
    source = source.rewritten(_AXIS_AND_JOINT, lambda found: _at_joint(found, names))
    source = source.rewritten(_JOINT_BRACKETED, lambda found: _at_joint(found, names))
    source = source.rewritten(
        _LETTER_FOR_ZERO, lambda found: None if names.joint("O") else f"{found[1]}0"
    )
    source = source.rewritten(_PRESSURE, " compression")
    if "/" in source.text:
        source = source.rewritten(_PER_LENGTH, _over_length)
    source = source.rewritten(_RESTATED, _restated)
    source = source.rewritten(_BRACED, lambda found: found[1] or found[2])
    source = figured(source, names)
    source = source.rewritten(_BLANKS, lambda found: "_" if "_" in found[0] else "")
    source = source.rewritten(_CALLED, lambda found: _called(found, names))
    source = source.rewritten(_SET_APART, lambda found: _called(found, names))
    source = source.rewritten(_AXIS_APART, lambda found: _axis_apart(found, names))
    source = source.rewritten(_DOTTED, lambda found: _called(found, names))
    source = source.rewritten(_COMMA, lambda found: _comma(found, names))
    source = source.rewritten(_NESTED, lambda found: _nested(found, names))
    source = source.rewritten(_JOINED, lambda found: _joined(found, names))
    source = source.rewritten(_PART, lambda found: _part(found, names))
    source = in_formulas(source, names)
    source = source.rewritten(_BARS, lambda found: found[1] if names.meanings(found[1]) else None)
    return source.rewritten(_DOT, lambda found: _dot(found, source.text, names))


def _measured(source: Source, names: Names) -> Source:
    """The source with units out of brackets: 12.5 (kN), F_AD (kN) = 12.5, ΣM_A (in N·m): ..."""
    if not any(sign in source.text for sign in "([/{"):
        return source
    source = source.rewritten(_HEADED_IN, lambda found: _headed_in(found, names))
    return source.rewritten(_UNIT_BRACKETED, lambda found: _bracketed(found, names))


def _bracketed(found: re.Match[str], names: Names) -> str | None:
    unit = found["unit"].strip()
    return None if names.plainly(unit) or names.joint(unit) == unit else f" {unit} "


def _without_unit(found: re.Match[str], names: Names) -> str | None:
    """A force within a sum without its unit, where that is the unit of all forces."""
    unit = found["unit"] or found["round"] or found["bare"]
    summed = _ADDED.match(found.string, found.end()) or _SUMMED.search(
        found.string[: found.start()]
    )
    if unit != names.force or not summed or names.joint(unit) or not names.plainly(found["name"]):
        return None
    return str(found["name"])


def _headed_in(found: re.Match[str], names: Names) -> str | None:
    """A heading without its unit; that of a value goes behind the number, where it belongs."""
    before, value = found["before"], found["value"] or ""
    if names.meanings(before.strip()):
        return f"{before} = {value} {found['unit'] or found['over']} " if value else None
    return f"{before} {found['sign']}{value}" if _SUM_AHEAD.match(before) else None


def _over_length(found: re.Match[str]) -> str:
    """What a load on a length is as a force: (1.6*15 kip)."""
    return f"({found['load']}*({found['over']}) {found['force']})"


def _at_joint(found: re.Match[str], names: Names) -> str | None:
    """A joint and the way of its sum before an equation: B ↑ F_BD - 12 = 0."""
    here = names.joint(found["joint"]) == found["joint"]
    return f"Joint {found['joint']} {found['way']}: " if here else None


def _restated(found: re.Match[str]) -> str | None:
    """A value said again in brackets: (i.e. 4 kN ←), (so 4 kN C); behind a force also without a word."""
    value = found["value"]
    if not found["lead"]:
        before = _NUMBER_BEFORE.search(found.string[: found.start()])
        size = re.match(r"([0-9.,]+) *", value)
        if before is None or size is None:
            return None
        lettered = before["size"] == size[1] and re.fullmatch("[TC]", value[size.end() :])
        if not lettered and not (before["force"] and _SAID_OF.fullmatch(value, size.end())):
            return None
    return f" = {value} "


_NUMBER_BEFORE = re.compile(rf"(?P<size>[0-9][0-9.,]*) *(?P<force>(?:{_FORCES})?)$")


def _called(found: re.Match[str], names: Names) -> str | None:
    word = f"{found[1]}_{{{found[2].replace(' ', '')}}}"
    return word if names.meanings(word) and not names.meanings(found[1]) else None


def _axis_apart(found: re.Match[str], names: Names) -> str | None:
    """A component of a reaction whose letter below the line was copied beside it: A y."""
    word = f"{found['joint']}_{found['axis']}"
    at_place = _PLACE_BEFORE.search(found.string[: found.start()]) is not None
    return word if names.plainly(word) and not at_place else None


def _nested(found: re.Match[str], names: Names) -> str | None:
    """A name with braces inside braces or behind each other: F_{L_{0}U_{1}}, L_{0}U_{1}, F_{AE}_y."""
    whole = found[0]
    if "{" not in whole:
        return None
    bare = re.sub(r"[{}, ]", "", whole)
    plain = re.sub(r"[_{}, ]", "", whole)
    if names.plainly(whole):
        return None
    for word in (bare, plain):
        if re.fullmatch(r"\w[\w-]*", word) and names.meanings(word):
            return word
    return None


def _comma(found: re.Match[str], names: Names) -> str | None:
    """A component or the second joint set off by a comma: F_AD,x and F_A,D."""
    word, force, joint = found[0].replace(",", ""), found[1], found[4]
    meant = names.meanings(force) if force else names.joint(joint)
    return word if meant and names.meanings(word) else None


def _joined(found: re.Match[str], names: Names) -> str | None:
    """Two joints with a figure each below the line, side by side: L_{0}U_{1}."""
    word = re.sub(r"[{}_,-]", "", found[1])
    return word if "{" in found[1] and names.meanings(word) else None


def _part(found: re.Match[str], names: Names) -> str | None:
    word = re.sub(r"[{}., ]", "", found[1]) + (found[2] or found[3])
    return word if re.fullmatch(r"\w[\w-]*", word) and names.meanings(word) else None


def _dot(found: re.Match[str], text: str, names: Names) -> str | None:
    """A full stop for times: F.sin 30, 2.F_AB, but not at the end of an abbreviation or a sentence."""
    if found[0].startswith(".") and found[0].endswith(" ") and text[found.end()].isupper():
        return None
    before = re.search(rf"[{LETTERS}][\w]*$", text[: found.start()])
    if (
        before is not None
        and not names.meanings(before[0])
        and before[0] not in ("m", "kN", "N", "ft")
    ):
        return None
    return "*"
