"""From findings to an assessment: levels, order, cost, what to look at next."""
