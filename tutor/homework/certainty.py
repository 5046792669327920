"""Would a story of the mistakes on a page survive any order of work and any other slip?

Values alone show what a slip left over in one equation, and many slips may leave as much over by chance. So a
story is certain only where it is one slip in one line, of the commonest kinds, at the one place that can be,
shown by numbers that are all written, where no single value that came out wrong would leave as much over, and
where that is large beside what the figures leave open. How large was found by trying, no source.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence

from tutor.homework.account import RIVAL
from tutor.homework.places import Story
from tutor.homework.sheet import Sheet
from tutor.homework.vectors import along

COMMON = 1.1
"""A slip that costs more is not met often enough to be certain of it; several slips cost more, and none known."""
LEAST = 2
"""So many wrong values at least: a lone one shows too little."""
SHARP = 0.01
"""What the figures written leave open, to what is left over: more of it may be met by chance."""


def beyond_doubt(stories: Sequence[Story], handed_in: Mapping[str, Sheet]) -> bool:
    """Whether nothing but the first story can be true; `handed_in` are the bodies as written."""
    best = stories[0]
    turn = best.turns[0]
    if best.cost > COMMON or turn.accounts[0].about is None:
        return False
    if len(turn.values) + len(best.follows) < LEAST:
        return False
    near = [story for story in stories if story.cost <= best.cost + RIVAL]
    least = turn.accounts[0].cost
    named = {(a.mistake.code, a.mistake.force) for a in turn.accounts if a.cost <= least + RIVAL}
    used = {best.first, *(place for place, _ in best.follows.values())}
    return (
        {story.first for story in near} == {best.first}
        and len(named) == 1
        and not any(handed_in[place].missing for place in used)
        and _sharp(handed_in[best.first])
        and not any(of_one_value(handed_in[s.first], s.turns[0].values) for s in stories)
    )


def _sharp(sheet: Sheet) -> bool:
    """Whether an equation of the body leaves over far more than its figures leave open."""
    return any(
        slack <= SHARP * abs(left) for left, slack in zip(sheet.lefts, sheet.slacks, strict=True)
    )


def of_one_value(sheet: Sheet, wrong: Collection[str]) -> bool:
    """Whether the value of one of the wrong forces alone would leave over what a body does."""
    forces = [sheet.part[name] for name in wrong if name in sheet.part]
    return any(along(force.vector, sheet.lefts, sheet.slacks) is not None for force in forces)
