"""Which symbols does a line bring in: "let S be the thrust in BD", C_RS, "h the horizontal component of CE"?

Each is spelled as the force that it stands for: a thrust as that force with the other sign.
"""

from __future__ import annotations

import re

from tutor.notation.elements.same import are_same
from tutor.notation.elements.source import Source
from tutor.notation.elements.unreadable import Broken
from tutor.notation.formulas.evaluate import Frame, constant
from tutor.notation.naming.names import Names, spelling
from tutor.notation.naming.symbols import FREE_LETTERS, LETTERS, NAME
from tutor.notation.pages.meeting import about_meetings
from tutor.notation.sides.formula import sides_of

_PUSH = r"(?:thrust|push|compression|compressive force|strut force|druckkraft)"
_PULL = (
    r"(?:tension|pull|tensile force|force|axial force|bar force|load carried|zugkraft|stabkraft)"
)
_PART = r"(?P<axis>horizontal|vertical|x|y)[ -]*(?:components?|part|projection)"
_IN = r"(?:in|of|by|along)(?: +(?:the|force|in|thrust|tension|member|bar|strut|tie|rod|post|diagonal|chord))*"
_NAME = rf"(?P<name>[{LETTERS}][\w{{}}'-]*)"
_WHAT = rf"(?:the +)?(?:(?:(?P<push>{_PUSH})|{_PULL}|{_PART}) +{_IN}|stab|member|bar|rod) +{_NAME}"
_LETTER = r"(?P<letter>(?<![\w}])(?:[A-Za-z]|[A-Z]_?\{?[0-9]\}?)(?![\w{'(]))"
_IS = r"(?:be|being|denotes?|denoting|represents?|representing|stands? for|is|=|for)"
_SO_THAT = r"(?P<behind>(?: +(?:at|on) +[A-Z]\w?)?(?:,? +so +that +its +(?:other|vertical|horizontal|x|y)[^,;:.=]*)?)"
_LET = re.compile(
    rf"(?:\b(?:let|call|denote|say|where|with|if|write|mit|wobei|sei|avec)\b,? +)?{_LETTER} +{_IS} +{_WHAT}{_SO_THAT}(?: *(?:[.,;:]|and\b)(?= |$))?",
    re.IGNORECASE,
)
_ANGLE_TYPED = r" *[*·]? *(?:sin|cos) *\(?[0-9.]+ *(?:°|deg(?:rees)?\b)?\)?"
_LET_NAME = re.compile(
    rf"\b(?:let|call|say|put|set|write)\b +{_LETTER} *(?:=|be\b|for\b) *(?P<what>(?:\(?[0-9]+/[0-9]+\)? *[*·]? *)?"
    rf"[{LETTERS}][\w{{}}]*(?:{_ANGLE_TYPED})?)(?:, +(?:the|its|an?)\b[a-z ]+)?(?: *[.,;:](?= )| and\b)",
    re.IGNORECASE,
)
_IN_FRONT = re.compile(
    r"(?P<before>^|[:;,] *)(?P<letter>[HVXY]) *= *(?P<what>[(\[]?[0-9][0-9./]*[)\]]? ?[*·]? ?[A-Z][\w{}]*"
    rf"|[A-Z][\w{{}}]*{_ANGLE_TYPED})(?: *[;,.](?= ))"
)
_FACTOR_IS = re.compile(
    r"^ *(?:(?:with|let|where|put|say) +)?(?P<letter>[a-z]) *= *(?P<what>(?:sin|cos|tan) ?\(?[0-9.]+ ?(?:°|deg)?\)?|[0-9.]+ ?/ ?(?:[0-9.]+|√ ?[0-9]+))"
    r"(?: *= *(?P<again>[0-9.]+(?: ?/ ?(?:[0-9.]+|√ ?[0-9]+))?))? *[,;:](?= )"
)
_CALL = re.compile(
    rf"\b(?:let|call|denote|write)\b +(?P<what>{_WHAT})(?: +(?:be|by|as|is|=))? +{_LETTER}{_SO_THAT}(?: *(?:[.,;:]|and\b)(?= |$))?",
    re.IGNORECASE,
)
_VALUE_BEING = re.compile(
    rf"{_LETTER}(?P<value> *= *[-+]?[0-9][0-9.]*(?: *[A-Za-z]{{1,3}})?),? +being +{_WHAT}",
    re.IGNORECASE,
)
_GIVEN_AS = re.compile(
    rf",? *\b(?:where|with|mit|wobei|avec)\b +{_LETTER} *= *(?P<what>(?:[^-=,;:∴⇒→]|-(?!>))*[A-Z](?:[^-=,;:∴⇒→]|-(?!>))*)(?P<alike>(?:= *[A-Z][\w{{}}]* *)+)?(?P<worth>= *[-+]? ?[0-9][0-9.,]*(?<![.,])(?: ?(?:k?N|MN|kips?|k|lbs?))? *)?(?=$|[,;:∴⇒→]|[-=]>)"
)
_WITHOUT = frozenset("NmkxyM")
"""Letters that stand for a unit, for times or for a sum."""
_THRUST = re.compile(r"(?<![\w}])C_(?:\{(?P<braced>[^{}=]+)\}|(?P<name>[A-Z][\w-]*))")
_SPEAKS_OF = re.compile(
    rf"[,;]? *(?:where +|with +)?(?P<name>[CT]_(?:\{{[^{{}}=]+\}}|[A-Z][\w-]*)) +(?:being|denotes|denoting|is)"
    rf" +(?:the +)?(?P<kind>{_PUSH}|tension|pull|tensile force) +{_IN} +(?P<member>[{LETTERS}][\w-]*) *[.,;]?",
    re.IGNORECASE,
)
_ANGLE_IS = re.compile(
    r"(?<=[θαβγδφϕψϑ]) +(?:being|is|equals)(?: +(?:equal to|about))?(?= +[0-9a(])"
)
_LETTER_BE = re.compile(
    rf"(?<![{LETTERS}])(?:let|put|set|take|and) +(?:[a-zθαβγδφϕψϑ]|sin ?θ|cos ?θ) +be(?= +[0-9.(])",
    re.IGNORECASE,
)
_MAY = re.compile(
    rf"(?<![\w}}])C_[{{A-Z]|\b(?:{_PUSH}|tension|pull|force|components?|stab|bar|member|rod|zugkraft|stabkraft)\b",
    re.IGNORECASE,
)


