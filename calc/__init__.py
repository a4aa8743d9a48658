"""School physics, line by line: quantities as learners type them, worked steps, marks, diagrams, papers."""

# Of the whole booklet: at the foot of every page, in the terminal, and the newest in docs/changelog.md.
VERSION = "1.2"
