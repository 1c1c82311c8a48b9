# What to expect of: voice. Pitches are sounding MIDI numbers, C4 = 60.
lowest = 48  # C3: bottom of a tenor; women lie above
highest = 84  # C6: top of a soprano
written_to_sounding = 0  # semitones; voices read where they sing
gate_db = 6  # over the room's noise; common practice, no source
smoothing_cents = 260  # cents from top to bottom that are still one note; vibrato of ±100 and some more; range of singers from memory
