"""What stands so far? The values found, the lines with their verdicts, and what is given."""

from __future__ import annotations

from textual.app import ComposeResult
from textual.containers import VerticalScroll
from textual.content import Content
from textual.widgets import Static

from tutor.judge import in_words
from tutor.judge.about import from_text
from tutor.lesson import State
from tutor.lesson.steps.writing import result_in_words
from tutor.screens.clean import clean, one_line
from tutor.screens.marks import MARKS
from tutor.screens.themes import BADGES
from tutor.statics.words import unit_in_words

CHOSEN = {"reasons": "the reasons", "count": "the counts"}


class LinesPane(VerticalScroll):
    """The story above, then every try in order, then what is found; its end is kept in sight."""

    def compose(self) -> ComposeResult:
        yield Static(id="log")

    def show(self, state: State, ascii_only: bool) -> None:
        """Show the lines and values of this state."""
        found = found_lines(state)
        parts = [given_lines(state), tries_lines(state, ascii_only), found]
        self.query_one("#log", Static).update(Content("\n\n").join(p for p in parts if p.plain))
        self.border_title = Content("Given" if not state.tries else "Lines so far")
        if state.tries:
            self.call_after_refresh(self.scroll_end, animate=False)


def given_lines(state: State) -> Content:
    """The story, and what the picture may be too small to say."""
    problem = state.problem
    story = clean(problem.story).strip()
    force, length = (one_line(unit_in_words(unit)) for unit in (problem.force, problem.length))
    units = f"Forces in {force}, lengths in {length}."
    return Content(f"{story}\n{units}" if story else units)


def tries_lines(state: State, ascii_only: bool) -> Content:
    """Every try with a mark and a word; what a line is for is said above it where it changes."""
    rows: list[Content] = []
    place = None
    for made in state.tries:
        words = place_in_words(made.place)
        if made.text and made.place != place:
            rows.append(Content.styled(words, "underline"))
        rows.append(try_row(made.verdict, made.text or words, ascii_only))
        place = made.place if made.text else None
    return Content("\n").join(rows)


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


def place_in_words(place: str) -> str:
    """Where a try belongs, for people."""
    if place in CHOSEN:
        return CHOSEN[place]
    if place.startswith("support "):
        return f"the {place}"
    if place.startswith("zero "):
        return f"{place.removeprefix('zero ')} without force"
    try:
        return in_words(from_text(place))
    except ValueError:
        return one_line(place)
