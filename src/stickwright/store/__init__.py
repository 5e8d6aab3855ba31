"""What is kept from visit to visit: encrypted on this machine, or on a team's server. Nothing kept is ever overwritten."""
