"""The knowledge in `rules/`: what can be observed, limits, machine kinds, rules, cautions, sources."""
