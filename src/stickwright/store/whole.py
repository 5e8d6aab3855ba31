"""All that is held about one player: to hand over as one file, and to erase.

What would go and what goes are found by the same questions, so that what was announced is what happens. Erasing means that the
words are no longer in the file, its log or its index; earlier backups lie elsewhere and are out of reach, which is said.
"""
