"""What does a text say in plain characters, with its rows, corrections and proportions as one types them?"""

from __future__ import annotations

from tutor.notation.abridged import unabridged
from tutor.notation.bared import bared
from tutor.notation.brought_in import called
from tutor.notation.cells import celled
from tutor.notation.corrected import corrected
from tutor.notation.dashed_off import dashed_off
from tutor.notation.likened import likened
from tutor.notation.names import Names
from tutor.notation.source import Source


def written_out(text: str, names: Names) -> Source:
    """The text laid out as a line, before its sentences and symbols are looked at."""
    source = bared(text)
    source = celled(source, source.typed(text), names)
    source = called(dashed_off(source, names), names)
    return likened(unabridged(corrected(source), names), names)
