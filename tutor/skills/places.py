"""Where was an answer given? Its place in words: an equation, a value, a support, a member."""

from __future__ import annotations

from tutor.judge import in_words
from tutor.lesson.place import AtSupport, NoForce, Question, place_of
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
    match place_of(place):
        case Question(name=name):
            return CHOSEN.get(name, one_line(name))
        case AtSupport(joint=joint):
            return f"the support {joint}"
        case NoForce(member=member):
            return f"{member} without force"
        case about:
            return in_words(about)
