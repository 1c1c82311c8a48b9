# What to expect of: clarinet. Pitches are sounding MIDI numbers, C4 = 60.
lowest = 50  # D3: written E3
highest = 86  # D6: usual top
written_to_sounding = -2  # semitones; in B♭: a tone under what is written
gate_db = 8  # over the room's noise; common practice, no source
smoothing_cents = 80  # cents; under a semitone, so that a trill stays two pitches; vibrato on it is narrower; common practice, no source
