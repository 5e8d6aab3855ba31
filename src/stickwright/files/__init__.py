"""Files in and out: a case folder, recordings, gauge and bench readings, schemas. Never a figure worked out; nothing heavy imported."""
