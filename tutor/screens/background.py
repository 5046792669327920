"""How is work done beside the screen, so that its failure ends nothing and shows no values?"""

from __future__ import annotations

from collections.abc import Callable
from typing import TypeVar

from textual.app import App
from textual.worker import get_current_worker

Made = TypeVar("Made")


def beside(
    app: App[int],
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
