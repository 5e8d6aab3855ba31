"""Where a stick goes, what holds it there, and whether it stays. Never who presses what."""
