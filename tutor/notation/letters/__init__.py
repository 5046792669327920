"""Which letters does a line bring in or give a size?"""
