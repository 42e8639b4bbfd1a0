"""Every sentence with numbers in it, so that it can be tested, spoken and translated."""
