"""What does LaTeX say when it is pasted? Rewritten as one would type it, column by column."""

from __future__ import annotations

import re
from collections.abc import Mapping

from tutor.notation.elements.source import Source

_WORDS: Mapping[str, str] = {
    "cdot": "*", "times": "*", "ast": "*", "div": "/", "sum": "Σ", "Sigma": "Σ", "circ": "°",
    "degree": "°", "approx": "=", "simeq": "=", "cong": "=", "therefore": "∴", "because": "∵",
    "rightarrow": "→", "to": "→", "longrightarrow": "→", "leftarrow": "←", "longleftarrow": "←",
    "gets": "←", "uparrow": "↑", "downarrow": "↓", "Uparrow": "↑", "Downarrow": "↓",
    "nearrow": "↗", "nwarrow": "↖", "searrow": "↘", "swarrow": "↙",
    "Rightarrow": "⇒", "implies": "⇒", "Longrightarrow": "⇒", "iff": "⇒", "Leftrightarrow": "⇒",
    "circlearrowleft": "↺", "curvearrowleft": "↺", "acwopencirclearrow": "↺", "lcirclearrowleft": "↺",
    "circlearrowright": "↻", "curvearrowright": "↻", "cwopencirclearrow": "↻",
    "theta": "θ", "alpha": "α", "beta": "β", "gamma": "γ", "delta": "δ", "phi": "φ", "varphi": "φ",
    "vartheta": "θ", "psi": "ψ", "pi": "π", "prime": "'", "perp": "⊥", "parallel": "∥",
    "ldots": "...", "dots": "...", "cdots": "...", "lbrace": "{", "rbrace": "}", "lbrack": "[",
    "rbrack": "]", "newton": "N", "meter": "m", "metre": "m", "kN": "kN", "N": "N", "m": "m",
    "kilo": "k", "mega": "M", "kilonewton": "kN", "kip": "kip", "lbf": "lbf", "lb": "lb", "foot": "ft", "ft": "ft", "inch": "in",
    "milli": "m", "centi": "c", "mm": "mm", "cm": "cm", "arcsin": "asin", "arccos": "acos",
    "arctan": "atan", "sin": "sin", "cos": "cos", "tan": "tan", "cot": "cot", "sec": "sec",
    "csc": "csc", "vert": "|", "lvert": "|", "rvert": "|", "quad": "  ", "qquad": "  ",
    "hspace": " ", "checkmark": " ", "square": " ", "blacksquare": " ", "qed": " ", "qedhere": " ",
    "newline": " ", "cr": " ", "par": " ", "noindent": " ", "centering": " ", "strut": "", "relax": "",
    "hline": "", "toprule": "", "midrule": "", "bottomrule": "", "left": "", "right": "", "big": "", "Big": "", "bigl": "", "bigr": "", "Bigl": "", "Bigr": "",
    "displaystyle": "", "limits": "", "nolimits": "", "hfill": " ", "nonumber": "", "notag": "",
    "longmapsto": "→", "mapsto": "→", "colon": ":", "bullet": "•", "mathrm": "", "mathbf": "", "rm": "", "bf": "", "it": "", "mid": "|", "tg": "tan", "thinspace": " ",
}  # fmt: skip
_GROUP = r"\{((?:[^{}]|\{[^{}]*\})*)\}"
_FRACTION = re.compile(rf"\\(?:[dtcs]?frac|nicefrac) *(?:{_GROUP}|([0-9])) *(?:{_GROUP}|([0-9]))")
_OVER = re.compile(r"\{([^{}]*)\\over(?![A-Za-z])([^{}]*)\}")
_ROOT = re.compile(rf"\\sqrt *(?:\[2\])? *(?:{_GROUP}|([0-9]))")
_BRACED_OFF = re.compile(rf"\\(?:under|over)brace *{_GROUP} *[_^] *{_GROUP}")
"""What a brace says below or above a part of a formula, which only explains it."""
_CANCELLED = re.compile(rf"\\(?:[bx]?cancel|cancelto *\{{ *0 *\}}) *{_GROUP}(?P<anew> *[0-9])?")
_OPTIONS = r"(?: *\[[a-z-]+ *=[^\[\]\\]*\])?"
_QUANTITY = re.compile(rf"\\(?:SI|qty){_OPTIONS} *\{{([^{{}}]*)\}} *\{{([^{{}}]*)\}}")
_ANGLE = re.compile(rf"\\ang{_OPTIONS} *\{{([^{{}};]*)(?:;([^{{}};]*);?([^{{}};]*))?\}}")
_RAISED = re.compile(r"(?:\{\})?\^\{?([0-9]{1,3})\}?(?:\\!)*/(?:\\!)*_\{?([0-9]{1,3})\}?")
"""A fraction of figures set above and below the line: {}^3/_5."""
_STYLED = re.compile(
    r"\\(?:mathrm|text|textrm|textbf|textit|mathbf|mathit|mathsf|operatorname\*?|vec|overline|bar"
    r"|boxed|underline|boldsymbol|mathcal|bigl?|(?:text)?color *\{[^{}]*\}|rm|mbox|hbox|bm|num|si|unit|ensuremath|fbox|left|underbrace|textnormal"
    r"|math(?:op|ord|bin|rel|tt|normal)|emph|text(?:sf|tt)|pmb|(?:short)?intertext"
    r"|overrightarrow|hat|widehat|tilde)" + _OPTIONS + " *" + _GROUP
)
_SWITCHED = re.compile(r"\{ *\\(?:rm|bf|it|sf|tt) +([^{}\\]*)\}|\{(-)\}")
_TAG = re.compile(r"\\(?:tag\*?|l?eqno) *(?:\{\(?([^{}()]*)\)?\}|\((\w{1,4})\))")
_NOTE = re.compile(r"\\footnote *\{([^{}]*)\}")
_DROPPED = re.compile(
    r"\\begin *\{(?:array|tabular)\} *\{[^{}]*\}"
    r"|\\(?:text)?color *\{[^{}]*\}(?! *\{)|&\{\}|~?\\cite *\{[^{}]*\}|\\\\\[[-0-9.a-z]*\]|\\(?:label|begin|end|phantom|hphantom|vspace|hspace\*?) *\{[^{}]*\}"
    r"|\\left *(?:\\[{}|]|\.)(?=.*\\right *\.)|\\right *\."
)
_DEGREE = re.compile(
    r"\^ *(?:\{ *(?:\\circ|\\degree|°|o|∘) *\}|\\circ(?![A-Za-z])|\\degree(?![A-Za-z])|°)"
)
_INVERSE = re.compile(r"(?<=sin|cos|tan) *\^ *\{ *- *1 *\}")
_WORD = re.compile(r"\\([A-Za-z]+) ?")
_ESCAPED = re.compile(r"\\[{}._#*+-]")
_STACKED = re.compile(
    r"\\(?:overset|underset|stackrel) *\{([^{}]*)\} *\{([^{}]*)\}"
    r"|\\x(right|left)arrow *(?:\[[^\[\]]*\])? *\{([^{}]*)\}"
)
_TIMES = re.compile(r"(?<=[0-9)}])\\, *\(")
"""A thin space between a number and a bracket that multiplies it."""
_NEXT_ROW = re.compile(r"(?<=[\w)}\]°.,]) *\\\\(?= *&? *[^ &=][^=]*[^ :=&] *&?=(?!.*\\\\ *&? *=))")
"""Between two rows of a display that each set two sides equal."""
_ROW = re.compile(r"^(?!.*(?:& *=|= *&)).*[^\\&] & ")
_CELL = re.compile(r" +& +")
"""What parts the cells of a table; beside an = it only lines up the rows of a display."""
_SPACE = re.compile(r"\\[,;:! ]|~|\\\\|&|\$|\\[()\[\]]")
_LISTED = re.compile(r"^ *[-–—+*] +(?=\$|\\\()")
"""A bullet before a formula: what would be its sign stands within."""
_TEX = re.compile(r"\\|\$[^$]*\$|&=|=&|&\{\}|\^ *∘|\w~")
_EMPTY_LIMITS = re.compile(r"\\sum *(?:_ *\{\})? *(?:\^ *\{\})?")


