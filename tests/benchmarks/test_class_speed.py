"""Does the report on a class keep up? Each lesson believed against judged anew, and growth in line."""

from __future__ import annotations

import subprocess
import sys
import time
from collections.abc import Iterator
from dataclasses import replace
from datetime import timedelta
from pathlib import Path
from typing import Any

import pytest
from pairs import turns

TESTS = Path(__file__).parents[1]
sys.path[:0] = [str(TESTS / "students"), str(TESTS / "cohort")]

from classroom import DAY, HABIT, journal, records_of  # noqa: E402

from tutor.cohort import class_report  # noqa: E402
from tutor.cohort.believing import replayed  # noqa: E402
from tutor.cohort.handed import written  # noqa: E402
from tutor.cohort.sampling import SHARE  # noqa: E402
from tutor.model import load_problem, load_set, write_problem  # noqa: E402
from tutor.records.contents import read_contents  # noqa: E402
from tutor.shipped import shipped_problems  # noqa: E402

HABITS = ("careful", "hasty", "geometry-blind", "forgetful")
PROBLEMS = 10
ANSWER_COSTS = 0.25
"""An answer is replayed at four times the speed of judging it, reading its file included."""
OUT_OF_LINE = 1.35


@pytest.fixture(scope="module")
def course(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Ten of the shipped problems as a set, with the same numbers for every student: so few walks are
    enough for a large class."""
    folder = tmp_path_factory.mktemp("course") / "ten"
    folder.mkdir()
    files = sorted(shipped_problems().rglob("*.toml"))
    for file in [file for file in files if file.name != "set.toml"][:PROBLEMS]:
        same_for_all = replace(load_problem(file), vary=None)
        (folder / file.name).write_text(write_problem(same_for_all), encoding="utf-8")
    (folder / "set.toml").write_text('title = "Ten"\nid = "ten"\n', encoding="utf-8")
    return folder


@pytest.fixture(scope="module")
def walks(course: Path) -> dict[tuple[str, str], Any]:
    """What each kind of student leaves of each problem."""
    return {
        (problem.title, habit): (problem, records_of(problem, HABIT[habit]))
        for problem in load_set(course).problems
        for habit in HABITS
    }


def files_of(walks: Any, students: int) -> Iterator[tuple[str, bytes]]:
    for n in range(students):
        habit = HABITS[n % len(HABITS)]
        own = [walk for (_, kind), walk in walks.items() if kind == habit]
        journals = [
            journal(problem, records, DAY + timedelta(seconds=997 * n + k))
            for k, (problem, records) in enumerate(own)
        ]
        yield f"s{n:04}", written(f"s{n:04}", "ten", "Ten", DAY, journals)


def put(folder: Path, walks: Any, students: int) -> Path:
    folder.mkdir()
    for name, data in files_of(walks, students):
        (folder / f"{name}.txt").write_bytes(data)
    return folder


@pytest.mark.benchmark
def test_an_answer_replayed_costs_a_quarter_of_one_judged_at_most(benchmark, walks) -> None:
    lessons = [(problem, journal(problem, records)) for problem, records in walks.values()]

    def run(share: float) -> int:
        answers = 0
        for problem, data in lessons:
            answers += replayed(problem, read_contents(data).lines, True, "seed", share).answers
        return answers

    answers = run(SHARE)
    pair = turns(lambda _: run(SHARE), lambda _: run(1.0), [(None, None)] * 3)
    benchmark.extra_info["answers a second"] = round(answers / pair.one)
    print(
        f"\n{answers / pair.one:.0f} answers a second replayed, {answers / pair.other:.0f} judged"
    )
    benchmark.pedantic(lambda: None)
    assert pair.told(benchmark) <= ANSWER_COSTS


@pytest.mark.benchmark
def test_a_class_twice_as_large_takes_twice_as_long(benchmark, course, walks, tmp_path) -> None:
    """At 50, 100, 200 and 400 students; the time of this process alone counts."""
    took = {}
    for students in (50, 100, 200, 400):
        folder = put(tmp_path / f"{students}", walks, students)
        begun = time.process_time()
        report = class_report(folder, course)
        took[students] = (time.process_time() - begun) / report.checked.answers
        assert report.faults == ()
    benchmark.pedantic(lambda: None)
    told = {n: f"{1e6 * each:.0f} µs an answer" for n, each in took.items()}
    benchmark.extra_info.update({str(n): words for n, words in told.items()})
    print(f"\n{told}")
    assert took[400] <= OUT_OF_LINE * took[100]


LARGE = """
import resource, sys, time
from tutor.cohort import class_report
if __name__ == "__main__":
    begun = time.monotonic()
    report = class_report(sys.argv[1], sys.argv[2], workers=2)
    kinds = (resource.RUSAGE_SELF, resource.RUSAGE_CHILDREN)
    most = [resource.getrusage(kind).ru_maxrss // 1024 for kind in kinds]
    print(report.checked.answers, round(time.monotonic() - begun, 1), *most)
"""


@pytest.mark.benchmark
@pytest.mark.skipif(sys.platform == "win32", reason="the memory of a process is asked of POSIX")
def test_five_hundred_students_with_ten_problems_stay_below_500_mb(
    benchmark, course, walks, tmp_path
) -> None:
    folder = put(tmp_path / "large", walks, 500)
    script = tmp_path / "large.py"
    script.write_text(LARGE, encoding="utf-8")
    ran = subprocess.run(
        [sys.executable, str(script), str(folder), str(course)],
        capture_output=True,
        text=True,
        check=True,
    )
    answers, seconds, own, worker = map(float, ran.stdout.split())
    print(f"\n{answers:.0f} answers in {seconds} s; {own:.0f} MB here, {worker:.0f} MB a worker")
    benchmark.pedantic(lambda: None)
    benchmark.extra_info.update(answers=answers, seconds=seconds, mb=own, worker_mb=worker)
    assert own + 2 * worker <= 500
