"""Read what a person wrote down: a record in, an `Inspection` or every fault of the record out."""
