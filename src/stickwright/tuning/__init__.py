"""The response of the chosen stick: centre, rotation, range, dead zone, curve, filter, outer limit. Never a raw recording changed."""