def untexed(source: Source) -> Source:
    """The source with LaTeX spelled as one types; text without any stays as it is."""
    if "{ " in source.text and _SPACED_OUT.search(source.text) is not None:
        source = _closed_up(source)
    text = source.text
    if not any(char in text for char in "\\$&~∘") or not _TEX.search(text):
        return source
    source = source.rewritten(_LISTED, "").rewritten(_DROPPED, "").rewritten(_DEGREE, "°")
    source = source.rewritten(_ESCAPED, lambda found: found[0][1])
    source = source.rewritten(_TAG, lambda found: f"  ({found[1] or found[2]})")
    source = source.rewritten(_NOTE, lambda found: f"  [{found[1]}]")
    source = source.rewritten(_RAISED, lambda found: f"({found[1]}/{found[2]})")
    for _ in range(12):
        before = source.text
        source = source.rewritten(_BRACED_OFF, lambda found: found[1])
        source = source.rewritten(_CANCELLED, _cancelled)
        source = source.rewritten(_QUANTITY, lambda found: f"{found[1]} {found[2]}")
        source = source.rewritten(_ANGLE, _angle).rewritten(
            _SWITCHED, lambda found: found[1] or "-"
        )
        source = source.rewritten(_STYLED, lambda found: found[1])
        source = source.rewritten(_STACKED, _stacked)
        source = source.rewritten(_ROOT, lambda found: f"sqrt({found[1] or found[2]})")
        source = source.rewritten(_OVER, lambda found: f"(({found[1]})/({found[2]}))")
        source = source.rewritten(_FRACTION, _fraction)
        source = source.rewritten(_SUBSCRIPT, lambda found: f"_{{{found[1]}{found[2]}}}")
        if source.text == before:
            break
    source = source.rewritten(_EMPTY_LIMITS, "Σ")
    if _ROW.match(source.text):
        source = source.rewritten(_CELL, " | ")
    source = source.rewritten(_NEXT_ROW, "; ").rewritten(_TIMES, "(").rewritten(_SPACE, " ")
    source = source.rewritten(_WORD, _word)
    return source.rewritten(_INVERSE, "^-1")


