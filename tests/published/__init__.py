"""Checks against outside sources; a package, so that its files may be named like those beside it."""
