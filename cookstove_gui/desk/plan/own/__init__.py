"""What a cook adds or changes in the program: tasks, what goes in the oven, what foods consist of, words."""
