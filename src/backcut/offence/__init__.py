"""The words of an offence: situations, events, actions, choices, phrases, formations, books and their problems."""
