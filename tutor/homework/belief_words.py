"""What is said of a belief that runs through a page: what kind of thing it is, why, and where to look?"""

from __future__ import annotations

from collections.abc import Mapping

WORDS: Mapping[str, tuple[str, str, str]] = {
    "components": (
        "{through}, the horizontal and vertical components of inclined members are exchanged.",
        "Which of sine and cosine gives the horizontal component depends on the line from which the "
        "angle is measured: the cosine belongs to the side that lies beside the angle.",
        "Take one inclined member, draw its slope triangle, and see which side is horizontal.",
    ),
    "one-slope": (
        "{through}, one slope is used for members that have different ones.",
        "Each member has the slope of the line between its own two joints.",
        "Work out run, rise and length of each inclined member from the joints' coordinates.",
    ),
    "familiar-slope": (
        "{through}, inclined members have a slope that this truss does not have.",
        "A slope comes from the coordinates of two joints; a 3-4-5 triangle or an angle known by "
        "heart fits only where they say so.",
        "Work out run, rise and length of one inclined member from the joints' coordinates.",
    ),
    "radians": (
        "{through}, sines and cosines look as if the calculator was set to radians.",
        "A calculator reads an angle as degrees or as radians, as it is set.",
        "Let your calculator give the sine of 30 degrees: it must be one half.",
    ),
    "tangents": (
        "{through}, rise over run stands where a sine or cosine belongs.",
        "A component is the force times run or rise over the hypotenuse.",
        "Take one inclined member: divide by the length of the member, not by its run or rise.",
    ),
    "whole-forces": (
        "{through}, inclined members count with the whole force where only a component acts.",
        "In a sum of forces along one direction only the component along it counts.",
        "Look at each inclined member in your sums: which factor is missing beside it?",
    ),
    "stopped-short": (
        "{through}, inclined members have the value of one component, not of the whole force.",
        "A component is the force times a sine or cosine: the force is the component divided by it.",
        "Take one inclined member: is what you found its force, or only its horizontal or vertical "
        "component?",
    ),
    "half-each": (
        "The reactions look as if each support took half of the load.",
        "Half to each is true only where truss and loads are symmetrical; else the moments decide.",
        "Write the sum of moments about one of the supports.",
    ),
    "upright-roller": (
        "An inclined support is taken as a vertical one.",
        "A roller pushes at a right angle to the surface on which it stands, a link along itself.",
        "Draw the line of action of {force}, and take both of its components.",
    ),
    "level-roller": (
        "An inclined support is taken as a horizontal one.",
        "A roller pushes at a right angle to the surface on which it stands, a link along itself.",
        "Draw the line of action of {force}, and take both of its components.",
    ),
    "roller-component": (
        "The components of an inclined support's reaction are exchanged.",
        "A roller pushes at a right angle to the surface on which it stands, a link along itself.",
        "Draw the slope triangle of {force}: which side is horizontal?",
    ),
    "no-pin": (
        "A pinned support is taken as if it were a roller.",
        "A pin holds its joint in both directions; a roller in one.",
        "Add up the horizontal loads: what holds them? Look at {force}.",
    ),
    "long-arms": (
        "In the moments, distances along the truss are taken for arms.",
        "The arm of a force is the perpendicular distance from the point to its line of action.",
        "Look at each arm in your sum of moments: is it at a right angle to its force?",
    ),
    "short-arms": (
        "In the moments, the arms are one panel too short or too long.",
        "An arm runs from the moment point to the line of action of the force.",
        "Count the panels of each arm once more, from the moment point on.",
    ),
    "loads-lost": (
        "{through}, the loads are missing at the joints on which they act.",
        "A load acts on its joint as well as on the whole truss.",
        "Draw the free-body diagram of a loaded joint: every load on it belongs in it.",
    ),
    "reactions-lost": (
        "At the supports, the reactions are missing in the sums of the joints.",
        "A reaction acts on its joint as well as on the whole truss.",
        "Draw the free-body diagram of a support: its reactions belong in it.",
    ),
    "loads-up": (
        "{through}, the loads at the joints act the other way round.",
        "A load acts on its joint as it is given.",
        "Draw the free-body diagram of a loaded joint, each load as it acts.",
    ),
    "reactions-turned": (
        "At the supports, the reactions act the other way round in the sums of the joints.",
        "A reaction acts on its joint in the sense that you found for it.",
        "Draw the free-body diagram of a support, each reaction as you found it.",
    ),
    "load-upright": (
        "An inclined load is taken as a vertical one.",
        "An inclined load has a horizontal and a vertical component.",
        "Draw the slope triangle of the {force}.",
    ),
    "spread-end": (
        "All of what is spread along a member looks as if it acted at one end of it.",
        "A load spread evenly along a member acts as half of it at each of the member's two joints.",
        "Work out the resultant on one loaded member, and give half of it to each end.",
    ),
    "spread-total": (
        "The load for each unit of length looks as if it were all the load there is.",
        "A load for each metre or foot is multiplied by the length along which it lies.",
        "Work out the resultant on one loaded member: how long is what the load lies on?",
    ),
    "spread-measure": (
        "What is spread looks as if it were measured along the wrong length.",
        "A load by the span goes with the projection of a member, one by the length with the member "
        "itself.",
        "Look at what is given: is it so much for each unit of the member, or of its span?",
    ),
    "spread-left-out": (
        "What is spread along one of the members looks as if it were left out.",
        "Each joint takes half of what lies on each loaded member that ends at it.",
        "Look at what lies on {force}: which joints take half of it?",
    ),
    "load-components": (
        "The components of an inclined load are exchanged.",
        "Which of sine and cosine gives the horizontal component depends on the line from which the "
        "angle is measured.",
        "Draw the slope triangle of the {force}: which side is horizontal?",
    ),
}
