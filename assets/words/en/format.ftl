# The format of scenarios: what each section and field means, its defaults, usual ranges and words.
# Names of fields, values and units in backquotes are those of the format.

## Kinds of numbers

kind-number = number
kind-whole = whole number

## What a field is when it is not written

default-none = none
default-scene-seed = drawn from the seed
default-scene-position = as the room has it
default-scene-room = drawn from the seed among those that the position fits
default-scene-hour = drawn from the seed, between seven and a quarter past four
default-card-required = by the job: `[ArrivalLooks, TemperatureRise, Combustion, GasRate]` on natural gas from a meter, the same without `GasRate` on propane
default-of-the-fuel = that of the fuel
default-supply-upstream = 10 psi behind a tank, 2 psi behind a meter
default-supply-found = the pressure it is meant to be set to
default-supply-capacity = twice `droop_flow`
default-supply-delivery-min = a tenth below `set`
default-supply-delivery-max = a tenth above `set`
default-supply-lockup-max = a fifth above `set`
default-neighbor-manifold = 3.5 inH2O on natural gas, 10 inH2O on propane
default-furnace-conversion = none: the furnace was never converted
default-furnace-orifice-fitted = what plate or label asks for
default-as-stamped = as stamped
default-furnace-orifice-coefficient = what gives the plate's full input at its manifold pressure
default-furnace-springs-fitted = the fuel of plate or label
default-furnace-low-gas-switch = `true` with a conversion label for propane
default-furnace-auto-high = never
default-valve-loss = 0.9 inH2O made for natural gas, 0.6 inH2O converted to propane
default-valve-loss-flow = the flow at the plate's full input
default-spring-per-turn = by the springs fitted: natural 0.6 inH2O (low 0.4 inH2O), propane 1.6 inH2O (low 1.2 inH2O)
default-two-levels = none: the furnace has two firing levels
default-one-level = none: the furnace has one firing level
default-settings-manifold = the manifold pressure of plate or label
default-settings-low = the low pressure of plate or label
default-settings-high = the high pressure of plate or label
default-stated-heat-natural = none: natural gas as it is sold, 950 to 1,100 Btu/ft3
default-stated-heat-propane = none: propane of 2,516 Btu/ft3
default-of-the-shared-set = that of the shared set
default-of-the-job = that of the job
default-those-of-the-job = those of the job

## Where a usual range is from

usual-common-practice = common practice
usual-most-houses = common practice; most houses
usual-furnace-burners = the drawing shows four
usual-furnace-orifice-coefficient = NFPA 54 Annex E uses 0.80 to 0.90
usual-plate-valve-max = common practice: above 1/2 psi is hazardous
usual-makers-manuals = makers' manuals
usual-house-plant-room = common practice; below 50 ft3 for 1,000 Btu/h it needs openings for air, NFPA 54
usual-house-air-changes = common practice; NFPA 54 reckons with 0.4 or more
usual-manometer-range = makers' manuals ask for 0 to 15 in. w.c. or more
usual-card-hold = NFPA 54 Annex C: 3 min, from memory

## For whom or what a number is one and the same

fixed-every-seed = for every seed
fixed-as-in-the-text = for every seed, as in the text

## Words of the format

choice-fuel-natural = piped natural gas
choice-fuel-propane = propane vapor
choice-on-off-on = on
choice-on-off-off = off
choice-stacking-independent = each stage has a spring of its own
choice-stacking-high-on-low = the high spring adds to the low one
choice-valve-body-plugs = both ports closed by plugs, the hose on an adapter
choice-valve-body-tap-screws = pressure taps with captive screws, the hose straight over a tap
choice-valve-body-side-by-side = plugs, with inlet and manifold port side by side
choice-room-basement = a basement
choice-room-closet = a utility closet
choice-room-garage = a garage
choice-room-attic = an attic; the furnace lies in it
choice-position-upright = it stands
choice-position-horizontal = it lies, in an attic
choice-yard-look-siding = clapboard siding
choice-yard-look-brick = brick
choice-fitted-on = in its place
choice-fitted-off = taken off
choice-supply-right-trainee = the trainee may set it, inside its limits
choice-supply-right-owner-only = its owner only: call, do not touch
choice-severity-minor = a matter of good practice
choice-severity-major = makes the result wrong or incomplete
choice-severity-critical = could hurt somebody or leave an unsafe appliance
choice-ending-in-service = the furnace is back in service
choice-ending-supply-owner-called = the furnace runs, and the owner of the supply was called to put the supply right
choice-ending-shut-off = shut off, tagged and explained

## Scenario

