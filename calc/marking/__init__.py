"""A learner's own work judged."""
