"""What does one kind of support have to say of itself?"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Literal

from tutor.model.parts import Joint, Reaction, Support

Takes = Literal["nothing", "angle", "point"]
TAKES: tuple[Takes, ...] = ("nothing", "angle", "point")
Sign = Literal["pin", "roller", "link"]
FORMS = {"nothing": "", "angle": "150", "point": "[-1, 4]"}


@dataclass(frozen=True)
class SupportKind:
    """A kind of support: what it puts on its joint, how it is written, drawn and spoken of.

    `name` stands in problem files and may be typed, as may the other `words`; `reactions` are the
    unknowns it puts on a joint. `takes` is what may be written with it: the angle of its push in
    degrees from +x, or the fixed point it goes to; `about` says what that is. `alone` is what it is
    called where its name stands alone, empty where that does not do, and `means` what it holds then.
    `sign` is the mark it is drawn with and the way its place is told: across both directions, against
    a surface, or towards a fixed point. `why` says why it holds what it holds. `only_pushes` marks
    one that cannot pull on its joint.
    """

    name: str
    reactions: Callable[[Support, Joint], tuple[Reaction, ...]]
    sign: Sign
    why: str
    takes: Takes = "nothing"
    about: str = ""
    alone: str = ""
    means: str = ""
    words: tuple[str, ...] = ()
    only_pushes: bool = False

    @property
    def form(self) -> str:
        """How it is written in a file with what it takes; empty where it takes nothing."""
        return f"{{ {self.name} = {FORMS[self.takes]} }}" if self.takes != "nothing" else ""
