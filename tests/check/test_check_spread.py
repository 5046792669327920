"""Is the same found on several processors as on one, in the same order, whatever becomes of them?"""

from __future__ import annotations

import os
import signal
import sys
from pathlib import Path

import pytest

from tutor.check import check, spread
from tutor.shipped import shipped_problems

pytestmark = pytest.mark.skipif(sys.platform != "linux", reason="only where the system can fork")


@pytest.fixture(autouse=True)
def _even_few(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(spread, "ENOUGH", 2)
    monkeypatch.setattr(spread, "processors", lambda: 2)


def test_a_check_on_two_processors_says_what_one_says(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    for file in sorted((shipped_problems() / "first-steps").glob("*.toml")):
        (tmp_path / file.name).write_bytes(file.read_bytes())
    (tmp_path / "broken.toml").write_text('title = "Broken"\njoints = 3\n', "utf-8")
    heard: list[tuple[int, int]] = []
    found = check(tmp_path, lambda done, of: heard.append((done, of)))
    monkeypatch.setattr(spread, "processors", lambda: 1)
    assert found == check(tmp_path)
    assert not found.sound
    assert [done for done, _ in heard] == list(range(1, len(heard) + 1))


def test_results_come_in_the_order_of_the_items_from_other_processes() -> None:
    made = list(spread.spread(lambda n: (n, os.getpid()), range(60)))
    assert [n for n, _ in made] == list(range(60))
    assert os.getpid() not in {process for _, process in made}


def test_what_a_lost_worker_leaves_is_done_one_by_one() -> None:
    here = os.getpid()

    def work(n: int) -> int:
        if n == 33 and os.getpid() != here:
            os.kill(os.getpid(), signal.SIGKILL)
        return n

    assert list(spread.spread(work, range(60))) == list(range(60))


def test_a_fault_in_the_work_is_raised_and_not_hidden() -> None:
    def work(n: int) -> int:
        raise ArithmeticError(f"at {n}")

    with pytest.raises(ArithmeticError, match="at 0"):
        list(spread.spread(work, range(9)))


def test_one_who_needs_no_more_ends_the_work() -> None:
    made = spread.spread(lambda n: n, range(200))
    assert next(made) == 0
    made.close()
