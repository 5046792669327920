"""What is told of made lines, line by line, is what `made/` keeps of it.

The shares of `test_judge_corpora` say how many slips are named; a change that trades one line for
another leaves them as they are. Here each row holds the slips that a line was made with, what was told
of it (first the mistakes in their order, then the remarks), and the line. A row may change only for the
better: look at each before `PINJOINT_RENEW_GOLDENS=1` writes them anew.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from corpus import Named, right_line, wrong_line
from kept import in_codes, is_as_kept

from tutor.judge import judge

KEPT = Path(__file__).parent / "made"
CHUNK = 100
ONE_SLIP, TWO_SLIPS, RIGHT = (range(50_000, 50_700), range(60_000, 60_600), range(70_000, 70_300))


def chunks(seeds: range) -> list[range]:
    return [range(start, start + CHUNK) for start in range(seeds.start, seeds.stop, CHUNK)]


def as_made(slips: Named) -> str:
    return ", ".join(sorted(f"{code} {force or '-'}" for code, force in slips))


def of_wrong_lines(seeds: range, count: int) -> str:
    rows = []
    for seed in seeds:
        wrong = wrong_line(seed, count)
        if wrong is not None:
            given = {"senses": wrong.senses, "known": wrong.known}
            verdict = judge(wrong.problem, wrong.about, wrong.text, **given)
            rows.append(f"{as_made(wrong.made)} | {in_codes(verdict)} | {wrong.text}\n")
    return "".join(rows)


def of_right_lines(seeds: range) -> str:
    rows = []
    for seed in seeds:
        line = right_line(seed)
        given = {"senses": line.senses, "known": line.known}
        rows.append(
            f"{in_codes(judge(line.problem, line.about, line.text, **given))} | {line.text}\n"
        )
    return "".join(rows)


@pytest.mark.parametrize("seeds", chunks(ONE_SLIP))
def test_of_made_lines_with_one_slip_the_same_is_told_as_before(seeds: range) -> None:
    assert is_as_kept(KEPT / f"one-slip-{seeds.start}.txt", of_wrong_lines(seeds, 1))


@pytest.mark.parametrize("seeds", chunks(TWO_SLIPS))
def test_of_made_lines_with_two_slips_the_same_is_told_as_before(seeds: range) -> None:
    assert is_as_kept(KEPT / f"two-slips-{seeds.start}.txt", of_wrong_lines(seeds, 2))


@pytest.mark.parametrize("seeds", chunks(RIGHT))
def test_of_made_right_lines_the_same_is_remarked_as_before(seeds: range) -> None:
    assert is_as_kept(KEPT / f"right-{seeds.start}.txt", of_right_lines(seeds))
