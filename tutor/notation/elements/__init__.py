"""What is a typed line made of? Characters, words, units, numbers, a tree of them, and what is wrong with one."""