def introduced(source: Source, names: Names) -> Source:
    """The source with the symbols that it brings in spelled as forces, without the words that do so."""
    source = about_meetings(source, names)
    source = source.rewritten(_ANGLE_IS, " =")
    source = source.rewritten(_LETTER_BE, lambda found: found[0].removesuffix("be") + "=")
    source = _given_as(source, names)
    source = _factor_named(source, names)
    if _MAY.search(source.text) is None:
        return source
    thrusts = [found["name"][2:].strip("{}") for found in _SPEAKS_OF.finditer(source.text)]
    source = source.rewritten(_SPEAKS_OF, lambda found: _spoken_of(found, names))
    source = source.rewritten(_THRUST, lambda found: _thrust(found, names, thrusts))
    for pattern in (_VALUE_BEING, _LET, _CALL):
        for found in list(pattern.finditer(source.text)):
            source = _put_in(source, found, pattern, names)
    return source


def check_goes_on(source: Source, names: Names) -> None:
    """Raises Broken where a line brings in a symbol for a force and says nothing with it."""
    for pattern in (_LET, _CALL):
        found = pattern.search(source.text)
        if found is not None and (force := _force(found, names)) is not None:
            place = source.span(*found.span("letter"))
            raise Broken("renamed/alone", place.start, place.end, force=force.strip("(-)"))


def _given_as(source: Source, names: Names) -> Source:
    """The source with a letter replaced by the multiple of a force that it is said to be: where H = 0.6 F_AB."""
    called = list(_LET_NAME.finditer(source.text))
    given = [*_GIVEN_AS.finditer(source.text), *_IN_FRONT.finditer(source.text)]
    for found in (*called, *given):
        letter, what = found["letter"], found["what"].strip()
        said = NAME.findall(what)
        words = [word for word in said if names.meanings(word) or len(word) > 3]
        named = names.plainly(letter) if found in called else _taken(letter, names)
        named = named and not (found in given and _of_a_joint_alone(found, names))
        taken = named or letter in _WITHOUT
        if (
            len(words) != 1
            or not names.meanings(words[0])
            or taken
            or re.search(rf"\b{letter}\b", what)
        ):
            continue
        groups = found.groupdict()
        also = groups.get("alike") or groups.get("worth")
        kept = f"; {what} {also}" if also else groups.get("before") or " "
        source = source.rewritten(re.compile(re.escape(found[0])), kept)
        source = _replaced(source, letter, f"({what})")
    return source


