"""What do marked-up pages and word processors say when they are pasted? Taken off, column by column.

HTML, Markdown, and the linear form in which a word processor keeps a formula (∑▒〖M_A=0〗). LaTeX has
a module of its own.
"""

from __future__ import annotations

import re
from html import unescape

from tutor.notation.elements.characters import plain
from tutor.notation.elements.source import Source
from tutor.notation.lines.struck import without_struck
from tutor.notation.pages.mathml import without_mathml

_MARKS = frozenset("<>&*`~▒〖〗├#[_/%'\"\\|‗﹍﹎﹏▔")
_RULE = re.compile(r"^[ |:]*-{3,}[- |:]*$|^ *\\(?:begin|end) *\{[^{}]*\}(?:\{[^{}]*\})? *$")
"""What draws a line in a table, or begins and ends a display."""
_ITEM = re.compile(r"^ *(?:\\item\b *(?:\[[^\[\]]*\])? *|(?:> ?)+)")
_TITLE = re.compile(
    r"^ *\\(?:(?:sub)*section|(?:sub)?paragraph)\*? *\{(?P<title>[^{}]*(?:\{[^{}]*\}[^{}]*)*)\}"
)
_SAID = re.compile(r'"(?P<said>[A-Za-zΣ][^"]{0,80}| [A-Za-z][A-Za-z· ]{0,30})"')
_LINKED = re.compile(r"^ *\[(?P<inner>[^\[\]]*=[^\[\]]*)\]\((?:#|/|https?:)[^() ]*\) *$")
"""A formula that is a link: [0.6 AB = 3](#eq1)."""
_WHEN = r"(?:[0-9]{1,4}[./-][0-9]{1,2}[./-][0-9]{1,4},? +)?[0-9]{1,2}:[0-9]{2}(?::[0-9]{2})?(?: ?[AaPp][Mm])?"
_WHO = r"[A-Z][\w.'-]{1,15}(?: [A-Z][\w.'-]{0,15}){0,2}"
SENT = re.compile(
    r"^ *(?:\[(?:[0-9./-]{5,10},? +)?[0-9]{1,2}[:.][0-9]{2}(?:[:.][0-9]{2})?(?: ?[AaPp][Mm])?\] *(?:[A-Z][\w .'-]{0,30}: +)?"
    rf"|{_WHEN}(?: *[-,] *| +){_WHO}: +|{_WHO},? +[(\[]?{_WHEN}(?:[)\]]?: +|\] +)|(?:[(\[]?{_WHEN}[)\]]? +)?<[@+ ]?[\w-]{{2,16}}> +(?!.*</)|[a-z]{{3,15}} ?> +(?=.*=)|@\w{{2,20}}[,:]? +)"
)
"""The time of a message and who wrote it."""
_ENTITY = re.compile(r"&(?:[A-Za-z]{2,8}|#[0-9]{2,6}|#[xX][0-9A-Fa-f]{2,5});")
_FRACTION = re.compile(r"<sup>([0-9.]{1,12})</sup> ?/ ?<sub>([0-9.]{1,12})</sub>", re.IGNORECASE)
_ITALIC_LETTERS = re.compile(
    r"(?:\*{1,2}([A-ZΣ][A-Za-z0-9Σ]{0,3})\*{1,2}|(?<![\w}])_([A-ZΣ][A-Za-z]{0,2})_)(?=<sub>|~\w)"
    r"|\*([A-ZΣ]\w{0,2}(?:~\w{1,4}~|<sub>\w{1,4}</sub>))\*"
)
_SUB = re.compile(r"<sub>([^<>]{0,20})</sub>|(?<=[\w*])~([\w,.+-]{1,8})~", re.IGNORECASE)
_SUP = re.compile(r"<sup>([^<>]{0,20})</sup>", re.IGNORECASE)
_CELLS = re.compile(r"</t[dh]> *<t[dh](?: [^<>]{0,80})?>", re.IGNORECASE)
_TAGS = re.compile(
    r"</?(?:i|b|u|s|em|strong|small|big|p|br|span|div|font|code|tt|var|math|mi|mn|mo|mrow|table|t(?:d|h|r|head|body)|ul|ol|li|h[1-6])"
    r"(?: [^<>]{0,80})?/?>",
    re.IGNORECASE,
)
_BOLD = re.compile(r"(\*{2,3})(?=\S)(.{1,300}?)(?<=\S)\*{2,3}(?=[ :;,.]|$)")
_ITALIC = re.compile(r"\*(?=\S)([^*]{1,80})(?<=\S)\*(?=[ :;,.]|$)")
_UNDERLINED = re.compile(
    r"(?:(?<= )|^)(?:__(?=[^\s_])((?:[^_\s]|_(?!_)| ){1,80}?)(?<=[^\s_])__|_(?=[A-Z][a-z])([^_=]{3,40}[:.])_)(?=[ :;,.]|$)"
)
"""Underlined, or in italics a heading: __A_y = 550 lb__, _Joint A, x:_."""
_UNDERLINED_LAST = re.compile(
    r"(?<= )(?P<mark>_{1,2})(?P<inner>[-+(0-9][^_]{0,80}?)(?<! )(?P=mark)(?=[ .,;]*$)"
)
_DRAWN_UNDER = re.compile(r"(?<=[\w)\]}.!]) +(?:_{2,}|[‗﹍﹎﹏▔]{1,40})[_‗﹍﹎﹏▔ ]*$")
"""The stroke, or two, that one draws under a result."""
_WIKI = re.compile(r"(?<![0-9])'{2,3}(?=[A-Za-z])([^']{1,60})'{2,3}")
_BOARD = re.compile(
    r"\[(?P<tag>tex|latex|math|[biu]|code|quote|sub|sup)\](?P<inner>[^\[\]]*)\[/(?P=tag)\]"
)
"""The marks of a board for messages: [b]A:[/b], F[sub]AB[/sub]."""
_HELD = re.compile(
    r"^ *(?:(?:stem|latexmath|asciimath):\[(?P<inner>.*)\]|\|\|(?P<hidden>[^|]*)\|\|) *$"
)
_ON_PAGE = re.compile(r"~~|</|\[/|\|\||:\[|''|[#%]|//|--")
_AT_FRONT = re.compile(r"^ *(?:(?:[-*+] +\[[ xX]\]|#{1,6}) +|[-+•–—] +(?=\*\*[\w{]|`))")
_IN_UNIT = re.compile(
    r"(?<=[0-9)])[;,]? +(?://|#|%|--) *(?P<unit>kN|MN|N|lbf?|kips?)(?: *[,;]? *(?P<words>[A-Za-z][^\[\]=]*?))? *$"
)
"""The unit of a value in the comment behind it: -40;  % kN, compression."""
_REMARK = re.compile(r"(?<=[\w)\]}])[;,]? +(?://|#|%) *(?P<words>[A-Za-zΣ][^\[\]=]*?) *$")
_SETS = re.compile(r"=|<-")
_NUMBERED = re.compile(r" ?#\((?P<number>[0-9]{1,2}[a-z]?)\) *$")
_QUOTED = re.compile(r"^ *(?P<mark>`+|') ?(?P<inner>[^`]*?) ?(?P=mark) *$")
_CODE = re.compile(r"`+([^`]+)`+")
_ABOUT = re.compile(r"Σ_\(?(?P<point>[A-Za-z][A-Za-z0-9]{0,3})\)?▒(?P<group>〖?) *M(?![\w_])")
_FENCE = re.compile(r"├ ?([(\[{])?|┤ ?([)\]}])?")
_OPERATES = re.compile("▒")
_GROUPED = re.compile(r"〖([^〖〗]*)〗(?P<lower>_?)")
_STRAY_LIMIT = re.compile(r"(?<=Σ)(?:_?\^?[0-9]?)(?=▒)")
_FUNCTIONS = frozenset({"sin", "cos", "tan", "cot", "arcsin", "arccos", "arctan", "log", "ln"})
_BEFORE_A_MARK = "([{=+-:;,|→⇒∴>"
_BEHIND_A_MARK = (" ", ":", ";", ",")


