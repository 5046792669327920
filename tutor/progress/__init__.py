"""What has this student done, what can they do by now, and what comes next?

`kept` goes through the lessons of a folder once and keeps what each came to; `attained` is all of
them together. From it follow how much of a new problem is left to the student (`stages`), which one
comes next and why (`choosing`), and the page that tells the student what they can do (`page`).
"""
