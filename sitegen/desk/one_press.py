"""The one lock round what prints cards: fonts are not safe among threads."""

from threading import Lock

PRESS = Lock()
