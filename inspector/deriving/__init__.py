"""From an inspection to facts: every expected look, derived quantities, the limit that applies and its outcome."""
