"""Which smaller problem trains just this mistake? Few members, tidy numbers, one thing to look at."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace

from tutor.judge import Along, Fx, Fy, M, Mistake, Value
from tutor.judge.claims import SPREAD
from tutor.lesson.place import Place
from tutor.lesson.reply import Say
from tutor.lesson.state import State
from tutor.model import Joint, Load, Member, Problem, Spread, Support
from tutor.notation import Exact

IN_ROW = 3
OFFER = (
    "That was the last hint three times in a row. A smaller problem that trains just this is ready "
    "under practice; this one waits for you as it stands."
)
SIZES = (1, 2, 3)
"""The loads of one shape are taken so many times, turn by turn."""


def practice(code: str, turn: int = 0) -> Problem:
    """A problem of three to five members in which `code` is the mistake to beware of.

    The same code and turn give the same problem; another turn, other loads. A code without a shape
    of its own gets the plainest one.
    """
    shape = SHAPES.get(code, _hoist)
    return shape(SIZES[turn % len(SIZES)])


def offered(
    state: State, place: Place, mistakes: Sequence[Mistake]
) -> tuple[State, tuple[Say, ...]]:
    """The state after the last hint was asked at a place, and an offer at every third in a row."""
    code = mistakes[0].code if mistakes else _to_beware_of(place)
    state = replace(state, in_row=(*state.in_row, code))
    if len(state.in_row) % IN_ROW:
        return state, ()
    latest = state.in_row[-IN_ROW:]
    code = Counter(reversed(latest)).most_common(1)[0][0]
    turn = 0 if state.practice is None else state.practice[1] + 1
    return replace(state, practice=(code, turn)), (Say("note", OFFER),)


def _to_beware_of(place: Place) -> str:
    """The mistake that is most often met where none was made yet; our own judgement, no source."""
    match place:
        case Value():
            return "arithmetic"
        case M():
            return "arm"
        case Fx() | Fy() | Along():
            return "component"
    return "missing"


def _problem(
    title: str,
    story: str,
    joints: Sequence[tuple[str, int, int]],
    members: Sequence[str],
    supports: Sequence[Support],
    loads: Sequence[Load],
    length: str = "m",
) -> Problem:
    return Problem(
        title=title,
        force="kN",
        length=length,
        joints=tuple(Joint(name, Exact.of(x), Exact.of(y)) for name, x, y in joints),
        members=tuple(Member(name, *name) for name in members),
        supports=tuple(supports),
        loads=tuple(loads),
        story=story,
        level=1,
    )


def _push(joint: str, **pushes: int) -> Load:
    return Load(joint, tuple((way, Exact.of(size)) for way, size in pushes.items()))  # type: ignore[misc]


def _bracket(times: int) -> Problem:
    return _problem(
        "Practice: the net bracket",
        "A bracket on the net store's wall carries a bundle of nets at its tip. Draw each arrow "
        "before you write a sign.",
        (("A", 0, 3), ("B", 0, 0), ("C", 4, 3)),
        ("AB", "AC", "BC"),
        (Support("A", "pin"), Support("B", "roller", angle=Exact.of(0))),
        (_push("C", down=6 * times),),
    )


def _shears(times: int) -> Problem:
    return _problem(
        "Practice: the sheer legs",
        "Two legs of different slope, tied and stayed at the foot, hold an anchor over the quay.",
        (("A", 0, 0), ("B", 9, 0), ("C", 14, 0), ("D", 9, 12)),
        ("AB", "BC", "AD", "BD", "CD"),
        (Support("A", "pin"), Support("C", "roller")),
        (_push("D", down=56 * times),),
    )


def _signpost(times: int) -> Problem:
    return _in_length("m", 1, times)


def _signpost_in_mm(times: int) -> Problem:
    return _in_length("mm", 1000, times)


def _in_length(length: str, scale: int, times: int) -> Problem:
    return _problem(
        "Practice: the fairway sign",
        "A sign over the fairway takes its own weight and the wind at the top. Ask of each force where "
        "its line of action runs.",
        (("A", 0, 0), ("B", 8 * scale, 0), ("C", 4 * scale, 3 * scale)),
        ("AB", "AC", "BC"),
        (Support("A", "pin"), Support("B", "roller")),
        (_push("C", down=24 * times, right=16 * times),),
        length,
    )


def _pontoon(times: int) -> Problem:
    return _problem(
        "Practice: the pontoon trestle",
        "A trestle stands on the quay with one foot and is held by a inclined link at the other. Follow "
        "the link with your finger before you write what it does.",
        (("A", 0, 0), ("B", 8, 0), ("C", 4, 3)),
        ("AB", "AC", "BC"),
        (Support("A", "pin"), Support("B", "link", anchor=(Exact.of(11), Exact.of(-4)))),
        (_push("C", down=24 * times),),
    )


def _hoist(times: int) -> Problem:
    return _problem(
        "Practice: the crate trestle",
        "Two crates hang from the tie of a trestle, and a pulley pulls at its top. Count the arrows on "
        "each free body before you write.",
        (("A", 0, 0), ("B", 4, 0), ("C", 8, 0), ("D", 4, 3)),
        ("AB", "BC", "AD", "BD", "CD"),
        (Support("A", "pin"), Support("C", "roller")),
        (
            _push("B", down=6 * times),
            _push("B", down=12 * times),
            _push("D", down=6 * times, right=8 * times),
        ),
    )


def _lantern(times: int) -> Problem:
    return _problem(
        "Practice: the quay lanterns",
        "Two lanterns hang from the top of a trestle. Decide at each joint which way the members act on "
        "it, and write them all so.",
        (("A", 0, 0), ("B", 8, 0), ("C", 4, 3)),
        ("AB", "AC", "BC"),
        (Support("A", "pin"), Support("B", "roller")),
        (_push("C", down=6 * times), _push("C", down=12 * times)),
    )


def _beacon(times: int) -> Problem:
    return _problem(
        "Practice: the beacon frame",
        "A frame carries the stay of a beacon at one corner; another corner is bare. Ask at each joint "
        "what acts there before you write.",
        (("A", 0, 0), ("B", 4, 0), ("C", 4, 3), ("D", 0, 3)),
        ("AB", "BC", "CD", "AD", "BD"),
        (Support("A", "pin"), Support("B", "roller")),
        (_push("D", down=6 * times, right=8 * times),),
    )


def _net_loft(times: int) -> Problem:
    loft = _problem(
        "Practice: the net loft",
        "Snow lies on both rafters of the net loft. Ask of each rafter how much lies on it, and which "
        "joints carry it.",
        (("A", 0, 0), ("B", 4, 0), ("C", 8, 0), ("D", 4, 3)),
        ("AB", "BC", "AD", "BD", "CD"),
        (Support("A", "pin"), Support("C", "roller")),
        (),
    )
    snow = Spread(("AD", "CD"), (("down", Exact.of(3 * times)),), "span")
    return replace(loft, spreads=(snow,))


SHAPES: Mapping[str, Callable[[int], Problem]] = {
    "needless-component": _shears,
    "sign": _bracket,
    "sense": _bracket,
    "minus": _bracket,
    "pull-push": _lantern,
    "tension-compression": _bracket,
    "arithmetic": _bracket,
    "component": _shears,
    "whole-force": _shears,
    "slope": _shears,
    "tangent": _shears,
    "upside-down": _shears,
    "side": _shears,
    "ratio": _shears,
    "angle-mode": _shears,
    "complement": _shears,
    "rounding": _shears,
    "arm": _signpost,
    "arm-from": _signpost,
    "no-arm": _signpost,
    "turning": _signpost,
    "other-point": _signpost,
    "arm-unit": _signpost_in_mm,
    "unit": _signpost_in_mm,
    "inclined-support": _pontoon,
    "component-in-moment": _pontoon,
    "component-missing": _pontoon,
    "reflected": _pontoon,
    "too-many-reactions": _pontoon,
    "too-few-reactions": _pontoon,
    "reaction-direction": _pontoon,
    "invented-moment": _pontoon,
    "zero-loaded": _beacon,
    "zero-third-member": _beacon,
    "zero-rule": _beacon,
    **dict.fromkeys((claim.code for claim in SPREAD), _net_loft),
}
"""The shape that trains a code; the crate trestle, with several loads, trains all others."""
