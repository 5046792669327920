"""The parts of a screen, one a file: each shows what it is handed and posts what was done to it."""
