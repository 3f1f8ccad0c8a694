# Names that the trade uses, each in one place. `{ -manometer }` in a text is this name; with
# `(case: "title")` it begins with a capital letter.

-manometer = { $case ->
    [title] Manometer
   *[lower] manometer
 }
-u-tube = U-tube manometer
# The spring gauge with a round dial.
-dial-gauge = { $case ->
    [title] Dial gauge
   *[lower] dial gauge
 }
-microammeter = microammeter
-jumper = R–W2 jumper
-burner-box = { $case ->
    [title] Burner box
   *[lower] burner box
 }
-furnace-room = { $case ->
    [title] Furnace room
   *[lower] furnace room
 }
-low-gas-switch = { $case ->
    [title] Low-gas-pressure switch
   *[lower] low-gas-pressure switch
 }
# Pressure with nothing burning: the regulator closes on it.
-lock-up = { $case ->
    [title] Lock-up
   *[lower] lock-up
 }
-low-fire = low fire
-high-fire = high fire
# All gas appliances of the house on together.
-full-load = full connected load
# Lower explosive limit, as gas detectors write it.
-lel = LEL
