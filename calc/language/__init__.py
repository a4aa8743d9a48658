"""How physics is written: quantities, units, numbers, symbols, expressions and their algebra."""
