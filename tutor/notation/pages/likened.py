"""How is it written that forces are as the sides of a triangle? F_AB/AB = 12/BC, F_AB : 12 = 5 : 3, F_AB/F_AC = 4/5.

The length of a side goes by the two joints at its ends where the line spells its forces otherwise. Each is
rewritten with every force over its own number, F_AB/5 = 12/3, and the columns are kept.
"""

from __future__ import annotations

import math
import re

from tutor.notation.elements.source import Source
from tutor.notation.elements.tree import Span
from tutor.notation.elements.unreadable import Broken
from tutor.notation.naming.names import Names

_MAY = re.compile(
    r"[0-9] ?: ?[0-9]|[0-9] ?(?:mm|cm|m|ft|in) *=|[\w}|)] ?/ ?[|A-Z(]|(?:[A-Za-z}|)]|[A-Z][0-9]) ?/ ?-?[0-9.]+ *=|[\w}|)] ?: ?[|A-Z(](?=[^=]*=[^=]*[:/])|[\w}|)] ?: ?[0-9.]+ *= *-? ?[|A-Z]|\bis to\b|\b(?:size|magnitude) of\b"
)
_SIZE_OF = re.compile(
    r"(?:the +)?(?:size|magnitude) +of +(?:the +)?(?:force +(?:in|of) +)?(?=[|A-Z])", re.IGNORECASE
)
_FORCE = r"\|? ?(?<![\w}])[A-Z]\w*(?:\{\w{1,8}\})? ?\|?"
_NUMBER = r"-?[0-9]+(?:[.,][0-9]+)?(?: ?(?:k?N|kips?|lb))?"
_SIDE = r"[0-9.]+|[A-Z][0-9]?[A-Z][0-9]?(?![\w])|sqrt ?\([0-9.]+\)|√ ?[0-9.]+"
_BEFORE = r"(?:(?<!\w )|(?<=\bso )|(?<=\bhence )|(?<=\bthus )|(?<=\btherefore ))(?<!\w)"
_END = r"(?= *(?:$|[,;=.]|\b(?:so|and)\b|⇒|∴|→|\bin (?:size|magnitude)\b))"
_IS_TO = re.compile(
    rf"(?P<one>{_FORCE}) +is +to +(?P<other>{_FORCE}|{_NUMBER}) +as +(?P<top>{_SIDE}) +(?:is +)?to +(?P<under>{_SIDE}){_END}"
)
_AS = re.compile(
    rf"{_BEFORE}(?P<one>{_FORCE}) *: *(?P<other>{_FORCE}|{_NUMBER}) *= *(?P<top>-? ?(?:{_SIDE})) *[:/] *(?P<under>{_SIDE}){_END}"
)
_EACH_TO_ITS_SIDE = re.compile(
    rf"{_BEFORE}(?P<one>{_FORCE}) *: *(?P<side>{_SIDE}) *= *(?P<other>-? ?{_FORCE}) *: *(?P<under>{_SIDE}){_END}"
)
_NUMBER_FIRST = re.compile(
    rf"(?<![\w:.] )(?<![\w:.])(?P<other>{_NUMBER}) *: *(?P<one>{_FORCE}) *= *(?P<under>-?(?:{_SIDE})) *: *(?P<top>{_SIDE}){_END}"
)
_OVER = re.compile(
    rf"(?<![\w*/^+-])(?P<one>{_FORCE}) */ *(?P<other>{_FORCE}) *= *(?P<sign>[-+]? *)(?P<top>{_SIDE})(?: *[:/] *(?P<under>{_SIDE}))?{_END}"
)
_SAID_OF_SIDES = re.compile(
    r"\b(?:sides?|slop(?:es?|ing)|triangles?|ratio|legs)\b[^=,;]{0,30}?(?<![-0-9.])[0-9.]+(?:(?: ?: ?[0-9.]+){2}|(?::| : )[0-9.]+)(?! *[=:])"
)
"""What words say of the sides of a triangle, 3:4:5, and no proportion of forces."""
_OVER_LENGTHS = re.compile(
    rf"(?P<one>{_FORCE} */ *[0-9.]+) ?(?P<unit>mm|cm|m|ft|in)(?P<other> *= *-?[0-9.]+(?: ?(?:k?N|kips?|lb))? */ *[0-9.]+) ?(?P=unit)(?!\w)"
)
_TRIANGLE = re.compile(
    r"\b(?:triangle of forces|force triangle|similar triangles|proportions?|ratios?|lami['’]?s|sine rule)\b",
    re.IGNORECASE,
)
_SHARE = re.compile(
    r"(?<![\w=])(?<!= )(?P<name>[A-Z]\w*) */ *(?P<of>[0-9.]+)(?: *k?N| *kips?| *lbs?)? *= *(?P<share>[0-9.]+ */ *[0-9.]+)(?= *(?:$|[,;]|∴|⇒|→|so\b))"
)
_PROPORTION = re.compile(
    r"(?<!\w)[A-Z]\w++ *: *(?:[A-Z]\w+|[0-9.]+)(?: *: *(?:[A-Z]\w+|[0-9.]+))++ *= *[0-9.]+(?: *: *[0-9.]+)++"
)
"""As many parts as numbers: AB : AC : 12 = 4 : 5 : 3."""
_BEFORE_COLON = re.compile(r"(?P<name>\w{2,}) *\|? *: *$")
"""A third force before a proportion of two, as in AB : AC : 12 = 4 : 5."""
_BY_TRIANGLES = re.compile(
    r"^ *(?:so +)?(?:by|from|using) +(?:the +)?(?:similar triangles|proportions?) +(?=[|A-Z][\w|{} ]*:)",
    re.IGNORECASE,
)
_IN_SIZE = re.compile(r" +in +(?:size|magnitude)(?= *(?:$|[,;.]))", re.IGNORECASE)
_PAIR = r"(?<![\w{}])[A-Z][0-9]?[A-Z][0-9]?(?![\w{}'])"
_SIDES = re.compile(
    rf"(?P<above>{_PAIR}) ?/ ?(?P<below>{_PAIR})|(?<=[\w|)}}]) ?/ ?(?P<alone>{_PAIR})"
)
_LETTERED = re.compile(r"(?<![\w}])[FSNTP]_?\{?[A-Z][\w}]*|\| ?[A-Z]\w* ?\|")


