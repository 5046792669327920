"""pinjoint: a tutor for the method of joints, usable from Python."""
