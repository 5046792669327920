"""What does one side of an equation say, and what words and arrows stand behind it?"""