def likened(source: Source, names: Names) -> Source:
    """The source with proportions of forces spelled as each force over its number.

    Raises Broken for a proportion that has more parts on one side than on the other.
    """
    if _MAY.search(source.text) is None:
        return source
    source = source.rewritten(_SIZE_OF, "").rewritten(_BY_TRIANGLES, "")
    source = source.rewritten(_EACH_TO_ITS_SIDE, _to_its_side)
    source = source.rewritten(_OVER_LENGTHS, lambda found: found["one"] + found["other"])
    source = source.rewritten(_SAID_OF_SIDES, lambda found: found[0].replace(":", "-"))
    source = source.rewritten(_PROPORTION, _over_each)
    if (uneven := _PROPORTION.search(source.text)) is not None:
        place = source.span(*uneven.span())
        raise Broken("proportion", place.start, place.end)
    for pattern in (_IS_TO, _AS, _NUMBER_FIRST, _OVER):
        for found in reversed(list(pattern.finditer(source.text))):
            source = _over_its_own(source, found, names)
    if _TRIANGLE.search(source.text) is not None:
        source = source.rewritten(_SHARE, lambda f: f"{f['name']} = {f['of']} ({f['share']})")
    source = source.rewritten(_IN_SIZE, "")
    return _with_lengths(source, names)


def _to_its_side(found: re.Match[str]) -> str:
    return f"{found['one']}/{found['side']} = {found['other']}/{found['under']}"


def _over_each(found: re.Match[str]) -> str | None:
    """A proportion as each part over its number, AB : AC : 12 = 4 : 5 : 3 as AB/4 = AC/5 = 12/3; or None."""
    parts, sides = (side.split(":") for side in found[0].split("="))
    if len(parts) != len(sides):
        return None
    pairs = zip(parts, sides, strict=True)
    return " = ".join(f"{part.strip()}/{side.strip()}" for part, side in pairs)


def _over_its_own(source: Source, found: re.Match[str], names: Names) -> Source:
    """The source with one proportion of two forces written as the one over its side and the other over its."""
    before_colon = _BEFORE_COLON.search(source.text[: found.start()])
    if before_colon is not None and names.meanings(before_colon["name"]):
        return source
    one = names.meanings(found["one"].strip("| "))
    other = found["other"].strip("| ")
    if len(one) != 1 or one[0].share is not None:
        return source
    if not other[0].isdigit() and other[0] != "-":
        meant = names.meanings(other)
        if len(meant) != 1 or meant[0].share is not None or meant[0].name == one[0].name:
            return source
    place = {key: Span(*found.span(key)) for key in ("one", "other", "top", "under")}
    before, behind = Span(0, found.start()), Span(found.end(), len(source.text))
    if found.groupdict().get("sign", "").strip() == "-" or found["under"] is None:
        ratio = Span(found.start("sign"), found.end())
        return source.made_of([before, place["one"], " = (", ratio, ")*", place["other"], behind])
    pieces: list[Span | str] = [
        before,
        place["one"],
        "/",
        place["top"],
        " = ",
        place["other"],
        "/",
        place["under"],
        behind,
    ]
    return source.made_of(pieces)


def _with_lengths(source: Source, names: Names) -> Source:
    """The source with the sides that go by their joints as lengths, where forces go by letters of their own."""
    if not names.places or _LETTERED.search(source.text) is None:
        return source
    return source.rewritten(_SIDES, lambda found: _lengths(found, names))


def _lengths(found: re.Match[str], names: Names) -> str | None:
    words = [found["above"], found["below"]] if found["above"] else [found["alone"]]
    sizes = [_length(word, names) for word in words]
    if any(size is None for size in sizes):
        return None
    return f"({sizes[0]}/{sizes[1]})" if len(sizes) > 1 else f"/{sizes[0]}"


def _length(word: str, names: Names) -> str | None:
    """The distance between two joints side by side, as one types it; None for any other word."""
    for cut in range(1, len(word)):
        ends = [names.places.get(part) for part in (word[:cut], word[cut:])]
        if None in ends:
            continue
        (x, y), (to_x, to_y) = (end for end in ends if end is not None)
        size = f"{math.hypot(to_x - x, to_y - y):.6g}"
        if math.isclose(float(size), math.dist((x, y), (to_x, to_y)), rel_tol=1e-9):
            return size
        return f"sqrt({abs(to_x - x):.9g}^2+{abs(to_y - y):.9g}^2)"
    return None
