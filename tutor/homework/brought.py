"""What is right on a paper, to begin a walk of its first wrong place with?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from tutor.homework.findings import Review
from tutor.homework.paper import Paper
from tutor.model import Problem


@dataclass(frozen=True)
class Brought:
    """What a walk from the first wrong place begins with: right values, senses, and the joint.

    `joint` is "" for the whole truss.
    """

    values: Mapping[str, str]
    senses: Mapping[str, str]
    joint: str


def brought(problem: Problem, paper: Paper, result: Review) -> Brought:
    """What is right on a paper that was checked, to walk its first wrong place with."""
    right = {finding.name for finding in result.findings if finding.state == "right"}
    values = {name: text for name, text in paper.values.items() if name in right}
    at_joint = result.first in problem.joint
    return Brought(values if at_joint else {}, paper.senses, str(result.first) if at_joint else "")
