"""Files in and out: a case folder, recordings, gauge and bench readings, schemas. Nothing heavy is imported here."""
