"""The fires in the logs: first fires, burn times, rises, and the wood they take."""
