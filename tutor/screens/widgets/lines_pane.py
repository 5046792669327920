"""What stands so far? The values found, the lines with their verdicts, and what is given."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from functools import partial
from itertools import groupby

from textual.containers import VerticalScroll
from textual.content import Content
from textual.widgets import Static

from tutor.figure.sentences import given_sentences
from tutor.lesson import State
from tutor.lesson.state import Try
from tutor.lesson.steps.result_words import result_in_words
from tutor.lesson.steps.sound import WORDS
from tutor.screens.clean import one_line
from tutor.screens.marks import MARKS
from tutor.screens.themes import BADGES
from tutor.skills.places import place_in_words
from tutor.statics.words import unit_in_words
from tutor.text import visible

SOUND = {str(key): words for key, words in WORDS.items()}

CHUNK = 25
"""So many tries share a part of the pane; a part whose tries stand is not laid out again."""


class LinesPane(VerticalScroll):
    """The story above, then every try in order, then what is found; its end is kept in sight."""

    def __init__(self, *, id: str | None = None) -> None:
        super().__init__(id=id)
        self._shown: list[object] = []

    def show(self, state: State, ascii_only: bool) -> None:
        """Show the lines and values of this state."""
        tries = state.tries
        chunks = [tries[i : i + CHUNK] for i in range(0, len(tries), CHUNK)]
        before = [None, *(chunk[-1] for chunk in chunks)]
        parts: list[tuple[object, Callable[[], Content]]] = [
            (state.problem.title, partial(given_lines, state))
        ]
        for last, chunk in zip(before, chunks, strict=False):
            make = partial(tries_lines, chunk, ascii_only, last)
            parts.append(((chunk, ascii_only), make))
        found = found_lines(state)
        parts.append((found.plain, lambda: found))
        self._put(parts)
        self.border_title = Content("Given" if not tries else "Lines so far")
        if tries:
            self.call_after_refresh(self.scroll_end, animate=False)

    def _put(self, parts: Sequence[tuple[object, Callable[[], Content]]]) -> None:
        """One widget for each part; only those that are new or other than before are made again."""
        statics = list(self.query(Static))
        for static in statics[len(parts) :]:
            static.remove()
        for place, (key, make) in enumerate(parts):
            if place >= len(statics):
                self.mount(Static(make(), classes="lines-part"))
            elif place >= len(self._shown) or self._shown[place] != key:
                statics[place].update(make())
        self._shown = [key for key, _ in parts]


def given_lines(state: State) -> Content:
    """The story, and what the picture may be too small to say."""
    problem = state.problem
    story = visible(problem.story).strip()
    force, length = (one_line(unit_in_words(unit)) for unit in (problem.force, problem.length))
    units = f"Forces in {force}, lengths in {length}."
    lines = (story, units, *map(one_line, given_sentences(problem)))
    return Content("\n".join(filter(None, lines)))


def tries_lines(tries: Sequence[Try], ascii_only: bool, last: Try | None = None) -> Content:
    """These tries with a mark and a word; what a line is for is said above it where it changes.

    `last` is the try before them.
    """
    rows: list[Content] = []
    place = last.place if last is not None and last.text else None
    for made, times in alike(tries):
        words = place_in_words(made.place)
        if made.text and made.place != place:
            rows.append(Content.styled(words, "underline"))
        text = SOUND.get(made.text, made.text) if made.place == "soundness" else made.text
        often = f"({times} times) " if times > 1 else ""
        rows.append(try_row(made.verdict, often + (text or words), ascii_only))
        place = made.place if made.text else None
    return Content("\n").join(rows)


def alike(tries: Sequence[Try]) -> Iterator[tuple[Try, int]]:
    """Each try with how often it was made; those in a row that would read the same are one."""
    for _, same in groupby(tries, lambda made: (made.place, made.text, made.verdict)):
        first, *more = same
        yield first, 1 + len(more)


def try_row(verdict: str, text: str, ascii_only: bool) -> Content:
    """One try: mark, word, and what was typed or chosen."""
    mark = MARKS.get(verdict, MARKS["note"])
    badge = Content.styled(f" {mark.shown(ascii_only)} ", BADGES[mark.badge])
    return badge + Content(f" {one_line(text)}")


def found_lines(state: State) -> Content:
    """The values that stand, each with its sense."""
    if not state.results:
        return Content("")
    rows = [Content.styled("Found", "bold")]
    rows += [Content(result_in_words(state, result.unknown)) for result in state.results]
    return Content("\n").join(rows)
