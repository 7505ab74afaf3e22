"""Step five: print an assessment. A report computes no figure that is not in the assessment."""
