"""What did the student *type*? Text in, an equation over named unknowns out, with text spans.

It knows no problem: it is given a table of names. Text goes through look-alike characters
(`characters`), symbols (`scanner`, `symbols`, with `words`, `digits`, `units` and `names`), the
grammar (`line.lark`, `make_table`, `table`, `parser`), checks (`angles`, `dimension`) and `evaluate`. What cannot
be read comes back as an `Unreadable` made from the table in `complaints`; nothing raises on what
somebody typed.
"""

from tutor.notation.elements.exact import Exact
from tutor.notation.elements.label import Between, Label
from tutor.notation.elements.tree import Span
from tutor.notation.elements.unreadable import Unreadable
from tutor.notation.formulas.evaluate import Term
from tutor.notation.given import read_letters, read_name
from tutor.notation.lines.line import Line, Side, Step
from tutor.notation.lines.reading import Reading
from tutor.notation.lines.value import ValueReading, one_equation, value_of
from tutor.notation.naming.names import Names, spelling
from tutor.notation.naming.spellings import Slant
from tutor.notation.pieces import read_pieces
from tutor.notation.read import (
    heading_begun,
    read_heading,
    read_line,
    readings_beside,
    without_marks,
)
from tutor.notation.sides.constant import read_number

__all__ = [
    "Between",
    "Exact",
    "Label",
    "Line",
    "Names",
    "Reading",
    "Side",
    "Slant",
    "Span",
    "Step",
    "Term",
    "Unreadable",
    "ValueReading",
    "heading_begun",
    "one_equation",
    "read_heading",
    "read_letters",
    "read_line",
    "read_name",
    "read_number",
    "read_pieces",
    "readings_beside",
    "spelling",
    "value_of",
    "without_marks",
]