def unmarked(source: Source) -> Source:
    """The source without what marks up a page: F<sub>AB</sub>, &minus;, **bold**, ∑▒〖M_A=0〗."""
    source = without_struck(source)
    if _MARKS.isdisjoint(source.text):
        return source.rewritten(SENT, "")
    source = source.rewritten(_RULE, "").rewritten(_ITEM, "").rewritten(SENT, "")
    if _ON_PAGE.search(source.text) is not None:
        source = source.rewritten(_BOARD, _on_board)
        source = source.rewritten(_HELD, lambda found: found["inner"] or found["hidden"])
        source = source.rewritten(_WIKI, lambda found: found[1])
        source = source.rewritten(_IN_UNIT, _in_unit)
    source = source.rewritten(_LINKED, lambda found: found["inner"])
    source = source.rewritten(_TITLE, lambda found: found["title"])
    source = source.rewritten(_SAID, lambda found: found["said"])
    source = source.rewritten(_AT_FRONT, "").rewritten(
        _UNDERLINED, lambda found: found[1] or found[2]
    )
    source = source.rewritten(_NUMBERED, lambda found: f"  ({found['number']})")
    source = source.rewritten(_REMARK, _remark)
    source = source.rewritten(_ENTITY, _entity)
    if not {"▒", "〖", "├"}.isdisjoint(source.text):
        source = _linear(source)
    if "<" in source.text or "~" in source.text:
        source = without_mathml(source)
        source = source.rewritten(_FRACTION, lambda found: f"({found[1]}/{found[2]})")
        source = source.rewritten(_ITALIC_LETTERS, lambda found: found[1] or found[2] or found[3])
        for _ in range(2):
            source = source.rewritten(_SUB, lambda found: f"_{{{found[1] or found[2]}}}")
        source = (
            source.rewritten(_SUP, lambda found: f"^({found[1]})")
            .rewritten(_CELLS, " | ")
            .rewritten(_TAGS, "")
        )
    if "*" in source.text:
        source = source.rewritten(_BOLD, lambda found: _set_off(found, found[2], True))
        source = source.rewritten(_ITALIC, lambda found: _set_off(found, found[1], False))
    if "_" in source.text:
        source = source.rewritten(_UNDERLINED_LAST, lambda found: found["inner"])
    source = source.rewritten(_QUOTED, lambda found: found["inner"]).rewritten(_DRAWN_UNDER, "")
    return source.rewritten(_CODE, lambda found: found[1])


