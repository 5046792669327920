"""What lies over a screen for one question: a choice, a file name, help."""
