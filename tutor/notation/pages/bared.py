"""What does a line say in plain characters: without markup, LaTeX and the signs of a copied page?"""

from __future__ import annotations

import re
from dataclasses import replace

from tutor.notation.elements.characters import UNSEEN, plain
from tutor.notation.elements.source import Source
from tutor.notation.pages.commanded import uncommanded
from tutor.notation.pages.convention import without_convention
from tutor.notation.pages.copied import recopied, said_once
from tutor.notation.pages.encoded import signs_for_codes
from tutor.notation.pages.endless import written_to_end
from tutor.notation.pages.latex import untexed
from tutor.notation.pages.line_said import directed
from tutor.notation.pages.margins import without_margins
from tutor.notation.pages.markup import unmarked
from tutor.notation.pages.pictured import without_pictures
from tutor.notation.pages.programmed import unprogrammed
from tutor.notation.pages.sum_signs import sums_typed

_DOUBLE = re.compile(r"(?<![=<>:])==(?![=<>])|:=|≔|\\coloneqq?(?![a-z])")
_BOTH_WAYS = re.compile(r"<=+>")
_AS_A_CELL = re.compile(
    r"^ *=(?=[^=]*[A-Za-z][^=]*=| *[-+]?[0-9.(√](?:[-+*/^(). 0-9,°√]|sin|cos|tan|sqrt|radians|pi)*(?:kN|N|lb|kips?|k)?(?: *\(?[TC]\)?)? *$)",
    re.IGNORECASE,
)
"""The sign before a formula in a cell of a table."""
_DIVIDED = re.compile(r"÷ *([0-9.]+/[0-9.]+)(?![\w.(/^])")
"""A fraction that is divided by, told from the division by its sign: 6 ÷ 3/5."""
_OKAY = re.compile(r"\bO\. ?K\b\.?|\bo\. ?k\.")
_GAP = re.compile(r" {3,}")
_STOPS = re.compile(r"(?<=[\w)\]}°])(?:[!?]+(?![\w!?])| +[!?]+ *$)|(?<=[\w)\]}°] )[.,;]+(?= *$)")
"""What ends a sentence and says nothing else: ! and ? anywhere, the others where they stand apart at the end."""
_TURN_ABOVE = re.compile(
    r"\^ ?(?:\{ ?[↺↻⟲⟳+]* ?[↺↻⟲⟳] ?[↺↻⟲⟳+]*\}|[↺↻⟲⟳])|(?<=[↺↻←↑→↓↖↗↘↙])\^ ?(?:\{ ?\+ ?\}|\+)|^ *\( ?\+ ?\) *(?=Σ)"
)
SPEAKS = re.compile(
    r"[^\W\d_]{4}|\) *[-+] *[0-9.]*[*x ]*\(|\+ ?ve|T *\+|[①-⑳]|: *[\w.]+ *:|90|cw\b|=[^=()\[\]]*[)\]] *$"
)
"""Without any of it a line is no sentence, and has no words that go beside its equations."""


def spoken(text: str) -> Source:
    """The text in plain characters and without what stands around it, every word of it left as a word."""
    source = replace(Source.of(text), text=plain(text)).rewritten(UNSEEN, "")
    return without_margins(source, text).rewritten(_GAP, "  ").rewritten(_STOPS, " ")


def bared(text: str) -> Source:
    """The text in plain characters and without LaTeX, with long gaps as two spaces."""
    source = signs_for_codes(text)
    if "÷" in source.text:
        source = source.rewritten(_DIVIDED, lambda found: f"÷({found[1]})")
    source = replace(source, text=plain(source.text)).rewritten(UNSEEN, "")
    source = unmarked(without_pictures(source))
    source = without_margins(source, text).rewritten(_GAP, "  ")
    source = source.rewritten(_BOTH_WAYS, "⇒").rewritten(_DOUBLE, "=")
    source = written_to_end(source)
    source = source.rewritten(_AS_A_CELL, "").rewritten(_OKAY, "ok")
    source = sums_typed(said_once(untexed(recopied(source))))
    source = uncommanded(unprogrammed(source)).rewritten(_TURN_ABOVE, " ")
    source = source.rewritten(_GAP, "  ").rewritten(_STOPS, " ")
    return without_convention(directed(source)) if SPEAKS.search(source.text) else source
