"""Which unknown does a spelling mean, and how may it be spelled?"""
