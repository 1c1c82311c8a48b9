# What to expect of: flute. Pitches are sounding MIDI numbers, C4 = 60.
lowest = 60  # C4: foot joint in C
highest = 96  # C7: usual top
written_to_sounding = 0  # semitones; in C
gate_db = 8  # over the room's noise; low notes are soft and breathy; common practice, no source
smoothing_cents = 80  # cents; under a semitone, so that a trill stays two pitches; vibrato on it is narrower; common practice, no source
