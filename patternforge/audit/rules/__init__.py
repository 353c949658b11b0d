"""What is looked for in a cutting file, one module for each question; every rule yields the flaws it finds."""
