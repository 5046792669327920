"""A word is neither name, unit nor function: what did the student probably mean by it?"""

from __future__ import annotations

import difflib
import re
from collections.abc import Mapping

from tutor.notation.elements import units
from tutor.notation.elements.lexicon import MEANINGS, WAYS, Meaning, folded, says
from tutor.notation.elements.tree import Axis
from tutor.notation.elements.unreadable import Broken
from tutor.notation.formulas.words import ANGLES, FUNCTIONS, OTHER_FUNCTIONS
from tutor.notation.naming.names import Names, spelling
from tutor.notation.sides.ending import WORD, unknown
from tutor.text import listed

_NEAR_UNITS = {
    "M": "m", "mN": "MN or kN", "mn": "MN or kN", "k": "kN or kip", "K": "kN or kip", "#": "lb",
    "nm": "N*m", "NM": "N*m", "nM": "N*m", "Nm": "N*m",
}  # fmt: skip
_BEHIND = re.compile(r" *- *([^\W\d_][^\W_']*)(?![\w(])")
_NUMBERED = re.compile(r"[FSNTPfsntp]_?[0-9]{1,2}")
_MOST_LISTED = 8
SENTENCE = 2
"""So many words in one statement are a sentence."""


def unknown_word(
    word: str, start: int, text: str, names: Names | None, measured: bool, called: bool
) -> Broken:
    """The complaint about `word` at column `start` of `text`.

    `measured`: a unit could stand here; `called`: a bracket or a number follows, as after a function.
    """
    end = start + len(word)
    if names is not None and _in_a_sentence(word, text, names):
        return Broken("unknown-name/sentence", start, end, example=spelling(names.unknowns[-1]))
    if names is not None and word.lower() in ANGLES:
        return Broken("unknown-name/angle", start, end)
    if names is not None and (misplaced := _misplaced(word, start, end, text)) is not None:
        return misplaced
    if names is not None and names.free(word) and (joint := names.joint(word)) is not None:
        example = _joint(joint, start, end, names).words["example"]
        key = "unknown-name/joint-or-length"
        return Broken(key, start, end, joint=joint, unit=names.length, example=example)
    if names is not None and (joint := names.joint(word)) is not None:
        return _lone_joint(joint, start, end, text, names)
    if names is not None and names.for_load(word):
        return Broken("unknown-name/load", start, end, unit=names.force)
    if names is not None and names.free(word[:1]) and _stands_alone(word, names):
        return Broken("unknown-name/length", start, start + 1, unit=names.length)
    if measured and (near := _near_unit(word)) is not None:
        return near.__class__(near.key, start, end, **near.words)
    function = _function(word, start, end, called)
    if function is not None:
        return function
    if names is None:
        unit = units.SPELLED.get(word) or word in units.OTHER_UNITS
        return Broken("unit/constant" if unit else "unknown-name/constant", start, end)
    if word in units.SPELLED or units.angle_unit(word):
        return Broken("angle/alone" if units.angle_unit(word) else "unit", start, end)
    return _name(word, start, end, names)


def _in_a_sentence(word: str, text: str, names: Names) -> bool:
    """Whether a word is one of several beside each other that are words and nothing else."""
    if not _is_word(word, names) or not names.unknowns:
        return False
    return sum(_is_word(each, names) for each in WORD.findall(text)) >= SENTENCE


def _is_word(word: str, names: Names) -> bool:
    """Whether a word is of the lexicon, or one that nothing here goes by."""
    known = len(word) > 2 and folded(word) in MEANINGS and not names.plainly(word)
    return known or unknown(word, names)


def _stands_alone(word: str, names: Names) -> bool:
    """Whether the first letter of a word is all of it, or a force is written behind it: aE_y."""
    return len(word) == 1 or bool(names.meanings(word[1:]))


def _misplaced(word: str, start: int, end: int, text: str) -> Broken | None:
    """The complaint about T, C or a word for a sense that is not the last thing of its value."""
    if word.lower() in ("none", "nothing"):
        return Broken("value/zero", start, end)
    if word not in ("T", "C") and not (len(word) > 3 and says(word, *_SAYS)):
        return None
    before, after = text[:start].rstrip(), text[end:].lstrip(" )]=:,")
    if before and before[-1] not in "=([+-*/:" and _AMOUNT.match(after) is None:
        return Broken("value/last", start, end)
    if (not before or before[-1] in "=(:") and _SIZE.match(after):
        return Broken("value/order", start, end)
    if (not before or before[-1] == "=") and not after:
        return Broken("value/number", start, end)
    return None


_SAYS: tuple[Meaning, ...] = (*WAYS, "against")
_SIZE = re.compile(r"[-+]?[0-9.]")
_AMOUNT = re.compile(r"[-+*/]|$")


def _near_unit(word: str) -> Broken | None:
    if word in _NEAR_UNITS:
        nearest = _NEAR_UNITS[word]
        return Broken("unknown-unit/near", 0, 0, nearest=nearest)
    return Broken("unknown-unit", 0, 0) if word in units.OTHER_UNITS else None


