"""The app: pages by what the practitioner does, served to this machine only."""
