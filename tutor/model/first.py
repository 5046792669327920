"""With which files does one begin: a problem and a set that are sound as they are, and say what may
stand in them?"""

from __future__ import annotations

PROBLEM = """\
# A problem file of pinjoint. Change what you like, then: pinjoint check THIS-FILE
# A line that begins with # is a remark; take the # away to use what stands behind it.

title = "Arm over the loading bay"
# story = "What it is, in a sentence or two. Three quotes for several lines."
# topics = ["bracket", "3-4-5"]
# level = 1                       # how hard, 1 to 6
# id = "loading-arm"              # stays when the title changes
# given = ["reactions"]           # the student begins at the joints
force = "kN"                      # kN, N, MN, lb or kip
length = "m"                      # m, mm, cm, in or ft
members = ["AB", "BC", "AC"]      # each as its two joints; longer names with a dash: "U1-L2"

[joints]                          # x to the right, y up
A = [0, 0]
B = [0, 3]
C = [4, 0]                        # an exact number in quotes: "3/2", "5*sqrt(3)/2", "2*tan(30)"

[supports]
A = { roller = 0 }                # pushes along 0 degrees from +x: a wall on its left
B = "pin"                         # "roller" alone stands on a level floor
# C = { link = [6, 2] }           # a short link from the joint to that fixed point

[[loads]]                         # one heading for each load
at = "C"
down = 12                         # up, down, left, right; or size = 5 and angle = 210

# [tolerance]                     # how much rounding passes, in percent
# silent = 0.5
# remark = 2

# [vary]                          # each student of a set gets other numbers
# loads = { C = { down = [9, 12, 15, 18] } }
# joints = { C = { x = { from = 2, to = 6, step = 0.5 } }, B = { y = [2, 3, 4] } }
# mirror = true
# keep = ["nice", "largest < 100", "AC in compression"]
"""
SET = """\
# A set of pinjoint: the problem files of this folder. Then: pinjoint check THIS-FOLDER

title = "A first set"
order = ["problem"]               # the files in their order, each once
# id = "week-1"                   # students' own numbers follow from it; keep it once handed out
# hints = "no lines"              # "all", "no lines" or "none"
# attempts = 5                    # tries for one equation or value
# mode = "check"                  # "practice", or "check": lines are only called right or wrong
# due = 2026-12-01                # a date, as information

# [tolerance]                     # for files that give none
# silent = 0.5
# remark = 2

# [after]                         # what has to be done first
# another = ["problem"]
"""


def first_files() -> dict[str, bytes]:
    """The files of a first set by name: its set.toml and one problem."""
    return {"set.toml": SET.encode("utf-8"), "problem.toml": PROBLEM.encode("utf-8")}