format-scenario = A whole job: where it is, what stands there, in which state it is found, what the trainee is told and which ways of ending it are right.
format-scenario-version = Version of the format: 1.
format-scenario-title = A few words for the list of jobs.
format-scenario-about = What the job is about, in a sentence or two, for the list of jobs. Says nothing of the faults.
format-scenario-step = Its step in the ladder of jobs: 1 to read, 2 to set, 3 to find, 4 to judge.
format-scenario-aim = What the job teaches, in one sentence, for the list of jobs. Says nothing of the faults.
format-scenario-competencies = Ids of the competencies that the job is for, `C01` to `C22`; `quarterturn explain competencies` lists them.
format-scenario-hints = Hints on this job in the order in which they are given, from a gentle one to a plain one.
format-scenario-debrief = A note that is shown after the job only: what was wrong, what showed it, and what the tempting mistake would have been.
format-scenario-site = Where the house stands.
format-scenario-gas = The gas in the pipes.
format-scenario-supply = Where the gas comes from.
format-scenario-trunk = Pipe from the supply regulator to the tee in the { -furnace-room }, in the order of the flow.
format-scenario-branch = Pipe from the tee to the furnace, in the order of the flow. The furnace's manual valve sits behind the first stretch.
format-scenario-neighbors = The other gas appliances.
format-scenario-furnace = The furnace.
format-scenario-scene = Equipment and surroundings that are chosen by their kind.
format-scenario-house = The house around it.
format-scenario-manometer = The manometer that the trainee carries.
format-scenario-found = How switches, valves, caps and plugs are found.
format-scenario-faults = What is wrong: faults of the catalogue, put in one after the other.
format-scenario-variants = Other settings of the same job, as the other fuel with its supply, plate and card. Each seed draws the job as it is written or one of these, all with the same chance.
format-scenario-card = What the trainee is told.
format-scenario-marking = How the job is marked.

## Site

format-site = Where the house stands.
format-site-altitude = Height above the sea.
format-site-outside = Temperature of the air outside.

## Gas

format-gas = The gas in the pipes. Natural gas is 1,030 Btu/ft3 at a specific gravity of 0.60, propane 2,516 Btu/ft3 at 1.52, unless written otherwise.
format-gas-fuel = Which fuel it is.
format-gas-heating-value = Gross heating value.
format-gas-specific-gravity = Density against air.

## Supply

format-supply = The supply regulator with what stands before it.
format-supply-source = Tank or meter.
format-supply-upstream = Pressure before the supply regulator: the main, the 2-psi line, or the line from a first-stage regulator.
format-supply-set = Pressure it is meant to be set to.
format-supply-lockup = Its pressure at no flow when it is set so.
format-supply-found = What it is found set to; its lock-up moves along.
format-supply-droop = How far it falls below its set pressure at the flow `droop_flow`.
format-supply-droop-flow = The flow at which it has fallen that far.
format-supply-capacity = Flow with its seat wide open.
format-supply-per-turn = Change of the set pressure for one turn of its screw. The screw goes in six turns beyond the greater of set pressure and `delivery_max`, where its coils touch.
format-supply-delivery-min = Lowest delivery pressure that its owner allows. The trainee reads it on the regulator's nameplate. Where the trainee may set the supply, the marking holds against it what the regulator is left set to: the pressure behind it at next to no flow, not the one under load.
format-supply-delivery-max = Highest delivery pressure that its owner allows, also on the nameplate. Where the trainee may set the supply, or has turned its screw, it must not be left set above this.
format-supply-lockup-max = Highest pressure at no flow that is allowed, also on the nameplate. The trainee holds the inlet at rest against it; the marking does not, but it counts what stands at the gas valve above `furnace.plate.valve_max` once the screw has been turned.

## Tank

format-tank = A propane tank with its first-stage regulator.
format-tank-capacity = Water capacity.
format-tank-level = Liquid level, as a share of the tank.

## Meter

format-meter = A natural-gas meter.
format-meter-dial = Gas for one turn of the meter's test dial.

## Steel

format-steel = Schedule 40 steel pipe.
format-steel-size = Nominal size, as "1/2", "3/4", "1" or "1-1/4".
format-steel-length = Length along the pipe.
format-steel-elbows = Screwed 90° elbows.
format-steel-tees = Tees that the gas passes through their branch.

## Copper

format-copper = Semirigid copper tube, type K or L.
format-copper-size = Nominal size, as "1/2", "5/8" or "3/4".
format-copper-length = Length along the tube.
format-copper-elbows = 90° elbows.
format-copper-tees = Tees that the gas passes through their branch.

