# Marks in numbers: 1,030.5

number-decimal-mark = .
number-group-mark = ,

# A figure that could not be reckoned.
chart-no-number = no number

# What is wrong with a table that comes with the program.
table-no-part = there is no part `{ $id }`
table-twice = `{ $id }` stands there twice
table-two-orders = `{ $place }` has two orders
table-no-order = `{ $place }` has no order
table-meter-range = only an electrical meter has a range, and it has one
table-no-message = no message `{ $id }`
table-no-row = there is no row for `{ $id }`
table-cause-unseen = nothing speaks for `{ $id }`
table-fault-uncaused = `{ $fault }` is named by no cause, or by more than one
table-backs-nothing = `{ $id }` speaks for nothing
table-no-id = nothing has the id `{ $id }`
