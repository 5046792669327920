"""Which words beside the equations of a line say something of them, and which only talk?"""