def _function(word: str, start: int, end: int, called: bool) -> Broken | None:
    low = word.lower()
    if low in OTHER_FUNCTIONS:
        return Broken("unknown-function", start, end)
    stem = re.split("[^a-z]", low, maxsplit=1)[0]
    near = difflib.get_close_matches(stem, FUNCTIONS, n=1, cutoff=0.65)
    if near and word.islower() and len(stem) > 2:
        return Broken("unknown-function/near", start, end, nearest=FUNCTIONS[near[0]])
    return Broken("unknown-function", start, end) if called and word.islower() else None


def _lone_joint(joint: str, start: int, end: int, text: str, names: Names) -> Broken:
    behind = _BEHIND.match(text, end)
    other = names.joint(behind.group(1)) if behind else None
    if behind is not None and other is not None:
        pair = [name for name in names.meeting(joint) if name in names.meeting(other)]
        if pair and joint != other:
            return Broken("difference", start, behind.end(), example=_tight(pair[0]))
        return _no_member(joint, other, start, behind.end(), names)
    return _joint(joint, start, end, names)


def _tight(name: str) -> str:
    return name if "-" in name else spelling(name)


def _name(word: str, start: int, end: int, names: Names) -> Broken:
    pair = names.two_joints(word)
    joined = pair is not None and names.plainly(pair[0] + pair[1])
    if pair is not None and pair[0] != pair[1] and not joined:
        return _no_member(*pair, start, end, names)
    core = word.replace("{", "").replace("}", "")
    if (joint := _one_end(core, names)) is not None:
        meeting = _listed(names.meeting(joint))
        return Broken("unknown-name/end", start, end, joint=joint, meeting=meeting)
    base, _, sub = core.rpartition("_")
    base = base or core[:-1]
    sub = sub if base != core[:-1] else core[-1]
    if base and base.upper() in ("F", "S", "N", "T", "P") and names.joint(sub) is not None:
        return _one_joint(names.joint(sub) or sub, start, end, names)
    if _NUMBERED.fullmatch(core):
        return Broken("unknown-name/numbered", start, end, known=_listed(names.unknowns))
    if (empty := _no_component(core, start, end, names)) is not None:
        return empty
    joint = names.joint(sub) if base.upper() == "R" else names.joint(base)
    if joint is not None and base.upper() == "R" and len(both := _reactions_at(joint, names)) > 1:
        return Broken("unknown-name/whole", start, end, joint=joint, reactions=_listed(both))
    if joint is not None and (base.upper() == "R" or sub.lower() in ("x", "y")):
        reactions = _listed(names.reactions)
        return Broken("unknown-name/reaction", start, end, joint=joint, reactions=reactions)
    nearest = names.nearest(word)
    if nearest:
        likely = " or ".join(map(spelling, nearest))
        return Broken("unknown-name/near", start, end, nearest=likely)
    return Broken("unknown-name", start, end, known=_listed(names.unknowns))


def _one_end(core: str, names: Names) -> str | None:
    """The joint that a member's spelling starts or ends with, where the other end is no joint."""
    letters = core.rpartition("_")[2] if core[:1].upper() in "FSNT" else core
    if not (len(letters) == 2 and letters.isalpha() and letters.isupper()):
        return None
    return names.joint(letters[0]) or names.joint(letters[1])


def _joint(joint: str, start: int, end: int, names: Names) -> Broken:
    meeting = names.meeting(joint) or names.unknowns
    example = spelling(meeting[0]) if meeting else "F_AB"
    return Broken("unknown-name/joint", start, end, example=example)


def _one_joint(joint: str, start: int, end: int, names: Names) -> Broken:
    return Broken("unknown-name/one-joint", start, end, **_joint(joint, start, end, names).words)


def _reactions_at(joint: str, names: Names) -> tuple[str, ...]:
    return tuple(name for name in names.reactions if name in (f"{joint}_x", f"{joint}_y"))


def _no_component(core: str, start: int, end: int, names: Names) -> Broken | None:
    """The complaint about a component that a level or an upright member does not have."""
    axis = _AXES.get(core[-1:].lower())
    found = names.plainly(core[:-1].rstrip("_,"))
    slant = names.slant.get(found[0]) if len(found) == 1 else None
    if axis is None or slant is None or slant.share(axis).value > 1e-12:
        return None
    said_axis = "horizontal" if axis == "x" else "vertical"
    return Broken("unknown-name/component", start, end, axis=said_axis, member=found[0])


_AXES: Mapping[str, Axis] = {"x": "x", "h": "x", "y": "y", "v": "y"}


def _no_member(one: str, other: str, start: int, end: int, names: Names) -> Broken:
    met = names.meeting(one)
    if len(met) > 1:
        meeting = f"the members at {one} are {_listed(met)}"
    else:
        meeting = f"the only member at {one} is {met[0]}" if met else f"no member meets at {one}"
    pair = f"{one}-{other}" if len(one) + len(other) > 2 else one + other
    return Broken(
        "unknown-name/member", start, end, pair=pair, one=one, other=other, meeting=meeting
    )


def _listed(names: tuple[str, ...]) -> str:
    written = [name if "_" in name else spelling(name) for name in names]
    return listed(written, _MOST_LISTED) or "none"
