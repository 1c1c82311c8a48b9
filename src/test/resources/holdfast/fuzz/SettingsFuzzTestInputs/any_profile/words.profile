lowest
