"""Does the report on a class keep up? Each lesson believed against judged anew, and growth in line."""

from __future__ import annotations

import subprocess
import sys
import time
from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from datetime import timedelta
from pathlib import Path
from typing import Any

import pytest
from pairs import turns

TESTS = Path(__file__).parents[1]
sys.path[:0] = [str(TESTS / "students"), str(TESTS / "cohort")]

from classroom import DAY, HABIT, Record, journal, records_of  # noqa: E402

from tutor.cohort import class_report  # noqa: E402
from tutor.cohort.believing import replayed  # noqa: E402
from tutor.cohort.handed import written  # noqa: E402
from tutor.cohort.sampling import SHARE  # noqa: E402
from tutor.model import Problem, load_problem, load_set, write_problem  # noqa: E402
from tutor.records.belonging import content_of  # noqa: E402
from tutor.records.contents import read_contents  # noqa: E402
from tutor.shipped import shipped_problems  # noqa: E402
from tutor.variants import variant_of  # noqa: E402

HABITS = ("careful", "hasty", "geometry-blind", "forgetful")
PROBLEMS = 10
ANSWER_COSTS = 0.25
"""An answer is replayed at four times the speed of judging it, reading its file included."""
OUT_OF_LINE = 1.35
OWN_TO_SAME = 1.5


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


@pytest.fixture(scope="module")
def own_course(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Ten of the shipped problems that vary, as they are."""
    folder = tmp_path_factory.mktemp("own") / "ten"
    folder.mkdir()
    files = [file for file in sorted(shipped_problems().rglob("*.toml")) if file.name != "set.toml"]
    for file in [file for file in files if load_problem(file).vary is not None][:PROBLEMS]:
        (folder / file.name).write_bytes(file.read_bytes())
    (folder / "set.toml").write_text('title = "Ten"\nid = "ten"\n', encoding="utf-8")
    return folder


@pytest.fixture(scope="module")
def own_walks(own_course: Path) -> Callable[[str, str], list[tuple[Problem, list[Record]]]]:
    """What a student of a kind leaves of each problem with their own numbers."""
    problems = load_set(own_course).problems
    kept: dict[tuple[str, str], list[Record]] = {}

    def walks_of(student: str, habit: str) -> list[tuple[Problem, list[Record]]]:
        found = []
        for problem in problems:
            own = variant_of(problem, student=student, set="ten")
            key = content_of(own), habit
            if key not in kept:
                kept[key] = records_of(own, HABIT[habit])
            found.append((own, kept[key]))
        return found

    return walks_of


def put_own(folder: Path, own_walks: Any, students: int) -> Path:
    """A class whose students have their own numbers."""
    folder.mkdir()
    for n in range(students):
        own = own_walks(f"s{n:04}", HABITS[n % len(HABITS)])
        (folder / f"s{n:04}.txt").write_bytes(handed_in_by(n, own))
    return folder


def handed_in_by(n: int, own: Sequence[tuple[Problem, list[Record]]]) -> bytes:
    journals = [
        journal(problem, records, DAY + timedelta(seconds=997 * n + k))
        for k, (problem, records) in enumerate(own)
    ]
    return written(f"s{n:04}", "ten", "Ten", DAY, journals)


def files_of(walks: Any, students: int) -> Iterator[tuple[str, bytes]]:
    for n in range(students):
        habit = HABITS[n % len(HABITS)]
        own = [walk for (_, kind), walk in walks.items() if kind == habit]
        yield f"s{n:04}", handed_in_by(n, own)


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


@pytest.mark.benchmark
def test_numbers_of_their_own_cost_less_than_half_as_much_again(
    benchmark, course, walks, own_course, own_walks, tmp_path
) -> None:
    """For each answer, in a class of sixty that one process gathers."""
    same, own = put(tmp_path / "same", walks, 60), put_own(tmp_path / "own", own_walks, 60)

    def each(folders: tuple[Path, Path]) -> int:
        report = class_report(*folders)
        assert report.faults == ()
        return report.checked.answers

    answers = {folders: each(folders) for folders in ((own, own_course), (same, course))}
    pair = turns(each, each, [((own, own_course), (same, course))] * 3)
    benchmark.pedantic(lambda: None)
    more = answers[own, own_course] / answers[same, course]
    assert pair.told(benchmark) <= OWN_TO_SAME * more


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
@pytest.mark.parametrize("numbers", ["the same", "their own"])
def test_five_hundred_students_with_ten_problems_stay_below_500_mb(
    benchmark, course, walks, own_course, own_walks, tmp_path, numbers
) -> None:
    is_own = numbers == "their own"
    folder = tmp_path / "large"
    put_own(folder, own_walks, 500) if is_own else put(folder, walks, 500)
    script = tmp_path / "large.py"
    script.write_text(LARGE, encoding="utf-8")
    ran = subprocess.run(
        [sys.executable, str(script), str(folder), str(own_course if is_own else course)],
        capture_output=True,
        text=True,
        check=True,
    )
    answers, seconds, own, worker = map(float, ran.stdout.split())
    told = f"{answers:.0f} answers in {seconds} s; {own:.0f} MB here, {worker:.0f} MB a worker"
    print(f"\n{numbers}: {told}")
    benchmark.pedantic(lambda: None)
    benchmark.extra_info.update(answers=answers, seconds=seconds, mb=own, worker_mb=worker)
    assert own + 2 * worker <= 500