def _entity(found: re.Match[str]) -> str | None:
    char = plain(unescape(found[0]))
    if char == ">" and found.string[found.start() - 1 : found.start()] in ("=", "-"):
        return char
    return char if len(char) == 1 and char.isprintable() and char not in "<>&" else None


def _on_board(found: re.Match[str]) -> str:
    mark = {"sub": "_", "sup": "^"}.get(found["tag"])
    return f"{mark}{{{found['inner']}}}" if mark else found["inner"]


def _in_unit(found: re.Match[str]) -> str:
    return f" {found['unit']}" + (f"  [{found['words']}]" if found["words"] else "")


def _remark(found: re.Match[str]) -> str | None:
    """A remark behind a line, in brackets as one writes it on paper."""
    return f"  [{found['words']}]" if _SETS.search(found.string, 0, found.start()) else None


def _set_off(found: re.Match[str], inner: str, doubled: bool) -> str | None:
    """What stands between asterisks that multiply nothing: none stands where a power would, or nothing
    stands before the first, or behind the last."""
    text = found.string
    before, behind = text[: found.start()], text[found.end() :]
    multiplies = bool(before.strip()) and before.rstrip()[-1] not in _BEFORE_A_MARK
    last = before[-1:] == " " and not behind.strip(" .,;")
    apart = doubled and before[-1:] == " " and behind[:1] in _BEHIND_A_MARK
    return inner if not multiplies or last or apart else None


def _linear(source: Source) -> Source:
    """A formula in its linear form: 〖 〗 hold together what is shown without brackets."""
    source = source.rewritten(
        _ABOUT, lambda found: f"{'▒' + found['group'] if found['group'] else ''}ΣM_{found['point']}"
    )
    source = source.rewritten(_STRAY_LIMIT, "")
    source = source.rewritten(
        _FENCE, lambda found: found[1] or found[2] or ("(" if "├" in found[0] else ")")
    )
    for _ in range(8):
        before = source.text
        source = source.rewritten(_GROUPED, _group)
        if source.text == before:
            break
    return source.rewritten(_OPERATES, "")


def _group(found: re.Match[str]) -> str:
    inner, before = found[1], found.string[: found.start()]
    shown = inner.strip() in _FUNCTIONS or "=" in inner or before.endswith("▒")
    return f"{inner}_" if found["lower"] else inner if shown else f"({inner})"
