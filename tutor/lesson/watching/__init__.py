"""What would a lecturer write next at the board, and why? Any lesson can be shown so, line by line."""

from tutor.lesson.move import Guess, Move, Reason
from tutor.lesson.watching.what_next import next_move

__all__ = ["Guess", "Move", "Reason", "next_move"]
