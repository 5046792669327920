"""What does a typed line say? The one reader of lines, and of headings alone."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import fields, replace
from fractions import Fraction
from typing import Literal

from tutor.notation.chain import Choice, Found, joined, nothing, statement
from tutor.notation.characters import plain
from tutor.notation.ending import WORD, phrase, unknown, wordy
from tutor.notation.evaluate import Frame, constant
from tutor.notation.formula import sides_of
from tutor.notation.label import Label, heading_in
from tutor.notation.latex import unmarked, untexed
from tutor.notation.layout import DEFINES, Piece, numbers_apart, pieces
from tutor.notation.lexicon import says
from tutor.notation.line import Line, Side, Step
from tutor.notation.names import Names
from tutor.notation.reading import checked
from tutor.notation.respelled import respelled
from tutor.notation.source import Source
from tutor.notation.symbols import LETTERS
from tutor.notation.tree import Binary, Call, Node, Number, Span, Unit, moved
from tutor.notation.unreadable import Broken, Unreadable

Angles = Literal["degrees", "radians"]
_LAID_OUT = re.compile(
    r"[^-+*/^=()\[\]{}.\w °]|(?<![A-Za-z_0-9])[TtCc](?![A-Za-z_0-9])|(?:[0-9]|kN|lb|kip|k)[TtCc](?![A-Za-z_0-9])"
    r"|(?:ft|feet|foot)[ -]*[0-9]|^ *[(\[]?[0-9a-z]{1,3}[)\].] |[ .-][(\[][0-9a-z]{1,3}[)\]] *$"
)
_DOUBLE = re.compile(r"(?<![=<>])==(?![=<>])")
_GAP = re.compile(r" {3,}")
_NOTHING: Mapping[str, float] = {}


def read_line(
    text: str,
    names: Names,
    *,
    angles: Angles = "degrees",
    said: Mapping[str, float] = _NOTHING,
) -> Line | Unreadable:
    """What `text` says as a line on paper; what cannot be read comes back as `Unreadable`.

    `said` are the angles in degrees that earlier lines named ({"θ": 33.69}). With
    `angles="radians"` bare angles are in radians, as on a calculator left in that mode.
    """
    try:
        return line_of(text, names, Frame(names.force, names.length, angles == "degrees"), said)
    except Broken as broken:
        return broken.about(text)


def line_of(text: str, names: Names, frame: Frame, said: Mapping[str, float] = _NOTHING) -> Line:
    """The line as `read_line` gives it; raises Broken."""
    typed = checked(text, "empty")
    if typed.isascii() and _LAID_OUT.search(typed) is None:
        try:
            return _plainly(text, typed, names, frame)
        except Broken:
            pass
    return _laid_out(text, names, frame, said)


def read_heading(text: str, names: Names) -> Label | Unreadable:
    """The equation that a heading alone names: "ΣM_A", "moments about A", "x", "along 30"."""
    try:
        typed = checked(text, "empty/heading")
        source = _source(text)
        end = len(source.text.rstrip(" :;,."))
        found = heading_in(source.text, 0, end, names)
        if found is None or found.label is None or found.passed:
            raise Broken("heading", 0, len(typed.rstrip()))
        return replace(found.label, span=source.place(found.label.span))
    except Broken as broken:
        return broken.about(text)


def _plainly(text: str, typed: str, names: Names, frame: Frame) -> Line:
    """A line that is a formula and nothing else."""
    sides, backward = sides_of(typed, names, frame)
    if backward:
        raise Broken("order", 0, 0)
    span = Span(sides[0].span.start, sides[-1].span.end)
    return Line(text, None, (Step(text, sides, None, False, span, frame),))


def _source(text: str) -> Source:
    """The text in plain characters and without LaTeX, with long gaps as two spaces."""
    source = replace(Source.of(text), text=plain(text)).rewritten(_GAP, "  ")
    source = unmarked(source).rewritten(_DOUBLE, "=")
    return untexed(source).rewritten(_GAP, "  ")


def _laid_out(text: str, names: Names, frame: Frame, said: Mapping[str, float]) -> Line:
    """A line with a heading, remarks or several statements; every way that is as good."""
    source = _source(text)
    usual = Found(names, frame, Choice())
    try:
        line = _read(text, source, said, usual)
    except Broken as broken:
        for other in _others(usual):
            try:
                return _read(text, source, said, other)
            except Broken:
                continue
        raise broken from None
    return replace(line, alternatives=_alternatives(text, source, said, usual))


def _others(usual: Found) -> list[Found]:
    """The same line to be read with one of the choices that were met taken the other way."""
    met = [field.name for field in fields(Choice) if field.name in usual.open]
    return [Found(usual.names, usual.frame, replace(usual.choice, **{name: True})) for name in met]


def _alternatives(
    text: str, source: Source, said: Mapping[str, float], usual: Found
) -> tuple[Line, ...]:
    found = []
    for other in _others(usual):
        try:
            found.append(_read(text, source, said, other))
        except Broken:
            continue
    return tuple(found)


def _read(text: str, source: Source, said: Mapping[str, float], found: Found) -> Line:
    """One reading of the line; raises Broken with columns of the text as typed."""
    try:
        numbers = numbers_apart(source.text, _typed(text, source), found.choice.numbered)
        if numbers.unsure:
            found.open.add("numbered")
        inner = source.text[: numbers.end]
        for start, end in ((0, numbers.start), (numbers.end, len(source.text))):
            if source.text[start:end].strip(" .,;"):
                found.passed.append(source.place(Span(*_trimmed(source.text, start, end))))
        blanked = " " * numbers.start + inner[numbers.start :]
        blanked += " " * (len(source.text) - len(blanked))
        source = replace(source, text=blanked)
    except Broken as broken:
        raise _placed(broken, source) from None
    before = list(found.passed)
    found.passed.clear()
    spelled = respelled(source, found.names)
    try:
        reader = _Reader(text, spelled, found, said)
        line = reader.line()
    except Broken as broken:
        raise _placed(broken, spelled) from None
    passed = (*before, *(spelled.place(span) for span in found.passed))
    return replace(line, passed=tuple(sorted(passed, key=lambda span: span.start)))


def _typed(text: str, source: Source) -> str:
    return "".join(text[start] if start < len(text) else " " for start in source.starts)


def _trimmed(text: str, start: int, end: int) -> tuple[int, int]:
    start += len(text[start:end]) - len(text[start:end].lstrip())
    return start, max(start, start + len(text[start:end].rstrip()))


def _placed(broken: Broken, source: Source) -> Broken:
    span = source.span(broken.start, broken.end)
    return Broken(broken.key, span.start, span.end, **broken.words)


class _Reader:
    """Reads the pieces of one line, from left to right."""

    def __init__(self, text: str, source: Source, found: Found, said: Mapping[str, float]) -> None:
        self.typed, self.source, self.found = text, source, found
        self.text = source.text
        self.label: Label | None = None
        self.own: Label | None = None
        self.steps: list[Step] = []
        self.angles: dict[str, float] = {}
        for name, degrees in said.items():
            found.angles[name] = _degrees(Number(Fraction(str(degrees)), Fraction(0), Span(0, 1)))

    def line(self) -> Line:
        """The whole line."""
        self._bracketed_angles()
        cut = pieces(self.text, 0, len(self.text.rstrip(" ")), self.found.names)
        cut = [piece for piece in cut if not self._defined(piece)]
        if not any(self.text[piece.start : piece.end].strip() for piece in cut):
            end = len(self.text.rstrip())
            if cut and cut[0].before_colon:
                raise Broken("label", cut[0].end, cut[0].end + 1)
            raise Broken("empty", end, end)
        zeros = self._zero_members(0, len(self.text))
        if not zeros:
            name: tuple[int, int] | None = None
            for index, piece in enumerate(cut):
                name = self._piece(piece, cut[index + 1 :], name)
        if not self.steps:
            start, end = _trimmed(self.text, 0, len(self.text))
            raise Broken("label/alone" if self.label else "no-formula", start, end)
        self._check_whole()
        steps = tuple(self._step(step) for step in self.steps)
        label = None if self.label is None else self._label(self.label)
        return Line(self.typed, label, steps, self.angles)

    def _check_whole(self) -> None:
        """Raises Broken where something beside a whole statement is none itself."""
        for step in self.steps[:-1]:
            if len(step.sides) == 1 and not step.sides[0].numeric:
                comma = self.text.find(",", step.span.end)
                if comma >= 0:
                    raise Broken("comma/loose", comma, comma + 1)
                raise Broken("no-equals", step.span.end, step.span.end)

    def _piece(
        self, piece: Piece, later: list[Piece], name: tuple[int, int] | None
    ) -> tuple[int, int] | None:
        """Takes in one piece; the place of a name that stood alone before a colon is handed on."""
        start, end = _trimmed(self.text, piece.start, piece.end)
        if start == end:
            if piece.before_colon:
                raise Broken("label", end, end + 1)
            return name
        if piece.before_colon:
            return self._before_colon(start, end, later)
        if piece.end < len(self.text) and self._zero_members(start, end):
            return name
        if self._heads(start, end, later) or self._ends(start, end) or self._remarks(start, end):
            return name
        if name is not None:
            return self._named(name, piece, start, end)
        self._state(piece, start, end)
        return None

    def _before_colon(self, start: int, end: int, later: list[Piece]) -> tuple[int, int] | None:
        names = self.found.names
        word = self.text[start:end]
        if _COUNTED.fullmatch(word):
            self.found.passed.append(Span(start, end))
            return None
        named = names.meanings(word) if re.fullmatch(r"\w[\w{}'-]*", word) else ()
        value = later and "=" not in self.text[later[0].start : later[0].end]
        if (
            len(named) == 1
            and named[0].share is None
            and value
            and not (names.joint(word) is not None and not value)
        ):
            return start, end
        head = heading_in(self.text, start, end, names)
        if head is None:
            words = WORD.findall(word)
            plain_words = re.fullmatch(rf"[{LETTERS}0-9_ ,.'-]*", word) is not None
            if plain_words and sum(wordy(one, names) for one in words) > 1:
                self.found.passed.append(Span(start, end))
                return None
            if self._states(start, end, later):
                return None
            raise Broken("label", start, end)
        self.found.passed += head.passed
        if head.label is not None:
            self._headed(head.label)
        return None

    def _states(self, start: int, end: int, later: list[Piece]) -> bool:
        """Whether a whole equation stands before the colon, with remarks alone behind it."""
        rest = "".join(self.text[piece.start : piece.end] for piece in later)
        if "=" not in self.text[start:end] or "=" in rest:
            return False
        self._state(Piece(start, end, ""), start, end)
        return True

    def _headed(self, label: Label) -> None:
        if self.steps:
            self.own = joined(self.own, label)
        else:
            self.label = joined(self.label, label)

    def _heads(self, start: int, end: int, later: list[Piece]) -> bool:
        """Whether a piece is a heading set apart by a semicolon, a comma, an arrow or brackets."""
        if not any(self.text[piece.start : piece.end].strip() for piece in later):
            return False
        head = heading_in(self.text, start, end, self.found.names)
        if head is None or head.label is None or head.passed:
            return False
        if not head.summed and head.label.point is None and not head.label.whole:
            return False
        plain_name = self.found.names.plainly(self.text[start:end])
        if plain_name:
            return False
        self._headed(head.label)
        return True

    def _named(
        self, name: tuple[int, int], piece: Piece, start: int, end: int
    ) -> tuple[int, int] | None:
        """A name, a colon and its value: the colon stands for =."""
        colon = self.text.index(":", name[1])
        self.text = f"{self.text[:colon]}={self.text[colon + 1 :]}"
        self._state(piece, name[0], end)
        return None

    def _ends(self, start: int, end: int) -> bool:
        """Whether a piece only says T or C, or which way, of the value before it."""
        if not self.steps or "=" in self.text[start:end]:
            return False
        last = self.steps[-1].sides[-1]
        word = self.text[start:end].rstrip(".")
        said = phrase(self.text, start, end, self.found.names)
        if said is None and word in ("T", "C"):
            return False
        if said is None or not (said.letter or said.sense or said.zero):
            return False
        if any(map(str.isdigit, word)) or not last.numeric:
            return False
        if last.letter or last.sense:
            if (last.letter, last.sense) != (said.letter, said.sense) and said.places:
                raise Broken("value/two", *said.places[0])
            return True
        if said.zero is not None and any(term.value for term in last.terms):
            raise Broken("value/not-zero", *said.zero)
        ended = replace(last, letter=said.letter, sense=said.sense)
        step = self.steps[-1]
        self.steps[-1] = replace(step, sides=(*step.sides[:-1], ended))
        return True

    def _remarks(self, start: int, end: int) -> bool:
        """Whether a piece is words alone, to be passed over."""
        text = self.text[start:end]
        if "=" in text and self.steps == []:
            return False
        words = WORD.findall(text)
        if not words:
            return False
        names = self.found.names
        reason = says(words[0], "because", "remark", "number")
        only_words = re.fullmatch(rf"[{LETTERS}0-9 ,.!?'’()\[\]-]*", text) is not None
        if reason and (self.steps or "=" not in text):
            self.found.passed.append(Span(start, end))
            return True
        if not only_words or any(map(str.isdigit, text)):
            return False
        if all(wordy(word, names) or unknown(word, names) or len(word) < 3 for word in words) and (
            wordy(words[0], names) or unknown(words[0], names)
        ):
            if not self.steps and phrase(self.text, start, end, names) is not None:
                said = phrase(self.text, start, end, names)
                if said is not None and (said.letter or said.sense or said.zero):
                    return False
            self.found.passed.append(Span(start, end))
            return True
        return False

    def _state(self, piece: Piece, start: int, end: int) -> None:
        """Takes in a statement."""
        padded = " " * start + self.text[start:end]
        padded = _set_equal(padded, self.found.names)
        made = statement(padded, start, len(padded), self.found)
        beside = piece.joint == "beside" and self.steps
        if beside and len(made.sides) == 1 and made.label is None:
            comma = self.text.rfind(",", 0, start)
            if comma >= 0:
                raise Broken("comma/loose", comma, comma + 1)
        if made.label is not None:
            self._headed(made.label)
        span = Span(made.sides[0].span.start, made.sides[-1].span.end)
        follows = piece.joint == "so"
        own, self.own = self.own, None
        step = Step(self.typed, made.sides, own, follows, span, self.found.frame)
        self.steps.append(step)

    def _step(self, step: Step) -> Step:
        sides = tuple(self._side(side) for side in step.sides)
        label = step.label
        if label is not None:
            label = self._label(label)
        return replace(step, sides=sides, label=label, span=self.source.place(step.span))

    def _label(self, label: Label) -> Label:
        return replace(label, span=self.source.place(label.span))

    def _side(self, side: Side) -> Side:
        place = self.source.place
        terms = tuple(term._replace(span=place(term.span)) for term in side.terms)
        return replace(side, node=moved(side.node, place), terms=terms, span=place(side.span))

    # angles that the line names

    def _bracketed_angles(self) -> None:
        """Takes out of the text what says in brackets how large an angle is: (θ = 33.69°)."""
        for found in list(_IN_BRACKETS.finditer(self.text)):
            start, end = found.span("inner")
            if self._define(start, end):
                size = found.end() - found.start()
                self.text = self.text[: found.start()] + " " * size + self.text[found.end() :]

    def _defined(self, piece: Piece) -> bool:
        return self._define(piece.start, piece.end)

    def _define(self, start: int, end: int) -> bool:
        """Whether a piece says how large an angle is, such as "where θ = 33.69°" or "tan θ = 3/4"."""
        word = _WHERE.match(self.text, start, end)
        start = word.end() if word and says(word[1], "where") else start
        found = DEFINES.match(self.text, start, end)
        if found is None:
            return False
        value = " " * found.end() + self.text[found.end() : end]
        if not value.strip():
            return False
        try:
            sides, _ = sides_of(
                value.split("=")[-1].rjust(len(value)), self.found.names, self.found.frame
            )
        except Broken as broken:
            if broken.key != "angle":
                raise
            inner = re.sub("°|deg(?:rees?)?", lambda unit: " " * len(unit[0]), value)
            sides, _ = sides_of(
                inner, self.found.names, Frame(self.found.names.force, self.found.names.length)
            )
        if not sides[0].numeric:
            return False
        node = sides[0].node
        if found["function"]:
            inverse = {"s": "asin", "c": "acos", "t": "atan"}[found["function"][0].lower()]
            node = Call(inverse, node, node.span)
        degrees = constant(node, Frame(self.found.names.force, self.found.names.length)).value
        self.found.angles[found["angle"]] = _degrees(node)
        self.angles[found["angle"]] = degrees
        return True

    # words that say that members are zero

    def _zero_members(self, start: int, end: int) -> bool:
        """Whether the line says in words that members carry nothing; each becomes a statement."""
        text = " " * start + self.text[start:end]
        if "=" in text or (found := _ZERO_WORDS.search(text)) is None:
            return False
        names = self.found.names
        before = re.sub(r"[:,;]", " ", text[: found.start()])
        after = text[found.end() :]
        places = [
            (match.start() + offset, match.group())
            for part, offset in ((before, 0), (after, found.end()))
            for match in re.finditer(rf"[{LETTERS}][\w{{}}'-]*", part)
        ]
        named = [
            (at, word)
            for at, word in places
            if len(names.meant(word)) == 1 and not says(word, "filler")
        ]
        others = [word for at, word in places if (at, word) not in named]
        if (
            _MEASURED.match(text, found.end())
            or not named
            or re.search(r"[0-9+*/]", re.sub(r"[\w{}'-]*\d[\w{}'-]*", "", text))
        ):
            return False
        if any(names.two_joints(word) and not word.islower() for word in others):
            return False
        for at, word in named:
            span = Span(at, at + len(word))
            sides = nothing(names.meant(word)[0], span)
            self.steps.append(Step(self.typed, sides, None, False, span, self.found.frame))
        return True


_IN_BRACKETS = re.compile(
    r"[(\[](?P<inner>[^()\[\]=]{0,20}=(?:[^()\[\]=]|\([^()]*\)|\([^()]*\([^()]*\)[^()]*\))*)[)\]]"
)
_WHERE = re.compile(rf" *([{LETTERS}]{{2,8}}) ")
_ZERO_WORDS = re.compile(
    r"(?<![\w-])(?:zero|zfm|nil|no force|no load|nullst[aä]be?|keine kraft|effort nul|fuerza (?:nula|cero)|barras? nulas?|nul(?:le)?s?|0[- ]force)(?![\w])",
    re.IGNORECASE,
)
_COUNTED = re.compile(r"[([]?[0-9]{1,2}[a-z]?[)\]]?")
_MEASURED = re.compile(r" *(?:k?N|MN|lbs?|lbf|kips?|k)\b")
_ZERO = re.compile(
    r"((?:^|=) *)(zero|nil|null|cero)(?![\w-])(?! *(?:-?force|member|bar))", re.IGNORECASE
)
_IS = re.compile(
    r"(?<=[\w})]) +(?:is|equals|ist|est|es|vaut)(?= +(?:equal to +|gleich +)?[-+]?[0-9.])(?: +(?:equal to|gleich))?",
    re.IGNORECASE,
)
_BARE_VALUE = re.compile(
    r" *(?P<name>[^\W\d][\w{}'-]*)(?P<gap> +)(?P<number>[-+]?[0-9][0-9.,]*)(?P<rest> *[A-Za-z#]*\.?(?: *[(\[]? *[A-Za-z]+ *[)\]]?)?) *"
)


def _set_equal(text: str, names: Names) -> str:
    """The text with = for "is", and for the space between a name and its value."""
    text = _ZERO.sub(lambda found: found[1] + "0".ljust(len(found[2])), text)
    if "=" in text:
        return text
    text = _IS.sub(lambda found: " = ".ljust(len(found[0])), text)
    found = _BARE_VALUE.fullmatch(text)
    if found is None or len(names.meant(found["name"])) != 1 or not found["rest"].strip():
        return text
    at = found.start("gap")
    return text[:at] + "=" + text[at + 1 :]


def _degrees(node: Node) -> Node:
    return Binary("*", node, Unit("deg", node.span), node.span)
