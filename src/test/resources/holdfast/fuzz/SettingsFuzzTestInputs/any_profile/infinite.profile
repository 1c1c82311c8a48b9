lowest = 40
highest = Infinity
written_to_sounding = 0
