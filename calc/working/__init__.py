"""From typed data to a worked answer."""