## Corrugated

format-corrugated = Corrugated stainless steel tubing. Four bends and two end fittings are in its table.
format-corrugated-ehd = Equivalent hydraulic diameter, a trade number: 13, 15, 18, 19, 23, 25, 30, 31, 37, 39, 46, 48, 60 or 62.
format-corrugated-length = Length along the tubing.
format-corrugated-extra-fittings = Bends and fittings beyond those in the table.

## Neighbors

format-neighbors = The two other gas appliances of the house.
format-neighbors-water-heater = The storage water heater in the { -furnace-room }.
format-neighbors-range = The range in the kitchen.

## Neighbor

format-neighbor = Another gas appliance.
format-neighbor-input = Input at full rate.
format-neighbor-manifold = Pressure behind its own regulator.
format-neighbor-line = Pipe from the tee in the { -furnace-room } to it.
format-neighbor-found = Whether it is found turned on.

## Furnace

format-furnace = The furnace. It has one firing level, or two: a low and a high one. Which of them says the plate: `manifold` and `input`, or `low` and `high`, `input_low` and `input_high`.
format-furnace-plate = Its rating plate.
format-furnace-conversion = The label that a fuel conversion left. Its figures replace the plate's.
format-furnace-burners = Number of burners, each with one orifice. The drawing shows four.
format-furnace-orifice-fitted = What is stamped on the orifices that are really fitted.
format-furnace-orifice-sizes = Diameter of each orifice that is really fitted, where it is not as stamped: one for each burner. A tiny one stands for a plugged orifice.
format-furnace-orifice-coefficient = Discharge coefficient of the orifices.
format-furnace-springs-fitted = Mark on the springs that are really fitted.
format-furnace-valve = The gas valve.
format-furnace-settings = What the levels are found set to.
format-furnace-low-gas-switch = Whether the { -low-gas-switch } of a propane kit is fitted.
format-furnace-box-suction = Suction in the burner box with the inducer at full speed.
format-furnace-igniter-warm-up = Warm-up of the igniter.
format-furnace-auto-high = Time on low after which the control goes to high by itself.

## Plate

format-plate = The rating plate.
format-plate-model = Model name, of a world of our own.
format-plate-made-for = Gas figures as the furnace was made.
format-plate-input = Input of a furnace with one firing level.
format-plate-input-high = Input on high of a furnace with two firing levels.
format-plate-input-low = Input on low of a furnace with two firing levels.
format-plate-rise-min = Lowest temperature rise allowed.
format-plate-rise-max = Highest temperature rise allowed.
format-plate-valve-max = Highest pressure that the gas valve may see.

## Figures

format-figures = The gas figures of a plate or of a conversion label.
format-figures-fuel = Fuel they are for.
format-figures-inlet-min = Lowest inlet pressure while firing, with all other appliances on.
format-figures-inlet-max = Highest inlet pressure.
format-figures-manifold = Manifold pressure of a furnace with one firing level.
format-figures-manifold-tolerance = Allowed either way of it.
format-figures-low = Manifold pressure on low of a furnace with two firing levels.
format-figures-low-tolerance = Allowed either way on low.
format-figures-high = Manifold pressure on high of a furnace with two firing levels.
format-figures-high-tolerance = Allowed either way on high.
format-figures-orifice = Orifice as stamped: a number drill as "#44", or a diameter as "2.14 mm".
format-figures-orifice-size = Diameter of that orifice.
format-figures-decimals = Decimals of inches of water that its pressures carry.

## Valve

format-valve = The gas valve.
format-valve-loss = Pressure lost through the open valve at the flow `loss_flow`.
format-valve-loss-flow = The flow at which it loses that.
format-valve-spring = The spring of a valve with one firing level, and its screw.
format-valve-low = The low spring and its screw.
format-valve-high = The high spring and its screw.
format-valve-stacking = How the springs work together.
format-valve-settle = Time to settle after a change of spring or screw.

## Spring

format-spring = A stage spring under its screw.
format-spring-per-turn = Pressure for one turn of the screw.
format-spring-turns = Turns from fully out to the bottom. The coils touch half a turn before.

## Settings

format-settings = What the levels are found set to, as pressures over the burner box with enough gas at the inlet.
format-settings-manifold = The only level of a furnace that has one.
format-settings-low = The low stage.
format-settings-high = The high stage.

## House

