"""What is *true* of a problem? Equilibrium equations, determinacy and stability, and the forces."""

from tutor.statics.body import (
    SUM_X,
    SUM_Y,
    Equilibrium,
    Force,
    FreeBody,
    Moment,
    Projection,
    Sum,
    Term,
    joint_body,
    load_forces,
    member_force,
    part,
    reaction_forces,
    whole,
)
from tutor.statics.cut_through import Section, meetings, section, sections
from tutor.statics.determinate import (
    Determinacy,
    Stability,
    determinacy,
    forces_follow,
    loose_joints,
    reactions_by_whole,
    reactions_from_whole,
    soundness,
    stability,
)
from tutor.statics.exact import symbolic
from tutor.statics.forces import Answer, Unsolvable, solve
from tutor.statics.order import Order, Step, joint_order, unknown_at
from tutor.statics.system import residuals
from tutor.statics.zero import ZeroForce, shown_zero, zero_force

__all__ = [
    "SUM_X",
    "SUM_Y",
    "Answer",
    "Determinacy",
    "Equilibrium",
    "Force",
    "FreeBody",
    "Moment",
    "Order",
    "Projection",
    "Section",
    "Stability",
    "Step",
    "Sum",
    "Term",
    "Unsolvable",
    "ZeroForce",
    "determinacy",
    "forces_follow",
    "joint_body",
    "joint_order",
    "load_forces",
    "loose_joints",
    "meetings",
    "member_force",
    "part",
    "reaction_forces",
    "reactions_by_whole",
    "reactions_from_whole",
    "residuals",
    "section",
    "sections",
    "shown_zero",
    "solve",
    "soundness",
    "stability",
    "symbolic",
    "unknown_at",
    "whole",
    "zero_force",
]
