"""The nouns: player, kit, game, case, and what comes out of a plan. Frozen, validated, SI inside. Never a computation of the job."""
