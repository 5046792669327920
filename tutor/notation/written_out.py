"""What does a text say in plain characters, with its rows, corrections and proportions as one types them?"""

from __future__ import annotations

from tutor.notation.elements.source import Source
from tutor.notation.letters.brought_in import let_be
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import POINTS
from tutor.notation.pages.abridged import unabridged
from tutor.notation.pages.approximated import approximated
from tutor.notation.pages.bared import bared, spoken
from tutor.notation.pages.by_likeness import by_likeness
from tutor.notation.pages.by_vectors import in_components
from tutor.notation.pages.cells import celled
from tutor.notation.pages.corrected import corrected
from tutor.notation.pages.divided_by import colons_divide
from tutor.notation.pages.likened import likened
from tutor.notation.pages.noted import noted
from tutor.notation.pages.said_twice import said_once_over
from tutor.notation.pages.shear_said import without_shear
from tutor.notation.pages.shorthand import shorthand
from tutor.notation.pages.term_arrows import without_arrows_of_terms
from tutor.notation.pages.totalled import totalled
from tutor.notation.pages.two_sided import with_sums_of_sides
from tutor.notation.pages.worded_arm import with_arms
from tutor.notation.sentences.before_size import said_before_size
from tutor.notation.sentences.dashed_off import dashed_off
from tutor.notation.sentences.dictated import dictated
from tutor.notation.sentences.operators_said import operators_written
from tutor.notation.sentences.pushed import pushed
from tutor.notation.sentences.reaction_said import with_reactions_named
from tutor.notation.sentences.set_apart import set_apart
from tutor.notation.sentences.spoken_around import spoken_around
from tutor.notation.sentences.triangle_said import without_triangles


def written_out(text: str, names: Names) -> Source:
    """The text laid out as a line, before its sentences and symbols are looked at."""
    return _laid_out(text, bared(text), names)


def written_down(text: str, names: Names) -> Source | None:
    """The same of a text that was dictated, or whose letters stand apart; None where it was not."""
    source = dictated(spoken(text), names)
    return None if source is None else _laid_out(text, source, names)


def _laid_out(text: str, source: Source, names: Names) -> Source:
    source = with_sums_of_sides(
        colons_divide(noted(spoken_around(shorthand(in_components(source, names))))), names
    )
    source = said_before_size(source, names)
    source = celled(source, source.typed(text), names)
    source = approximated(by_likeness(without_shear(source), names), names)
    source = let_be(without_triangles(dashed_off(source, names)), names)
    typed = source.text if POINTS.isdisjoint(text) else source.typed(text)
    source = said_once_over(set_apart(source, typed, names))
    source = operators_written(corrected(without_arrows_of_terms(source, names), names), names)
    source = unabridged(pushed(source, names), names)
    source = with_reactions_named(source, names)
    return totalled(likened(with_arms(source, names), names), names)
