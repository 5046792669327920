"""How is a slip told: which force, which other forces it may be about, and where it stands?"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from tutor.judge.equal_forces import LEFT_OUT, TOO_MANY, alike, place_hint
from tutor.judge.explanation import Slip
from tutor.judge.factors import factors_of
from tutor.judge.fitting import fitting
from tutor.judge.kind import Case, Kind, force_in_words
from tutor.judge.mistakes import KINDS
from tutor.judge.same import are_near
from tutor.judge.true_equation import TrueEquation
from tutor.judge.typed import TypedEquation
from tutor.judge.verdict import Mistake
from tutor.notation import Reading, Span
from tutor.text import listed


def mistake_of(
    true: TrueEquation,
    slip: Slip,
    reading: Reading,
    slips: Sequence[Slip] = (),
    work: str = "",
) -> Mistake:
    """A slip as it is told, with the other forces named that it may be about as well.

    `slips` are all the slips of the line; without them it is taken to be about its own force.
    `work` is what the line was made of, where it was not typed as it stands.
    """
    typed = next((t.value for t in reading.terms if t.span == slip.span), None)
    names = {term.name for term in reading.terms if term.name is not None}
    same = alike(true, slip, names, slips, typed) if slips else (slip,)
    same = same[:1] + tuple(each for each in same[1:] if not _shown_to_be(slip, each, reading))
    if slip.code in LEFT_OUT:
        same = tuple(each for each in same if not _stands(each, reading)) or same
    acting = sum(1 for s in (*true.unknowns.values(), *true.loads) if s.true != 0.0)
    others = tuple(other.force for other in same[1:] if other.force is not None)
    span = slip.span
    if span is None and slip.force is not None:
        beside = next((t for t in reading.terms if t.name == slip.force), None)
        span, typed = (None, typed) if beside is None else (beside.span, beside.value)
    signed = slip.spot is not None and _has_minus(reading, span, slip.spot.scale)
    about = true.problem, true.about
    turned = all(_only_turns(KINDS[each.code]) for each in slips)
    here = same[0].force, same[0].spot
    case = Case(*about, *here, acting, None, others, typed, signed, work, turned)
    mixed = len(same) > 1 and same[0].code in TOO_MANY
    kind, told = KINDS[same[0].code], KINDS["extra" if mixed else same[0].code]
    look, spot = told.look(case), place_hint(case, same)
    return Mistake(
        kind.code, case.force, look.text, told.reason(case), spot.text, span, others, look, spot
    )


def _only_turns(kind: Kind) -> bool:
    """Whether a mistake leaves all the sizes of a line as they are."""
    return kind.touches == "neither" and not kind.counts


def _shown_to_be(slip: Slip, other: Slip, reading: Reading) -> bool:
    """Whether the product of a slip holds the size of its own force, and not that of another."""
    if slip.spot is None or other.spot is None or slip.span is None or slip.force == other.force:
        return False
    own, another = slip.spot.scale, other.spot.scale
    terms = zip(reading.terms, factors_of(reading), strict=True)
    here = [factors for term, factors in terms if term.span == slip.span and factors.count > 1]
    return any(factors.holds(own) and not factors.holds(another) for factors in here)


def _stands(slip: Slip, reading: Reading) -> bool:
    """Whether a product of the line shows the size of the force of a slip beside what it is multiplied by."""
    spot = slip.spot
    if spot is None:
        return False
    terms = zip(reading.terms, factors_of(reading), strict=True)
    return any(
        are_near(abs(term.value), abs(spot.true)) and factors.has_factor(spot.scale)
        for term, factors in terms
        if term.name is None
    )


def _has_minus(reading: Reading, span: Span | None, size: float) -> bool:
    """Whether a term shows a number of this size with a minus of its own, in brackets."""
    terms = zip(reading.terms, factors_of(reading), strict=True)
    return any(factors.has_minus(size) for term, factors in terms if term.span == span)


def with_what_fits(mistake: Mistake, true: TrueEquation, line: TypedEquation) -> Mistake:
    """A mistake that cannot be named, with the terms that do fit."""
    names = fitting(line, true, true.problem.tolerance)
    if not names:
        return mistake
    named = listed([force_in_words(true.problem, name) for name in names], most=20)
    return replace(mistake, place=f"What you wrote for {named} fits; write the other terms again.")
