"""What does a drawing say in words? One sentence a fact, for screen readers and plain text."""

from __future__ import annotations

from tutor.figure.parts import Figure, plain


def to_words(figure: Figure) -> tuple[str, ...]:
    """The figure's title and facts as plain sentences, without control characters."""
    title = plain(figure.title).strip().rstrip(".")
    sentences = tuple(plain(sentence) for sentence in figure.sentences)
    return (f"{title}.", *sentences) if title else sentences
