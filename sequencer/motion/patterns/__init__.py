"""The vocabulary: named patterns, the families of laws behind them, and blocks of both hands."""
