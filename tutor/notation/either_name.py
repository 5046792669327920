"""Does a name mean the reaction R_S or the force in member SR, both of which it can spell: RS?

The other terms of an equation tell; a value alone tells nothing, and is asked about.
"""

from __future__ import annotations

import re

from tutor.notation.elements.source import Source
from tutor.notation.lines.line import Step
from tutor.notation.naming.names import Names, spelling

_WORD = re.compile(r"(?<![\w}])[^\W\d]\w*(?![\w{])")


def named_apart(source: Source, names: Names) -> tuple[Source, ...]:
    """The source with every such name taken as the reaction, and as the member; none where there is none.

    A member that the source names in the other order of its joints, SR, leaves RS to the reaction.
    """
    words = set(_WORD.findall(source.text))
    either = {word: found for word in words if (found := _reaction_or_member(word, names))}
    if not either:
        return ()
    plain = {name for word in words - set(either) for name in names.meant(word)}
    as_reaction = {word: reaction for word, (reaction, _) in either.items()}
    as_member = {word: spelling(member) for word, (_, member) in either.items()}
    ways = [as_reaction, as_member]
    if any(member in plain for _, member in either.values()):
        ways = [as_reaction]
    return tuple(
        source.rewritten(_WORD, lambda found, way=way: way.get(found.group()))  # type: ignore[misc]
        for way in ways
    )


def _reaction_or_member(word: str, names: Names) -> tuple[str, str] | None:
    """The reaction and the member that a word means as well; None where it means anything else."""
    meanings = names.meanings(word)
    if len(meanings) != 2 or any(meaning.share for meaning in meanings):
        return None
    reactions = [meaning.name for meaning in meanings if "_" in meaning.name]
    members = [meaning.name for meaning in meanings if "_" not in meaning.name]
    return (reactions[0], members[0]) if reactions and members else None


def gives_value(step: Step) -> bool:
    """Whether a statement is one unknown and numbers alone."""
    first, *rest = step.sides
    return first.name is not None and all(side.numeric for side in rest)
