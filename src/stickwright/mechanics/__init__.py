"""What the readings mean: lever mechanics, ability, endurance, fits. Pure functions on numbers and arrays; never a file, a sentence."""
