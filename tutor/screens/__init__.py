"""The walk in a terminal: the Textual app, thin, with no statics of its own.

`app` wires and nothing else; each screen, dialog and widget has a file of its own and a `.tcss`
beside it. Messages go up, state goes down: a screen owns the session and hands widgets what to
show. Modules without Textual: `shelf` (which problems there
are), `pictures` (what is drawn now), `deeds` (what can be done, with its keys), `clean` and `marks`.
"""
