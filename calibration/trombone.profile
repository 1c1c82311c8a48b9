# What to expect of: trombone. Pitches are sounding MIDI numbers, C4 = 60.
lowest = 40  # E2: seventh position
highest = 72  # C5: usual top
written_to_sounding = 0  # semitones; bass clef at pitch
gate_db = 12  # over the room's noise; brass is loud near a microphone; common practice, no source
smoothing_cents = 160  # cents from top to bottom that are still one note; vibrato with the slide; common practice, no source
