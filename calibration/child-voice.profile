# What to expect of: child voice. Pitches are sounding MIDI numbers, C4 = 60.
lowest = 57  # A3: low children's voices of about 8 years reach it (music teaching tables)
highest = 81  # A5: top of unchanged voices from 10 years (Cooksey)
written_to_sounding = 0  # semitones; voices read where they sing
gate_db = 6  # over the room's noise; children sing softly: a low gate; common practice, no source
smoothing_cents = 260  # cents from top to bottom that are still one note; vibrato of ±100 and some more; range of singers from memory
