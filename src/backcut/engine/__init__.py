"""The one place where rules run: decide, advance, play, explore, and a possession in time."""
