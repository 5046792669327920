"""Who gathers the files does not matter: here, on cores or on a cluster, the report is the same."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
from pathlib import Path

import pytest
from classroom import handed_in, make_set

from tutor.cohort import class_report
from tutor.cohort.as_json import as_json
from tutor.cohort.as_statements import as_statements
from tutor.cohort.course import course_at
from tutor.cohort.folder import files_in
from tutor.cohort.gathering import Way, gather
from tutor.cohort.spreading import Sent, course_of, gather_lot, texts_of
from tutor.model import load_set

HABITS = ("careful", "hasty", "geometry-blind")


def class_in(folder: Path, course: Path, students: int) -> Path:
    folder.mkdir()
    for n in range(students):
        data = handed_in(course, f"s{n:03}", HABITS[n % 3], most={"eel-trap": 14, "trestle": 10})
        (folder / f"s{n:03}.txt").write_bytes(data)
    return folder


@pytest.mark.parametrize("only", ["", "eel-trap.toml"])
def test_a_worker_has_the_set_as_its_instructor_has_it(course_folder: Path, only: str) -> None:
    place = course_folder / only if only else course_folder
    there, here = course_of(texts_of(load_set(place))), course_at(place)
    assert there.problems == here.problems
    assert there.among.name == here.among.name
    data = handed_in(course_folder, "s7", most={"eel-trap": 12, "trestle": 8})
    assert gather(there, "a", data, Way("x")) == gather(here, "a", data, Way("x"))


def test_a_lot_comes_to_what_its_files_come_to_with_their_bytes_or_without(
    course_folder, tmp_path
) -> None:
    folder = class_in(tmp_path / "in", course_folder, 2)
    texts, files = texts_of(load_set(course_folder)), files_in(folder)
    from_disk = gather_lot(texts, [Sent(each) for each in files], Way("x"))
    sent = gather_lot(texts, [Sent(each, each.path.read_bytes()) for each in files], Way("x"))
    assert from_disk == sent


@pytest.mark.slow
def test_the_report_is_the_same_on_two_cores(course_folder: Path, tmp_path: Path) -> None:
    folder = class_in(tmp_path / "in", course_folder, 30)
    one, two = (class_report(folder, course_folder, workers=n) for n in (1, 2))
    assert as_json(one) == as_json(two)
    assert as_statements(one) == as_statements(two)


@pytest.mark.slow
def test_the_report_is_the_same_on_a_cluster_that_loses_a_worker(tmp_path: Path) -> None:
    """A local cluster of two workers in processes of their own; one is killed while it works."""
    distributed = pytest.importorskip("distributed")
    course = make_set(tmp_path / "my-set")
    folder = class_in(tmp_path / "in", course, 60)
    alone = class_report(folder, course)
    with distributed.LocalCluster(
        n_workers=2, threads_per_worker=1, processes=True, dashboard_address=None
    ) as cluster:
        victim = next(iter(cluster.workers.values())).process.pid
        killed: list[int] = []

        def kill(count: int) -> None:
            if not killed:
                killed.append(count)
                os.kill(victim, signal.SIGKILL)

        report = class_report(folder, course, scheduler=cluster.scheduler_address, done=kill)
    assert killed
    assert killed[0] < 60
    assert as_json(report) == as_json(alone)
    assert as_statements(report) == as_statements(alone)


@pytest.mark.slow
@pytest.mark.skipif(os.name == "nt", reason="Windows has no interruption to send")
def test_an_interruption_ends_the_program_and_its_workers_at_once_and_in_silence(
    course_folder: Path, tmp_path: Path
) -> None:
    folder = class_in(tmp_path / "in", course_folder, 60)
    code = (
        "import sys; from tutor.cohort import class_report\n"
        "try:\n"
        f"    class_report({str(folder)!r}, {str(course_folder)!r}, in_full=True, workers=2,\n"
        "        done=lambda count: print(count, flush=True))\n"
        "except KeyboardInterrupt: sys.exit(130)"
    )
    running = subprocess.Popen(
        [sys.executable, "-c", code],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        start_new_session=True,
    )
    assert running.stdout is not None
    assert int(running.stdout.readline()) < 60
    os.killpg(running.pid, signal.SIGINT)
    told, said = running.communicate(timeout=30)
    assert (running.returncode, said) == (130, "")
    assert "60" not in told.split()
