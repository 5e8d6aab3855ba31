"""Measuring live: guided tasks, sticks plugged in or read by the browser, what is seen meanwhile. Never a sample kept by itself."""
