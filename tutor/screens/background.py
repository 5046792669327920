"""How is work done beside the screen, so that its failure ends nothing and shows no values?"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, Protocol, TypeVar

from textual.worker import get_current_worker

Made = TypeVar("Made")


class Runs(Protocol):
    """What an app has for work beside the screen."""

    @property
    def is_running(self) -> bool: ...
    def call_from_thread(self, callback: Any, *args: Any, **kwargs: Any) -> Any: ...
    def run_worker(self, work: Any, *, thread: bool, exit_on_error: bool) -> Any: ...


def beside(
    app: Runs,
    work: Callable[[], Made],
    done: Callable[[Made], object],
    failed: Callable[[Exception], None],
) -> None:
    """Run `work` in a thread, then `done` with what it made or `failed` with what it raised.

    Both run in the app's own thread; neither does once the app is ending.
    """

    def run() -> None:
        worker = get_current_worker()
        try:
            made = work()
        except Exception as fault:
            if not worker.is_cancelled and app.is_running:
                app.call_from_thread(failed, fault)
            return
        if not worker.is_cancelled and app.is_running:
            app.call_from_thread(done, made)

    app.run_worker(run, thread=True, exit_on_error=False)