format-house = The house around the furnace.
format-house-inside = Temperature inside at the start.
format-house-setpoint = Setpoint of the thermostat as found, to half a degree Fahrenheit.
format-house-heat-loss = Heat that the house loses with 70 °F between inside and outside.
format-house-cooling-time = Time in which an unheated house loses 63 % of its difference to outside.
format-house-plant-room = Volume of the { -furnace-room }.
format-house-air-changes = Air changes of the { -furnace-room } in an hour, window closed.

## Manometer

format-manometer = The manometer.
format-manometer-range = Largest pressure that it shows.
format-manometer-zero-error = Its error before it is zeroed.
format-manometer-drift = How far its zero still drifts as it warms up.
format-manometer-drift-time = Time constant of that drift.
format-manometer-lag = Time constant of the display.

## Scene

format-scene = Kinds of equipment and of surroundings.
format-scene-valve = The body of the gas valve: how its ports are closed. Taps with captive screws are loosened with the slotted driver; nothing else of the job changes.
format-scene-position = Whether the furnace stands or lies. A look alone: it changes no reading. A horizontal one lies in an attic, and an upright one stands in a basement, a closet or a garage: write either, and the other follows.
format-scene-room = The room that the furnace stands in. A look alone: it changes no reading.
format-scene-yard = The house wall in the yard. A look alone: it changes no reading.
format-scene-hour = When the job begins, in hours after midnight: `7.5` is half past seven. The clock in the window starts there, and sky and windows are light or dark by it; nothing that can be measured changes.

## Found

format-found = How things are found.
format-found-manual-valve = The furnace's manual valve, in degrees from shut: 90 is open.
format-found-valve-switch = The switch on the gas valve.
format-found-furnace-switch = The furnace's service switch.
format-found-thermostat = The thermostat's heat switch.
format-found-regulator-cap = The cap over the screw of a valve with one firing level.
format-found-low-cap = The cap over the low screw.
format-found-high-cap = The cap over the high screw.
format-found-inlet-plug = How far the plug of the inlet port, or the screw of its tap, stands in, in turns past finger-tight: 0.5 to 1 is snug.
format-found-manifold-plug = The same for the manifold port.

## Card

format-card = The job card.
format-card-text = What is asked, in plain words.
format-card-heating-value = The heating value of the gas that the text states. The technician and the marks go by these figures, never by the text; `check` holds the text against them.
format-card-supply-owner = Who owns the supply regulator, in words.
format-card-supply = Who may set the supply regulator.
format-card-hold = How long a no-flow hold must last.
format-card-settle = How long after a change a reading counts as settled.
format-card-required = Work beyond the pressures that the card asks for; `[]` asks for none. It falls due where the furnace is handed over to burn. Work that was not done costs points; work that is not named as not done either fails the job.
choice-duty-arrival-looks = vent, air opening, filter and carbon monoxide alarm looked at before the burners are lit
choice-duty-temperature-rise = return and supply air written at each firing level, once the air has come to rest
choice-duty-combustion = the flue analyzed at the full rate
choice-duty-gas-rate = the meter’s dial timed at the full rate, with everything else off; natural gas only
choice-duty-piping-leak-check = the piping shut in and watched for three minutes; asked for without this word where a repair opened it

## StatedHeat

format-stated-heat = Heating values that the card's text states, per cubic foot of the gas itself. A job in which the trainee has to prove the fuel states both.
format-stated-heat-natural = That of natural gas.
format-stated-heat-propane = That of propane.

## Marking

format-marking = How the job is marked.
format-marking-endings = Ways of ending the job that are right, the usual one first. Where that is `ShutOff`, what a furnace that was rightly shut off never came to is not missed.
format-marking-rules = Rules that differ from the shared set in this job.

## RuleChange

format-rule-change = A rule of the shared set that differs in this job.
format-rule-change-id = The rule's id; `quarterturn explain rules` lists them.
format-rule-change-applies = Whether it applies.
format-rule-change-weight = Its weight in points.
format-rule-change-severity = How bad breaking it is.

## Variant

format-variant = Another setting of the job. What it does not write stays as in the job; what it writes replaces that field as a whole, so that each part of a section it writes must be written anew. Title, texts for the list, hints, debrief, manometer, found state and rules are the same in all settings.
format-variant-site = Where the house stands.
format-variant-gas = The gas in the pipes.
format-variant-supply = Where the gas comes from.
format-variant-trunk = Pipe from the supply regulator to the tee in the { -furnace-room }.
format-variant-branch = Pipe from the tee to the furnace.
format-variant-neighbors = The other gas appliances.
format-variant-furnace = The furnace.
format-variant-house = The house around it.
format-variant-faults = What is wrong.
format-variant-card = What the trainee is told.
format-variant-endings = Ways of ending the job that are right, as in `marking.endings`.
