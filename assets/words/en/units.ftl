# Units as they are shown, and what is wrong with a quantity that an author wrote.

unit-inwc = in. w.c.
unit-kpa-absolute = kPa abs

## Kinds of quantity

kind-pressure = pressure
kind-flow = gas flow
kind-heat-rate = heat rate
kind-heating-value = heating value
kind-length = length
kind-volume = volume
kind-temperature = temperature
kind-temperature-step = temperature difference
kind-time-span = time

## What is wrong with one

quantity-not-read = `{ $text }` is not a { $what }: expected a number and a unit, as in { $examples }
quantity-not-finite = `{ $text }` is not a finite { $what }
quantity-no-unit = `{ $text }` has no unit: a { $what } needs one of { $examples }
quantity-other-unit = `{ $unit }` is not a unit of { $what }: expected one of { $examples }
quantity-expected = a { $what } with its unit, one of { $examples }
