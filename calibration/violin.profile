# What to expect of: violin. Pitches are sounding MIDI numbers, C4 = 60.
lowest = 55  # G3: the open lowest string
highest = 96  # C7: usual top; from memory
written_to_sounding = 0  # semitones; in C
gate_db = 8  # over the room's noise; bow noise stays under it; common practice, no source
smoothing_cents = 80  # cents; under a semitone, so that a trill stays two pitches; vibrato on it is narrower; common practice, no source
