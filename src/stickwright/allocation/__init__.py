"""Who does what: actions among sites, devices, sockets, game options and helpers. Never where a thing is fixed."""
