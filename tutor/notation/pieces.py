"""Which parts of a line that cannot be read as a whole are equations by themselves?

The last resort, where no reading of the whole line is found: clauses that can be read are kept, words around
them are passed over and told. Words that take something back, and what says T, C or a way behind a statement,
are never passed over; nor is anything with an equals sign. Before that, letters among figures are taken as the
figures that a scan made them of. What is read so is trusted where it is right.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import replace
from functools import lru_cache

from tutor.notation.commas_meant import COMMA, DECIMAL
from tutor.notation.elements.label import Label
from tutor.notation.elements.lexicon import DENYING, WAYS, says
from tutor.notation.elements.tree import Span
from tutor.notation.elements.unreadable import Broken
from tutor.notation.formulas.evaluate import Frame
from tutor.notation.formulas.words import ANGLES, FUNCTIONS
from tutor.notation.given_up import given_up
from tutor.notation.headings.heading import heading_in
from tutor.notation.last_clause import Reads, in_last_clause
from tutor.notation.lines.found import Taken, trimmed
from tutor.notation.lines.line import Line
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import LETTERS
from tutor.notation.pages.copied import is_nought, letters_as_figures
from tutor.notation.pages.parted_load import parts_a_load
from tutor.notation.read import line_typed
from tutor.notation.sentences.talk import TURNS_NOTHING
from tutor.notation.sides.turned import multiplies
from tutor.notation.value_told import value_in_words

MOST_TRIED = 24
"""So many readings of parts are tried at the most."""
LONGEST = 256
"""Characters of a line that is looked at clause by clause; those that people write are shorter."""
_AS_A_LINE = re.compile(
    rf"\b(?:arms?|levers?|lengths?|distances?|along|parallel|square|perpendicular|normal|line)(?: +(?:is|are|to|of|with|just|only|simply|the|member|bar))*"
    rf" +[{LETTERS}][\w{{}}-]*"
)
_BREAK = re.compile(
    r"[;:|\t\n]|[,.](?![0-9])|(?<![0-9])[,](?=[0-9])|∴|⇒|→|↦|=>|->|\bhence\b|\bthus\b"
)
_CONCLUDES = frozenset(("∴", "⇒", "→", "=>", "->", "hence", "thus"))
_WORD = re.compile(rf"[{LETTERS}][{LETTERS}'’-]*(?![\w{{}}])")
_TAKES_BACK = re.compile(
    r"wrong|false|incorrect|mistak|untrue|error|instead|rather|should|scrap|ignore|cancel that|"
    r"\bnot (?:true|right|correct|equal|so|valid|possible)|n't|n’t|≠|\?",
    re.IGNORECASE,
)
_COUNTS = re.compile(
    rf"[0-9=+*^√<>]|{_TAKES_BACK.pattern}|\b(?:{DENYING}|no|nor|without|except|but)\b",
    re.IGNORECASE,
)
_NUMBERED = re.compile(
    r"\b(?:panel|bay|section|cut|joint|node|member|bar|step|part) +[0-9]{1,2} *$", re.IGNORECASE
)
"""What a number before an equals sign only counts: the shear in panel 2 = 48 - 30."""
_PUNCTUATION = " \t.,;:!()[]{}✓✔-–—'’\"“”"

_NOTHING: Mapping[str, float] = {}


def read_pieces(text: str, names: Names, *, said: Mapping[str, float] = _NOTHING) -> Line | None:
    """What can be read of a line that `read_line` does not read: some equations of it, words left out.

    To be trusted where it turns out right, and otherwise with care.
    """
    return _pieces(text, names, tuple(said.items()))


@lru_cache(maxsize=64)
def _pieces(text: str, names: Names, letters: tuple[tuple[str, float], ...]) -> Line | None:
    """Such a line is asked for several times: as a heading, as an equation, for its value."""
    frame, said = Frame(names.force, names.length), dict(letters)

    def reads(part: str) -> Line | None:
        try:
            return line_typed(part, names, frame, said)
        except Broken:
            return None

    line = _as_scanned(text, names, said, reads) or _in_decimals(text, reads)
    if line is None and len(text) <= LONGEST:
        line = in_pieces(text, names, reads)

    def reads_somehow(part: str) -> Line | None:
        found = reads(part)
        return found if found or len(part) > LONGEST else in_pieces(part, names, reads)

    line = line or given_up(text, names, reads) or in_last_clause(text, names, reads)
    return line or value_in_words(text, names, reads_somehow)


def _as_scanned(text: str, names: Names, said: Mapping[str, float], reads: Reads) -> Line | None:
    """The whole line with figures for the letters among them; None where it cannot be read so either."""
    meant = letters_as_figures(text, names, said)
    line = None if meant is None else reads(meant[0])
    if meant is None or line is None or line.letters:
        return None
    taken: tuple[Taken, ...] = tuple(
        ("nought" if is_nought(text[span.start : span.end]) else "figures", span)
        for span in meant[1]
        if span.end - span.start > 1
    )
    return replace(line, text=text, taken=(*line.taken, *taken))


def _in_decimals(text: str, reads: Reads) -> Line | None:
    """The whole line with decimals behind its commas, 3,125 kN + 3/5 N_AC = 0; None where it has no sum to tell so."""
    places = [Span(*found.span()) for found in COMMA.finditer(text)]
    line = reads(COMMA.sub(DECIMAL, text)) if places else None
    if line is None or not any(len(side.terms) > 1 for step in line.steps for side in step.sides):
        return None
    taken: tuple[Taken, ...] = tuple(("decimals", place) for place in places)
    return replace(line, text=text, taken=(*line.taken, *taken))


def in_pieces(text: str, names: Names, reads: Reads) -> Line | None:
    """A line of the clauses of `text` that `reads` can read, with the others told as unread; else None.

    A heading before the first one is read with it or, where it cannot be, by itself.
    """
    head = text.rfind(":", 0, text.find("=")) + 1
    if not _leads(text[:head]):
        return None
    label = _heading(text, head - 1, names)
    if label is None:
        gaps = _gap(text, 0, head)
        line = _behind(text, head, "", gaps, reads, names)
        return line if gaps else None
    line = _behind(text, head, text[:head], [], reads, names)
    if line is not None:
        return line
    line = _behind(text, head, "", [], reads, names)
    return None if line is None else replace(line, label=line.label or label)


def _behind(
    text: str, head: int, lead: str, gaps: list[Span], reads: Reads, names: Names
) -> Line | None:
    """The same from column `head` on; `lead` is read with it, `gaps` are told."""
    kept, tried = "", 0
    line: Line | None = None
    for start, end, mark in _clauses(text, head):
        core = None
        if parts_a_load(text[start:end]):
            gaps.append(Span(*trimmed(text, start, end)))
            continue
        if "=" in text[start:end]:
            for first, last in _cores(text, start, end, names):
                tried += 1
                joined = _joined(kept or lead, text[first:last], first, mark if kept else " ")
                if tried > MOST_TRIED:
                    return None
                if (found := reads(joined)) is not None:
                    core, line, kept = (first, last), found, joined
                    break
            if core is None:
                return None
        first, last = core or (end, end)
        if not _may_go(text[start:first], names) or not _may_go(text[last:end], names):
            return None
        gaps += [*_gap(text, start, first), *_gap(text, last, end)]
    if line is None:
        return None
    return replace(line, text=text, passed=(*line.passed, *gaps), unread=(*line.unread, *gaps))


def _heading(text: str, end: int, names: Names) -> Label | None:
    """The sum that is named before a colon, where nothing else is said there."""
    try:
        head = heading_in(text, 0, end, names) if end > 0 else None
    except Broken:
        return None
    return None if head is None or head.passed else head.label


def _clauses(text: str, at: int) -> Iterator[tuple[int, int, str]]:
    """(start, end, the mark before it) of the parts of a text from a column on; blank ones are left out."""
    mark = ";"
    for found in (*_BREAK.finditer(text, at), None):
        end = len(text) if found is None else found.start()
        if text[at:end].strip():
            yield at, end, mark
        if found is not None:
            at, mark = found.end(), "∴" if found[0] in _CONCLUDES else ";"


def _cores(text: str, start: int, end: int, names: Names) -> Iterator[tuple[int, int]]:
    """Parts of a clause around its equals sign, those first that leave out fewest words."""
    equals = text.index("=", start)
    starts, ends = [start], [end]
    runs = list(_runs(text, start, end, names))
    numbered = _NUMBERED.search(text, start, equals)
    starts += [last for _, last in runs if last <= equals and numbered is None]
    ends += [first for first, _ in reversed(runs) if first > text.rindex("=", start, end)]
    parts = [(first, last) for first in starts for last in ends]
    yield from sorted(parts, key=lambda part: part[0] - part[1])


def _runs(text: str, start: int, end: int, names: Names) -> Iterator[tuple[int, int]]:
    """Where words of no formula stand together."""
    run: tuple[int, int] | None = None
    for found in _WORD.finditer(text, start, end):
        if not _plain(found[0], names) or text[found.start() - 1 : found.start()] in ("_", "\\"):
            continue
        if run is not None and not text[run[1] : found.start()].strip():
            run = run[0], found.end()
            continue
        if run is not None:
            yield run
        run = found.span()
    if run is not None:
        yield run


def _plain(word: str, names: Names) -> bool:
    """Whether a word is no force, no function and no letter of a formula."""
    if len(word) == 1 and word not in "aI":
        return False
    return word.lower() not in FUNCTIONS and word.lower() not in ANGLES and not names.meanings(word)


def _leads(said: str) -> bool:
    """Whether what stands before the colon only leads to the statement behind it."""
    return _WORD.search(said) is None or _TAKES_BACK.search(said) is None


def _may_go(said: str, names: Names) -> bool:
    """Whether words beside a statement may be passed over: they compute, take back and turn nothing.

    What names a force may say something of it, other than how its member lies.
    """
    if multiplies(said):
        return False
    words = re.findall(rf"[{LETTERS}][\w{{}}-]*", _AS_A_LINE.sub(" ", said))
    told = any(says(word, *WAYS) or names.meanings(word) for word in words)
    return not told and _COUNTS.search(TURNS_NOTHING.sub(" ", said)) is None


def _joined(kept: str, core: str, first: int, mark: str) -> str:
    """The clauses so far with another one, each in its own columns."""
    if not kept.strip():
        return " " * first + core
    gap = first - len(kept)
    return kept + (mark.ljust(gap) if gap > 0 else mark) + core


def _gap(text: str, start: int, end: int) -> list[Span]:
    """The words between two columns, without the marks around them."""
    said = text[start:end]
    if not said.strip(_PUNCTUATION):
        return []
    left = start + len(said) - len(said.lstrip(_PUNCTUATION))
    return [Span(left, start + len(said.rstrip(_PUNCTUATION)))]
