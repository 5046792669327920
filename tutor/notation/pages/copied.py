"""What has copying made of the signs on a page? © and å and (cid:80) for Σ, c for ↑, :. for ∴, O for 0.

A PDF gives the signs of its symbol fonts by other characters, a scan takes letters for figures. The
signs are read where nothing else can be meant; a figure is asked about, save where the line is right with it.
"""

from __future__ import annotations

import itertools
import re
from collections.abc import Collection

from tutor.notation.elements.source import Source
from tutor.notation.elements.tree import Span
from tutor.notation.elements.unreadable import Broken
from tutor.notation.naming.names import Names

_LOST = re.compile(
    r"[©åƩ:⁰ᵒᴼ]|\^ ?\{? ?°|[0-9] ?\^? ?\{? ?[oO](?![\w(])|[0-9] ?deg(?:ree)?s?\.|\.['’]\.",
    re.IGNORECASE,
)
_DEGREES = re.compile(
    r"(?P<angle>(?<![A-Za-z])(?:sin|cos|tan|sen|cot) *[(\[{]? *[0-9]{1,3}(?:[.,][0-9]+)?)(?: ?(?:\^? ?(?:\{ ?[oO] ?\}|[oOᵒᴼ](?![\w(]))|⁰)|(?P<blank> ?)deg(?:ree)?s?\.)"
)
"""The sign of degrees as a raised o or 0 that has come down, or the word cut short."""
_DEGREES_ABOVE = re.compile(r"\^ ?(?:°|\{ ?° ?\})")
_CUT_POINT = re.compile(r"(?<![\w.,)\]}])0 \.(?=[0-9])")
"""The point of a number set off from its nought."""
_CUT_STOP = re.compile(r"^(?P<count> *[0-9]{1,2}) \.(?= +[^0-9 ])")
"""The point behind the number of a line set off from it."""
_SUM_IS = re.compile(r"(?:Σ|(?<!\w)F_?[xyXYhvHV]|(?<!\w)M)[^=]*= *$")
"""A heading whose sum is zero, with a share behind it: ΣFy = 0 .6 F_AB + A_y = 0."""
_SUM = re.compile(
    r"(?:[©å]|\(cid:[0-9]{1,3}\))(?= ?(?:F(?:_|[xyXY]| ?[=:]|$)|M(?:_|[A-Z0-9]| )))|Ʃ"
)
_SENSE = re.compile(
    r"^ *(?:\+ ?[:abctTfl†]|[:abct†] ?\+) ?(?=Σ|[ZE] ?(?:F_?[xyXY]|M_?[A-Z][0-9]?) *[=:])|^ *(?:\+ ?:|: ?\+) ?(?=F_?[xy])"
)
"""The arrow of the positive sense beside a sum: → as :, ↑ as c, a turning one as a or b."""
_SO = re.compile(r"(?:^|(?<=[ ;,])) *(?::\.|\.:|\.['’]\.)(?= {0,3}[A-Za-z_{\\])")
_E_FOR_SIGMA = re.compile(
    r"^(?P<lead> *(?:(?:at |for )?(?:joint|pin|node) \w{1,3}[:,.]? +)?)(?P<letter>[EeZ2])(?P<apart> ?)"
    r"(?:(?P<force>[Ff]_?[xyXY])|[Mm][ _]?(?P<point>[A-Za-z][0-9]{0,2}))(?= *[=:]| +[0-9])"
)
_NO_COMPONENT = re.compile(r" *:| +[0-9]| *=[^=]*=| *= *0 *[^ =0-9.*/]")
_FALLEN = re.compile(
    r"(?<![\w}])R (?P<joint>[A-Z][0-9]?)(?= *(?:$|[-+=*/·;,)]|[(\[]|(?:sin|cos|tan)(?![A-Za-z])))"
)
_LIKE_FIGURES = re.compile(
    r"(?<![A-Za-z_{\\0-9OolI|])(?=[OolI|.,]*[0-9])[0-9OolI|.,]*[OolI|][0-9OolI|.,]*(?![A-Za-z_({])"
)
_SCANNED = re.compile(
    r"(?<![\w{}\\|.,])(?=[OolI|.,]*[0-9])[0-9OolI|.,]*[OolI|][0-9OolI|.,]*(?![\w{|])"
    r"|(?:(?<==)|(?<== ))[Oo](?= *(?:$|[,;⇒→∴]))"
)
"""The same where the figures are tried, and a letter that something is set equal to."""
_NOUGHT = re.compile(r"[Oo][.,][0-9]{1,4}")
_FIGURES = str.maketrans("OolI|", "00111")
_ASKED = ("unknown-name", "unknown-function", "character", "comma", "number")


