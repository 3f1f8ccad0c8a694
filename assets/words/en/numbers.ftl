# Marks in numbers: 1,030.5

number-decimal-mark = .
number-group-mark = ,

# A figure that could not be reckoned.
chart-no-number = no number
