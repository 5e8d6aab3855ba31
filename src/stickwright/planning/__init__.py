"""The whole job: a case in, a plan out (`stickwright.planning.plan`), and its steps, a module each. Never a sentence, never a file."""
