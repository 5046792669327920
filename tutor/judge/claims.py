"""Which mistakes are made before a line is written: in a free body, in a member said to be zero, or
in what a joint is said to take of a load that lies on members?

These are told apart where a student chooses what acts at a support, names a rule or gives a share, so
they have no rule that makes wrong coefficients; their codes and hints are as public and stable as those
of lines.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from tutor.judge.verdict import Mistake


@dataclass(frozen=True)
class Claim:
    """A named way in which a free body, a zero-force member or a spread load goes wrong.

    `called` is its name for people; `what` says what it is, `why` why students do it. The hints hold gaps: {support} for "the roller
    at C", {joint} for the joint, {member} for the member said to be zero, {ends} for its two joints,
    {where} for "there than its members", {other} for what balances it, {needs} for what the rule that was named needs at a joint, {members}
    for the members under a spread load that end at {joint}.
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
        "No rule shows {member} to be zero at {ends}: more acts {where}.",
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

SPREAD = (
    Claim(
        "spread-whole",
        "the whole of a spread load at each end",
        "The whole of what lies on a member is put at each of its joints, so that it acts twice.",
        "Each joint is looked at alone, and the member seems to hang on that one.",
        "Add up what the two ends of a member take: is it more than lies on the member?",
        "What lies on a member is carried by its two ends together: none of it acts twice.",
        "Joint {joint} takes only a share of what lies on {members}: the other end takes the rest.",
    ),
    Claim(
        "spread-neighbour",
        "only one of two neighbouring members under a spread load",
        "Of a joint between members under the load, only what one of them brings is counted.",
        "The load is brought member by member, and each joint is left as the first member made it.",
        "Does every member under the load that ends at this joint bring its share?",
        "A joint takes half of what lies on each member that ends there, from both sides.",
        "At {joint} more than one member under the load ends: {members}.",
    ),
    Claim(
        "spread-end",
        "an end joint like one in between",
        "A joint where the loaded length ends is given as much as one between two loaded members.",
        "The spacing of the joints is multiplied by the load for every joint alike.",
        "Is this joint like its neighbours? Look on which sides of it the load lies.",
        "A joint takes half of what lies on each member that ends there: where the load comes from one "
        "side only, that is one half.",
        "At {joint} only {members} ends with the load on it.",
    ),
    Claim(
        "spread-length",
        "a load for each length taken for a force",
        "The size for each unit of length is taken for the force: the length is left out.",
        "All other loads of a truss are forces, and the number is copied like theirs.",
        "The load is given for each unit of length: which length is it multiplied by?",
        "What lies on a member is the load for each unit of length times the length it lies on.",
        "In what {joint} takes, the length of {members} has no part.",
    ),
    Claim(
        "spread-slope",
        "the slope for the span, or the span for the slope",
        "A load given along the member is multiplied by its span, or one given by the span by the length "
        "along the slope.",
        "Weight lies along the slope and snow is given by the span; both are drawn as the same row of "
        "arrows.",
        "By which length is the load given: along the member, or across the way it acts?",
        "A load along the member, like its weight, goes with the member's length; one by the span, like "
        "snow, with the length that is seen across the load.",
        "In what {joint} takes, the other length of {members} was used than the load is given by.",
    ),
    Claim(
        "spread-way",
        "a share of a spread load in another direction",
        "What a joint takes of a spread load is put in another direction than the load has.",
        "The share is drawn as the support would push against it, or along the member.",
        "Which way does the load act, and which way did you put this share?",
        "The share of a joint acts in the direction of the load that it stands for.",
        "What you put at {joint} does not act as what lies on {members} does.",
    ),
    Claim(
        "spread-elsewhere",
        "a share of a spread load at a joint that has none",
        "A joint takes a share although no member under the load ends there.",
        "The load is shared out among all joints nearby, or among the supports.",
        "Is each of these joints the end of a member under the load?",
        "What lies on a member goes to the two joints at its ends, and to no other.",
        "At {joint} no member under the load ends.",
    ),
    Claim(
        "spread-share",
        "what a joint takes of a spread load",
        "What a joint takes of a spread load is not half of what lies on the members that end there.",
        "A length is taken wrongly, or a member is forgotten.",
        "Go through the members under the load that end at this joint, one by one: what lies on each?",
        "A joint takes half of what lies on each member under the load that ends there.",
        "At {joint} the load comes from {members}.",
    ),
)

CLAIMS: Mapping[str, Claim] = {claim.code: claim for claim in (*SUPPORTS, *ZERO, *SPREAD)}
"""Every such mistake by its code."""
