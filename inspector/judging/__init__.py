"""Rules over facts: what stands, what does not, what is open. The engine decides; nothing here calculates."""
