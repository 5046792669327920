"""What did the student *type*? Text in, an equation over named unknowns out, with text spans."""

from tutor.notation.exact import Exact

__all__ = ["Exact"]