_SUBSCRIPT = re.compile(r"_\{([^{}]*)\{([^{}]*)\}(?=[^{}]*\})")


_SPACED_OUT = re.compile(r"[\w}] ?[_^] \{ ")
"""What sets each character apart, as a formula that was read off a picture does: A _ { y }."""
_BEFORE_SIGN = re.compile(r" *(?P<sign>[_^]|(?<=[0-9] )[.,](?= [0-9])) *")
_BRACED = re.compile(r"\{ (?P<inner>[^{}]*?) *\}")
_FIGURES = re.compile(r"(?<=[0-9]) (?=[0-9])")


def _closed_up(source: Source) -> Source:
    source = source.rewritten(_BEFORE_SIGN, lambda found: found["sign"])
    source = source.rewritten(
        _BRACED,
        lambda found: (
            None if "\\" in found["inner"] else "{" + found["inner"].replace(" ", "") + "}"
        ),
    )
    return source.rewritten(_FIGURES, "")


def _cancelled(found: re.Match[str]) -> str:
    """What is struck out: a term of a sum is nothing, with another or its own sign in its place it is gone."""
    gone = "=" in found[1] or found[1].lstrip()[:1] in ("+", "-")
    return found["anew"] or (" " if gone else "0")


def _angle(found: re.Match[str]) -> str:
    """An angle, which may have its minutes and seconds behind a ;."""
    degrees, minutes, seconds = (part.strip() if part else "" for part in found.groups())
    return degrees + "°" + (f"{minutes}'" if minutes else "") + (f'{seconds}"' if seconds else "")


def _fraction(found: re.Match[str]) -> str:
    top, bottom = found[1] or found[2] or "", found[3] or found[4] or ""
    return f"(({top})/({bottom}))"


def _stacked(found: re.Match[str]) -> str:
    """A sign above an arrow or a letter, before it."""
    if found[3]:
        return f" {found[4]}{'→' if found[3] == 'right' else '←'} "
    return "=" if found[2] == "=" else f"{found[1]}{found[2]}"


def _word(found: re.Match[str]) -> str | None:
    word = found[1]
    if word in ("sin", "cos", "tan", "cot", "sec", "csc", "arcsin", "arccos", "arctan"):
        return f" {_WORDS[word]} "
    return _WORDS.get(word)
