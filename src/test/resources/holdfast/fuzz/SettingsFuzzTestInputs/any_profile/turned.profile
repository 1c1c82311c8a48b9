lowest = 80
highest = 40
written_to_sounding = 0
