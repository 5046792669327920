"""Which mistakes are made before a line is written: in a free body, or in a member said to be zero?

These are told apart where a student chooses what acts at a support or names a rule, so they have no
rule that makes wrong coefficients; their codes and hints are as public and stable as those of lines.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from tutor.judge.verdict import Mistake


@dataclass(frozen=True)
class Claim:
    """A named way in which a free body or a zero-force member goes wrong.

    `called` is its name for people; `what` says what it is, `why` why students do it. The hints hold gaps: {support} for "the roller
    at C", {joint} for the joint, {member} for the member said to be zero, {ends} for its two joints,
    {other} for what balances it, {needs} for what the rule that was named needs at a joint.
    """

    code: str
    called: str
    what: str
    why: str
    look: str
    reason: str
    place: str

    def told(self, **gaps: str) -> Mistake:
        """The mistake with its hints about this support or this member."""
        look, reason, place = (t.format(**gaps) for t in (self.look, self.reason, self.place))
        return Mistake(self.code, None, look, reason, place)


SUPPORTS = (
    Claim(
        "too-many-reactions",
        "more than a support holds",
        "A support is given more than it can hold: a roller or a link two reactions, a pin three.",
        "Every support is drawn like the pin, which is the one that was practised first.",
        "That is more than {support} can hold. In which direction could the joint still move freely?",
        "A reaction stands for a movement that is stopped: where the joint is free to move, nothing "
        "pushes back.",
        "One of the forces that you drew at {joint} would have to stop a movement that {support} "
        "leaves free: move the joint in thought along each of them.",
    ),
    Claim(
        "too-few-reactions",
        "less than a support holds",
        "A support is given less than it holds: a pin one reaction, or a support none.",
        "The loads push one way only, and the support is taken to answer in that way only.",
        "That is less than {support} holds. Try to move the joint: which movements does it stop?",
        "Each direction in which a support stops movement has a reaction of its own, whether or not "
        "the loads seem to push that way; the equations may show it to be zero.",
        "Joint {joint} is held in more directions than you drew forces for: push it in thought to "
        "the side, and then up and down.",
    ),
    Claim(
        "reaction-direction",
        "a reaction in a wrong direction",
        "A reaction is drawn in a direction in which its support does not hold.",
        "The reaction is drawn vertical from habit, or along the floor, because there the roller moves.",
        "Look at which movement {support} stops, and which it leaves free.",
        "A roller pushes at right angles to what it rolls on, a link pulls or pushes along its own length; "
        "only a pin can hold in any direction.",
        "What you drew at {joint} does not lie as {support} holds: see what it stands on, or where "
        "it leads.",
    ),
    Claim(
        "invented-moment",
        "a moment at a support that lets turn",
        "A moment is drawn at a support that lets the truss turn.",
        "A built-in end was the last support that was met before trusses.",
        "Could {support} hold the truss against turning about {joint}? A moment acts only where "
        "turning is prevented.",
        "Pins, rollers and links let a body turn about them; a moment acts only at a built-in end.",
        "The moment at {joint} does not belong on the free body: nothing there stops the truss from "
        "turning.",
    ),
)

ZERO = (
    Claim(
        "zero-loaded",
        "a zero member at a loaded joint",
        "A member is said to be zero by a rule that a load or a reaction at the joint forbids.",
        "The members of the joint are looked at, and what is applied there is forgotten.",
        "No rule shows {member} to be zero at {ends}: more acts there than its members.",
        "The rules speak of everything at a joint: a load or a reaction counts like a member, and "
        "something must balance it.",
        "At {joint} {other} acts as well: is there another member that can take it, or must {member}?",
    ),
    Claim(
        "zero-third-member",
        "a zero member that another balances",
        "A member is said to be zero though another member at the joint can balance it.",
        "A joint without a load looks idle, however many members meet there.",
        "No rule shows {member} to be zero at {ends}: list what acts at each of them.",
        "A force is zero where nothing else at the joint has a component across the line of all the "
        "rest; with one more member out of that line, the two can balance each other.",
        "At {joint} {other} can balance {member}: then neither of them has to be zero.",
    ),
    Claim(
        "zero-rule",
        "a zero member by a rule that does not fit",
        "A member is zero, but not by the rule that was named.",
        "The rules are known as pictures, and the loads along one line are not counted.",
        "That rule looks for a joint where {needs}, and it is not so at {ends}: count what acts at "
        "each of them.",
        "The rules differ in what else acts at the joint: nothing but one member, nothing but two in "
        "one line, or loads and reactions too that lie in that line.",
        "It can be seen at {joint}: count the members there that carry a force, and look whether a "
        "load or a reaction acts.",
    ),
)

CLAIMS: Mapping[str, Claim] = {claim.code: claim for claim in (*SUPPORTS, *ZERO)}
"""Every such mistake by its code."""
