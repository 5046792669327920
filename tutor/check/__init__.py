"""Are these problem files sound: readable, statically determinate and stable?

`check` looks at files and folders; what it warns of is a table in `doubts`, between problems of a set
in `twins`, and of numbers that vary in `varying`. `told` says it all as text or JSON.
"""

from tutor.check.files import CURES, FilesChecked, check, standing_defect

__all__ = ["CURES", "FilesChecked", "check", "standing_defect"]
