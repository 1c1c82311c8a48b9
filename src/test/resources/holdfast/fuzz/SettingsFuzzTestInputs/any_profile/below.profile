lowest = -1
highest = 80
written_to_sounding = 0
