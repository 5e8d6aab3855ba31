"""Measuring live: guided tasks, sticks plugged in here or read by the browser, and what is seen while the player is still there."""
