# What to expect of: trumpet. Pitches are sounding MIDI numbers, C4 = 60.
lowest = 52  # E3: written F♯3, the lowest fingering
highest = 82  # B♭5: usual top; beginners stay under D5
written_to_sounding = -2  # semitones; in B♭: a tone under what is written
gate_db = 12  # over the room's noise; brass is loud near a microphone; common practice, no source
smoothing_cents = 80  # cents; under a semitone, so that a trill stays two pitches; vibrato on it is narrower; common practice, no source
