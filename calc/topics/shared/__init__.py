"""What several chapters use."""
