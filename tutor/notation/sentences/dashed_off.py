"""Which words does a line set off by a dash: "F_CF = F_BC - no sideways load at C", "... = 0 - BC just hangs the load up"?

A dash behind a whole equation is a comma where a clause stands behind it: words that begin one, or a force and
its verb. Before anything that may be a term it stays a minus.
"""

from __future__ import annotations

import re

from tutor.notation.elements.lexicon import folded
from tutor.notation.elements.source import Source
from tutor.notation.formulas.words import ANGLES, FUNCTIONS
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import LETTERS
from tutor.notation.sentences.aside_words import complete
from tutor.notation.sides.ending import COUNTING

_DASH = re.compile(
    rf"(?<=[\w)\]}}°.]) +-(?= +(?P<first>[{LETTERS}][\w{{}}'-]*) +(?P<second>[a-z']{{2,}})\b(?P<third> +[a-z']{{2,}}\b)?)"
)
_IS_NUMBER = re.compile(r"\bis *-?[0-9.,]*[0-9](?: ?(?:k?N|MN|kips?|k|lbs?))?$")
_BEGINS = frozenset(["no", "nothing", "none", "since", "because", "as", "only", "just", "by", "from", "which", "where", "but", "note", "here", "there", "it", "neither", "same", "also", "symmetry", "nobody"])  # fmt: skip
"""Words that begin a clause and no term: not "the", behind which a force may be spoken of, and not "so", which a value follows."""
_VERBS = frozenset(["just", "only", "also", "simply", "is", "was", "has", "must", "does", "can", "will", "hangs", "holds", "carries", "takes", "pulls", "pushes", "lifts", "acts", "bears", "keeps", "supports", "props", "stands", "balances", "stays", "merely"])  # fmt: skip


def dashed_off(source: Source, names: Names) -> Source:
    """The source with a comma for a dash that sets a clause of words off from a whole equation."""
    if " -" not in source.text:
        return source
    return source.rewritten(_DASH, lambda found: _comma(found, names))


def _comma(found: re.Match[str], names: Names) -> str | None:
    first, second = found["first"], found["second"]
    forces = bool(names.meanings(first)) and not first.islower()
    begins = folded(second) in _VERBS if forces else folded(first) in _BEGINS
    counts = any(_counts(word, names) for word in (second, (found["third"] or "").strip()))
    before = found.string[: found.start()]
    whole = complete(before) or _IS_NUMBER.search(before) is not None
    return "," if begins and whole and not counts else None


def _counts(word: str, names: Names) -> bool:
    """Whether a word may be a number, a function, an angle or a force."""
    return word in COUNTING or word in FUNCTIONS or word in ANGLES or bool(names.plainly(word))