def recopied(source: Source) -> Source:
    """The source with the signs that a page showed."""
    source = source.rewritten(_CUT_POINT, _joined)
    source = source.rewritten(_CUT_STOP, lambda found: f"{found['count']}.")
    text = source.text
    if _LOST.search(text) is None and not text.lstrip().startswith(("+", "a", "b", "c")):
        return source
    source = source.rewritten(_DEGREES_ABOVE, "°").rewritten(
        _DEGREES, lambda found: f"{found['angle']}°"
    )
    return source.rewritten(_SUM, "Σ").rewritten(_SENSE, "").rewritten(_SO, "∴")


def _joined(found: re.Match[str]) -> str | None:
    """A number whose point is set off, where its nought is not what a sum comes to."""
    return None if _SUM_IS.search(found.string[: found.start()]) else "0."


def said_once(source: Source) -> Source:
    """The source with a formula that was copied as it is shown and as it is written taken once."""
    text = source.text
    places = [place for place, char in enumerate(text) if char not in " _{}(),"]
    for times in (2, 3) if "=" in text else ():
        size, rest = divmod(len(places), times)
        said = "".join(text[place] for place in places)
        if rest or "=" not in said[:size] or said != said[:size] * times:
            continue
        cuts = [*places[::size], len(text)]
        written = [Span(start, end) for start, end in itertools.pairwise(cuts)]
        return source.made_of([max(written, key=lambda span: span.end - span.start)])
    return source


def as_meant(source: Source, names: Names) -> Source:
    """The source with Σ for the E, Z or 2 that stands for it, and R_D for an R whose subscript has fallen: R D.

    Beside a member EF it is Σ only where no component can be meant.
    """
    source = source.rewritten(_FALLEN, lambda found: _reaction(found, names))
    return source.rewritten(_E_FOR_SIGMA, lambda found: _sigma(found, names))


def _reaction(found: re.Match[str], names: Names) -> str | None:
    name = f"R_{found['joint']}"
    return name if len(names.meanings(name)) == 1 and names.joint("R") is None else None


def _sigma(found: re.Match[str], names: Names) -> str | None:
    word = f"{found['letter']}{found['force'] or 'M' + found['point']}"
    if found["point"] and names.joint(found["point"]) is None:
        return None
    if found["apart"] and names.joint(found["letter"]) is not None:
        return None
    if names.meanings(word) and _NO_COMPONENT.match(found.string, found.end()) is None:
        return None
    what = found["force"] or f"M_{names.joint(found['point'])}"
    return f"{found['lead']}Σ{what}"


def letters_as_figures(
    text: str, names: Names, letters: Collection[str]
) -> tuple[str, tuple[Span, ...]] | None:
    """The text with figures for the letters among figures, and where they stand; None where one may be a name."""
    places = [Span(*found.span()) for found in _SCANNED.finditer(text)]
    if not places:
        return None
    for span in places:
        word = text[span.start : span.end].strip(".,")
        meant = (word, *filter(str.isalpha, word))
        if any(names.meanings(each) or names.joint(each) or each in letters for each in meant):
            return None
    figured = _SCANNED.sub(lambda found: as_figures(found[0]), text)
    return figured, tuple(places)


def is_nought(word: str) -> bool:
    """Whether the one letter of a number is the nought before its point, which no other figure may be: O.6."""
    return _NOUGHT.fullmatch(word) is not None


def as_figures(word: str) -> str:
    """The number that a scan has made letters of."""
    return word.translate(_FIGURES)


def figures_asked(broken: Broken, text: str) -> Broken:
    """The complaint, or the question whether a letter among figures is a figure: 26O for 260."""
    key = broken.key.partition("/")[0]
    if key not in _ASKED:
        return broken
    pattern = _SCANNED if key == "unknown-function" else _LIKE_FIGURES
    for found in pattern.finditer(text):
        if found.start() <= broken.start < found.end():
            word = found[0].rstrip(".,")
            place = found.start(), found.start() + len(word)
            return Broken("number/letters", *place, meant=as_figures(word))
    return broken
