"""A small package in the place of calc, for tests of the page runtime alone."""
