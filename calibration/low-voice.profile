# What to expect of: low voice. Pitches are sounding MIDI numbers, C4 = 60.
lowest = 36  # C2: bottom of a bass
highest = 65  # F4: top of a baritone
written_to_sounding = 0  # semitones; men read an octave up on a G clef, but we count what sounds
gate_db = 6  # over the room's noise; common practice, no source
smoothing_cents = 260  # cents from top to bottom that are still one note; vibrato of ±100 and some more; range of singers from memory
