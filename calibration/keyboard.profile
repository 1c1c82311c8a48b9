# What to expect of: keyboard. Pitches are sounding MIDI numbers, C4 = 60.
lowest = 21  # A0: lowest of 88 keys
highest = 108  # C8: highest of 88 keys
written_to_sounding = 0  # semitones; in C
gate_db = 10  # over the room's noise; hammers start loud; common practice, no source
smoothing_cents = 0  # cents; a key cannot shake its pitch: every change is a note
