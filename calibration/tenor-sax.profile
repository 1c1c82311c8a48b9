# What to expect of: tenor sax. Pitches are sounding MIDI numbers, C4 = 60.
lowest = 44  # A♭2: written B♭3
highest = 75  # E♭5: written F6
written_to_sounding = -14  # semitones; in B♭: a ninth under what is written
gate_db = 10  # over the room's noise; key noise stays under it; common practice, no source
smoothing_cents = 80  # cents; under a semitone, so that a trill stays two pitches; vibrato on it is narrower; common practice, no source
