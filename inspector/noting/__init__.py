"""Getting the look onto the record: the interview, tables, and two part records made one."""
