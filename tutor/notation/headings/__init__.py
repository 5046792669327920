"""Which equation does a heading name?"""
