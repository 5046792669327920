"""Is it told what somebody takes for sine and cosine who takes the same from the first joint to the last?

The pages are made from free bodies, joint by joint, with another run and rise of every inclined member.
"""

from __future__ import annotations

from random import Random

import pytest
from lines import figures
from pages import TRUSSES, of_members, page_of_belief, right_walk, worked

from tutor import review

BELIEFS = {
    "over the rise": (lambda run, rise: (run / rise, rise), "tangent"),
    "over the run": (lambda run, rise: (run, rise / run), "tangent"),
    "whole in all sums": (lambda run, rise: (1.0, 1.0), "whole-force"),
    "whole across": (lambda run, rise: (1.0, rise), "whole-force"),
    "whole upwards": (lambda run, rise: (run, 1.0), "whole-force"),
    "45 degrees": (lambda run, rise: (0.5**0.5, 0.5**0.5), "slope"),
    "30 degrees": (lambda run, rise: (0.75**0.5, 0.5), "slope"),
    "60 degrees": (lambda run, rise: (0.5, 0.75**0.5), "slope"),
    "3 across and 4 up": (lambda run, rise: (0.6, 0.8), "slope"),
    "4 across and 3 up": (lambda run, rise: (0.8, 0.6), "slope"),
}


@pytest.mark.parametrize("truss", ["bank", "wind", "steep"])
@pytest.mark.parametrize("belief", BELIEFS)
def test_what_is_taken_for_sine_and_cosine_from_joint_to_joint_is_told(
    belief: str, truss: str
) -> None:
    run_rise, code = BELIEFS[belief]
    page = page_of_belief(Random(1), truss, belief, of_members(run_rise), (code,))
    result = review(TRUSSES[truss], {"reactions": page["reactions"], "forces": page["forces"]})
    assert result.first in page["places"]
    assert result.accounts[0].mistake.code == code
    assert result.accounts[0].throughout


@pytest.mark.parametrize(("truss", "first"), [("bank", "B"), ("lantern", "B"), ("wind", "E")])
@pytest.mark.parametrize("belief", ["45 degrees", "whole in all sums"])
def test_what_is_left_of_such_a_page_once_its_first_joint_was_mended_is_told_as_that(
    truss: str, first: str, belief: str
) -> None:
    problem, (run_rise, code) = TRUSSES[truss], BELIEFS[belief]
    steps, right = right_walk(Random(2), problem, 4)
    upto = [step.place for step in steps].index(first) + 1
    mended = [name for step in steps[:upto] for name in step.finds]
    both = worked(problem, steps, of_members(run_rise), 4)
    assert both is not None
    values = {**both[0], **{name: right[name] for name in mended}}
    far = 0.02 * max(map(abs, right.values()))
    left = {name for name in values if abs(values[name] - right[name]) > far}
    parts = {"reactions": problem.reaction, "forces": problem.member}
    work = {part: {n: figures(values[n], 4) for n in names} for part, names in parts.items()}
    result = review(problem, work)
    assert set(result.rests) == left
    assert result.accounts[0].mistake.code == code
