"""A backup: everything in one file, made while the records are open, and read again before it is called good.

A backup is itself a file of records: the same passphrase opens it, and it can be restored by a copy where all else fails.
"""
