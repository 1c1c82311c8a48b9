# What to expect of: whistle. Pitches are sounding MIDI numbers, C4 = 60.
lowest = 72  # C5: low whistling; common practice, no source
highest = 108  # C8: the highest that the ear looks for
written_to_sounding = 0  # semitones; at pitch
gate_db = 6  # over the room's noise; whistling is soft; common practice, no source
smoothing_cents = 260  # cents from top to bottom that are still one note; lips shake like a voice; common practice, no source
