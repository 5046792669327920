"""Where a line cannot be explained, is what is said to fit true, and is nothing that fits left out?"""

from __future__ import annotations

import pytest
from corpus import wrong_line
from mending import FITS, forces_in, values

from tutor.judge import Fx, Fy, judge
from tutor.judge.example import MAST


@pytest.mark.parametrize(
    "seeds",
    [
        pytest.param(range(130), id="some"),
        pytest.param(range(400), id="all", marks=pytest.mark.slow),
    ],
)
def test_what_is_said_to_fit_stands_in_the_true_line_with_one_factor(seeds: range) -> None:
    seen = 0
    for seed in seeds:
        wrong = wrong_line(seed, 3)
        if wrong is None:
            continue
        verdict = judge(
            wrong.problem, wrong.about, wrong.text, senses=wrong.senses, known=wrong.known
        )
        for mistake in verdict.mistakes:
            if match := FITS.search(mistake.place):
                seen += 1
                true, typed = values(wrong.line), values(wrong.slipped)
                ratios = {typed[name] / true[name] for name in forces_in(match[1])}
                assert max(ratios) - min(ratios) <= 0.02 * abs(max(ratios)), (seed, wrong.text)
    assert seen > len(seeds) / 20


@pytest.mark.parametrize(
    ("about", "text", "fits"),
    [
        (Fx("A"), "A_x + F_AB - F_CD + 0.11 F_AD + 3 C_y = 0", {"AB", "A_x"}),
        (Fy("D"), "-12 - 0.1 F_AD + 0.2 F_BD - 0.3 F_CD = 0", {"load D y"}),
        (Fy("D"), "24 + 8/5 F_AD + 0.2 F_BD - 0.3 F_CD - F_AB = 0", {"AD", "load D y"}),
    ],
)
def test_all_that_fits_is_said_numbers_as_well(about, text: str, fits: set[str]) -> None:
    (mistake,) = judge(MAST, about, text).mistakes
    match = FITS.search(mistake.place)
    assert match is not None, mistake.place
    assert forces_in(match[1]) == fits


def test_nothing_is_said_to_fit_where_turning_the_line_round_lets_as_much_fit() -> None:
    (mistake,) = judge(MAST, Fx("D"), "3/5 F_AD + 0.2 F_BD + 0.7 F_CD - F_AB + 5 = 0").mistakes
    assert mistake.code == "not-equilibrium"
    assert not FITS.search(mistake.place)
