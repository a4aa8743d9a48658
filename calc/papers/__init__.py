"""Question papers with their memos."""