def _factor_named(source: Source, names: Names) -> Source:
    """The source with a letter that is no length replaced by the ratio that it is said to be: k = cos 60 = 1/2."""
    found = _FACTOR_IS.match(source.text)
    if found is None or found["letter"] in FREE_LETTERS:
        return source
    letter, what = found["letter"], found["what"].strip()
    unit = re.search(rf"[0-9] ?{letter}(?!\w)", source.text[found.end() :])
    if unit or names.joint(letter) == letter or names.meanings(letter):
        return source
    if found["again"] is not None and not _same(what, found["again"], names):
        return source
    return _replaced(source.rewritten(_FACTOR_IS, " "), letter, f"({what})")


def _same(one: str, other: str, names: Names) -> bool:
    """Whether two ratios as typed are the same number."""
    frame = Frame(names.force, names.length)
    try:
        sides, _ = sides_of(f"{one} = {other}", names, frame)
        first, second = (constant(side.node, frame).value for side in sides)
    except (Broken, ValueError):
        return False
    return are_same(first, second)


def _thrust(found: re.Match[str], names: Names, said: list[str]) -> str | None:
    """The thrust in a member by its C; beside a joint C only where the line says in words that it is one."""
    word = found["braced"] or found["name"]
    meant = names.meant(word)
    if len(meant) != 1 or names.two_joints(word) is None or names.meanings(found[0]):
        return None
    if names.joint("C") is not None and word not in said:
        return None
    return f"(-{spelling(meant[0])})"


def _spoken_of(found: re.Match[str], names: Names) -> str | None:
    """Nothing for words that say what a C or a T stands for, where it stands for that."""
    same = names.meant(found["name"][2:].strip("{}")) == names.meant(found["member"]) != ()
    pushes = re.fullmatch(_PUSH, found["kind"], re.IGNORECASE) is not None
    return ", " if same and pushes == (found["name"][0] in "Cc") else None


def _put_in(source: Source, found: re.Match[str], pattern: re.Pattern[str], names: Names) -> Source:
    """The source with a letter replaced by what the words found say it stands for; as it is where it is taken."""
    letter, force = found["letter"], _force(found, names)
    if force is None or _taken(letter, names):
        return source
    here = re.compile(re.escape(found[0]))
    kept = f"{letter}{found['value']}" if pattern is _VALUE_BEING else ""
    source = source.rewritten(here, kept or " ")
    return _replaced(source, letter, force)


def _taken(letter: str, names: Names) -> bool:
    """Whether a letter stands for something else already."""
    named = names.joint(letter) == letter or bool(names.meanings(letter))
    return named or letter in _WITHOUT


def _of_a_joint_alone(found: re.Match[str], names: Names) -> bool:
    """Whether an H or a V stands for a term wherever it stands, though a joint goes by that letter too."""
    letter, text = found["letter"], found.string
    if letter not in "HV" or names.meanings(letter):
        return False
    standing = list(re.finditer(rf"(?<![\w}}]){letter}(?![\w{{'])", text))
    others = [here for here in standing if not found.start() <= here.start() < found.end()]
    return bool(others) and all(_is_a_term(text, here) for here in others)


def _is_a_term(text: str, here: re.Match[str]) -> bool:
    """Whether what stands there is added or set equal."""
    before, behind = text[: here.start()].rstrip(), text[here.end() :].lstrip()
    return before[-1:] in ("+", "-", "=") and behind[:1] in (
        "",
        "+",
        "-",
        "=",
        ",",
        ";",
        ")",
        "∴",
        "⇒",
    )


def _replaced(source: Source, letter: str, force: str) -> Source:
    """The source with a letter replaced wherever it stands for a force."""
    standing = re.compile(
        rf"(?<![{LETTERS}_{{'])(?<![kmMN] ){re.escape(letter)}(?![{LETTERS}_{{'0-9])"
    )
    return source.rewritten(standing, lambda each: None if _is_a_sense(each) else force)


def _is_a_sense(found: re.Match[str]) -> bool:
    """Whether a T or C stands behind a value, and not in a formula."""
    if found[0] not in "TC":
        return False
    before, behind = found.string[: found.start()].rstrip(), found.string[found.end() :].lstrip()
    return before[-1:] == "(" and behind[:1] == ")"


def _force(found: re.Match[str], names: Names) -> str | None:
    """How the force, or the component of it, is spelled that words speak of."""
    meant = names.meant(found["name"])
    if len(meant) != 1:
        return None
    if found["axis"]:
        axis = "x" if found["axis"].lower() in ("horizontal", "x") else "y"
        word = f"{meant[0].replace('-', '')}{axis}"
        return word if names.meanings(word) else None
    return f"(-{spelling(meant[0])})" if found["push"] else spelling(meant[0])
