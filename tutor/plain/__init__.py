"""How does a lesson go without a screen? Line by line on standard input and output.

For screen readers, pipes and tests: no colours, no cursor movements, no control characters; every
figure is told in sentences, and every answer begins with a word that says what kind it is (Right,
Wrong, Cannot read, Not decided, Hint, Remark, Note). What can be typed is in `commands`; what a
line answers is in `answers`; `walk` is the conversation.
"""

from tutor.plain.main import run

__all__ = ["run"]
