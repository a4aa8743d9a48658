"""What is declared and what comes of it: questions, laws, constants, directions, the worked answer."""
