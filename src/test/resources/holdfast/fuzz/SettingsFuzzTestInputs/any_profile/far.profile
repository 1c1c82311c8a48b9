lowest = 40
highest = 80
written_to_sounding = 1e300
