"""What does a text say in plain characters, with its rows, corrections and proportions as one types them?"""

from __future__ import annotations

from tutor.notation.abridged import unabridged
from tutor.notation.bared import bared
from tutor.notation.brought_in import let_be
from tutor.notation.cells import celled
from tutor.notation.corrected import corrected
from tutor.notation.dashed_off import dashed_off
from tutor.notation.likened import likened
from tutor.notation.names import Names
from tutor.notation.pushed import pushed
from tutor.notation.said_twice import said_once_over
from tutor.notation.set_apart import set_apart
from tutor.notation.source import Source
from tutor.notation.term_arrows import without_arrows_of_terms
from tutor.notation.totalled import totalled
from tutor.notation.triangle_said import without_triangles
from tutor.notation.worded_arm import with_arms


def written_out(text: str, names: Names) -> Source:
    """The text laid out as a line, before its sentences and symbols are looked at."""
    source = bared(text)
    source = celled(source, source.typed(text), names)
    source = let_be(without_triangles(dashed_off(source, names)), names)
    typed = source.typed(text) if "•" in text else source.text
    source = said_once_over(set_apart(source, typed, names))
    source = unabridged(pushed(corrected(without_arrows_of_terms(source, names)), names), names)
    return totalled(likened(with_arms(source, names), names), names)
