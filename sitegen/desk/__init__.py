"""The baker's desk: a page on her own machine that shows what she is writing as it will be published.

in:        the folder that holds `content/`, what the browser asks for
out:       pages of the desk, the live site, news of each file that is saved
imports:   all rooms below, faults
never:     arithmetic, what is published, another machine's requests
read first: server.py
"""
