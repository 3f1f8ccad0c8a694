# Rules: the essentials, the competencies, what is wrong with a rule file.

## The essentials, as the debrief writes them

essential-alarm-response = Right answer to gas in the air
essential-isolation = Isolated before a port was opened
essential-no-gas-to-open-port = No gas to an open port
essential-meter-true = Meter true
essential-both-stages-read = Both stages read while burning
essential-inlet-with-others = Inlet read with all other appliances on
essential-settings-in-plate = Both stages set inside the plate
essential-supply-in-limits = Supply inside its limits
essential-joints-checked = Every opened joint leak-checked at working pressure
essential-ports-sealed = Ports sealed
essential-restored = Manual valve, switches and power restored
essential-nothing-bypassed = Nothing bypassed, nothing made dangerous
essential-conversion-proven = Fuel and conversion proven
essential-right-ending = Ended as the finding asks
essential-cause-named = Sheet right about what was wrong
essential-work-accounted = What the card asks for, done or named as not done

## Rule files

rules-twice = the rule `{ $rule }` stands there twice
rules-weight = the rule `{ $rule }` costs points outside 0 to 100
rules-follows = `{ $rule }` follows from `{ $missing }`, which is no rule
rules-no-essential = `{ $rule }` does harm that fails a job, and names no essential
rules-essential = `{ $rule }` names the essential “{ $essential }”, and does no harm that fails a job
rules-cost = `{ $rule }` has a cost of its own that is the one of its class { $harm }, or says no reason for it
rules-cap = `{ $rule }` costs more than its family “{ $family }” may cost in all
rules-own-weight = this job's own weight
rules-harm-rows = the class of harm { $harm } has { $rows } rows, and needs one
rules-harm-order = the class of harm { $less } stands after { $worse } and is not less severe or costs more
rules-harm-gate = the class of harm { $harm }: what is critical fails the job, what is minor does not
rules-harm-points = the class of harm { $harm } costs points outside what a job has
rules-cap-rows = the family “{ $family }” has { $rows } caps, and needs one
rules-date = “{ $date }” is no day: write it as in 2026-11-30
mistakes-order = the mistake { $number } stands where { $due } is due
mistakes-rule = the mistake { $number } names the rule `{ $rule }`, and there is none
mistakes-empty = the mistake { $number } has neither rules nor a reason why there are none
rules-scoring-range = a share lies outside 0 to 1, or points lie outside what a job has

## Competencies

competency-c01 = Hazards
competency-c01-shown = Looks for hazards before and during the work, keeps the room aired, and reports what is found.
competency-c02 = Gas escape
competency-c02-shown = Answers a smell of gas or an alarm rightly, and tells the people in the house what to do.
competency-c03 = The fuel
competency-c03-shown = Works with the properties of the gas at hand: heavy or light, its heat, its limits, its smell.
competency-c04 = Plate and papers
competency-c04-shown = Reads job card, rating plate and label first, and works to their figures.
competency-c05 = Instruments
competency-c05-shown = Chooses a sound instrument, zeroes it open to the air, and knows what its number means.
competency-c06 = Isolation
competency-c06-shown = Shuts off gas and power and proves it before anything is opened.
competency-c07 = Supply pressure
competency-c07-shown = Checks the supply at rest, running and with everything on, and sets it only where it is allowed.
competency-c08 = Burner pressure
competency-c08-shown = Reads both stages at the manifold, sets what is out of its band, and proves it with the cap on.
competency-c09 = Gas rate
competency-c09-shown = Finds the heat input from the meter's dial or from the orifices, and compares it with the plate.
competency-c10 = Air and flue
competency-c10-shown = Makes sure that the burners get air and that the products of combustion leave.
competency-c11 = Safety devices
competency-c11-shown = Checks that the devices that guard the furnace do so, and leaves none bypassed.
competency-c12 = Leak checks
competency-c12-shown = Checks every joint that was opened, at its own working pressure, until it is tight.
competency-c13 = Purge and relight
competency-c13-shown = Brings gas back safely after an interruption, and relights every appliance.
competency-c14 = Commission and look after
competency-c14-shown = Runs the furnace through a whole cycle and leaves it as its maker wants it.
competency-c15 = Find and mend
competency-c15-shown = Finds the cause from the readings before turning or changing anything, and mends that.
competency-c16 = Unsafe situations
competency-c16-shown = Recognizes what must not run, shuts it off, tags it and says so in writing.
competency-c17 = Pipe size
competency-c17-shown = Judges pipe by load, length and allowed drop.
competency-c18 = Fuel conversion and altitude
competency-c18-shown = Proves every part of a conversion, and follows the plate at height.
competency-c19 = Records
competency-c19-shown = Writes down what was read, with unit and place, what was done, and what was found.
competency-c20 = Care and explaining
competency-c20-shown = Does no damage, leaves the place clean, and explains to the customer.
competency-c21 = House air and staging
competency-c21-shown = Checks air and temperature rise, and that the thermostat calls both stages.
competency-c22 = Rules of the house
competency-c22-shown = Keeps to who owns what, to a tidy work place and to the record of maintenance.
