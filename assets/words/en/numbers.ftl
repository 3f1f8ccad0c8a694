# Marks in numbers: 1,030.5

number-decimal-mark = .
number-group-mark = ,
