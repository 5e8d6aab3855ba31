"""What a recording tells."""
