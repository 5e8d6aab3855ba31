"""Does it work: trials drawn by lot, what they show, goals, and the course over visits. Pure; never which stick to choose."""
