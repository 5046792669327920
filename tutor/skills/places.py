"""Where was an answer given? Its place in words: an equation, a value, a support, a member."""

from __future__ import annotations

from tutor.judge import in_words
from tutor.judge.about import from_text
from tutor.text import one_line

CHOSEN = {
    "reasons": "the reasons",
    "count": "the counts",
    "halves": "why a load on members may be brought to the joints",
    "shares": "what the joints take",
    "soundness": "whether it is held",
    "loose": "which joints can move",
}


def place_in_words(place: str) -> str:
    """What an answer was for: "ΣFx at joint C", "the value of AB", "the support A"."""
    if place in CHOSEN:
        return CHOSEN[place]
    if place.startswith("support "):
        return f"the {place}"
    if place.startswith("zero "):
        return f"{place.removeprefix('zero ')} without force"
    try:
        return in_words(from_text(place))
    except ValueError:
        return one_line(place)
