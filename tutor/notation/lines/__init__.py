"""What is a typed line, laid out: its pieces, its statements, what each says?"""
