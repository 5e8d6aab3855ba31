"""What a recording shows, as figures with intervals. Never what should be set because of it: that is tuning."""
