# What to expect of: guitar. Pitches are sounding MIDI numbers, C4 = 60.
lowest = 40  # E2: the open lowest string
highest = 81  # A5: with the usual frets
written_to_sounding = -12  # semitones; an octave under what is written
gate_db = 8  # over the room's noise; plucked notes die away: a low gate; common practice, no source
smoothing_cents = 0  # cents; frets hold the pitch: what a finger shakes stays under what counts as a turn; common practice, no source
