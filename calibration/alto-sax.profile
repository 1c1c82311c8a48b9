# What to expect of: alto sax. Pitches are sounding MIDI numbers, C4 = 60.
lowest = 49  # D♭3: written B♭3
highest = 80  # A♭5: written F6
written_to_sounding = -9  # semitones; in E♭: a major sixth under what is written
gate_db = 10  # over the room's noise; key noise stays under it; common practice, no source
smoothing_cents = 80  # cents; under a semitone, so that a trill stays two pitches; vibrato on it is narrower; common practice, no source
