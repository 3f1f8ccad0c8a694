# Ids of parts, tools and looks are put together from the rows of `assets/catalogue/parts.ron`.

## Parts of the drawings that no list of the bench names, by their ids

part-burners = Burners
part-orifices = Orifices
part-inlet-plug = Inlet port plug
part-manifold-plug = Manifold port plug
part-inlet-adapter = Adapter in the inlet port
part-manifold-adapter = Adapter in the manifold port
part-regulator-cap = Regulator cap
part-low-cap = Low-fire cap
part-high-cap = High-fire cap
part-supply-cap = Supply regulator cap
part-valve-switch = Gas valve switch
part-furnace-switch = Furnace switch
part-stage-jumper = { -jumper }
part-breathing-zone = Air at head height
part-floor-zone = Air just above the floor
part-yard-air = Air in the yard
part-exit-door = Doorway
part-exit-gate = Gate
part-thermostat-mode = Thermostat heat switch
part-thermostat-up = Thermostat, warmer
part-thermostat-down = Thermostat, cooler
part-meter = { -manometer(case: "title") }
part-meter-power = { -manometer(case: "title") } power button
part-meter-zero = { -manometer(case: "title") } zero button
part-meter-unit = { -manometer(case: "title") } unit button
part-meter-plus = { -manometer(case: "title") } high side
part-meter-minus = { -manometer(case: "title") } low side
part-meter-index = Meter index
part-box-hose = { -burner-box(case: "title") } hose
part-flame-rod = Flame rod
part-householder = Customer
part-inducer = Inducer
part-ground-wire = Ground wire
part-register = Register
part-rollout = Roll-out switch
part-limit = Limit switch
part-pressure-switch = Pressure switch
part-pressure-switch-low = First-stage pressure switch
part-pressure-switch-high = Second-stage pressure switch
part-main-coil = Main coil
part-high-coil = High-fire coil
part-tank = Propane tank
part-tank-valve = Tank service valve
part-first-regulator = First-stage regulator
part-tag = Warning tag
part-door-switch = Blower door switch
part-control-board = Furnace control
part-job-sheet = Job sheet
part-blower = Blower
part-flame-1 = Flame 1
part-flame-2 = Flame 2
part-flame-3 = Flame 3
part-flame-4 = Flame 4
part-furnace = Furnace
part-gas-meter = Gas meter
part-gas-valve = Gas valve
part-igniter = Igniter
part-inlet-pipe = Inlet pipe
part-manifold = Manifold
part-riser = Riser
part-telephone = Telephone
part-thermostat = Thermostat
part-transformer = Transformer

## Where instruments are held

spot-return-air = Return air
spot-supply-air = Supply air
spot-room-air = Room air
spot-outside-air = Outside air
spot-tank-skin = Tank skin
spot-flue = Flue
spot-flame-rod = Flame rod
spot-r-c = R to C
spot-w1-c = W1 to C
spot-w2-c = W2 to C
spot-low-switch = Across the first-stage pressure switch
spot-high-switch = Across the second-stage pressure switch
spot-limit-switch = Across the limit
spot-rollout-switch = Across the roll-out switches
spot-low-gas-volts = Across the { -low-gas-switch }
spot-main-coil = Main coil
spot-high-coil = High-fire coil
spot-igniter-ohms = Igniter, ohms
spot-high-coil-ohms = High-fire coil, ohms
spot-burner-ground-ohms = Burners to ground, ohms
spot-meter-dial = Meter dial

## Places

place-yard = Yard
place-plant-room = { -furnace-room(case: "title") }
place-gas-valve = Gas valve
place-hall = Hall
place-away = Away

## Parts that the bench knows

part-inlet-port = Inlet port
part-manifold-port = Manifold port
part-manual-valve = Manual shut-off valve
part-water-heater-cock = Water heater valve
part-range-cock = Range valve
part-supply-cock = Supply shut-off
part-water-heater = Water heater
part-range = Kitchen range
part-regulator-screw = Regulator screw
part-low-screw = Low-fire screw
part-high-screw = High-fire screw
part-supply-screw = Supply regulator screw
part-burner-door = Burner door
part-blower-door = Blower door
part-plant-window = { -furnace-room(case: "title") } window
part-hall-window = Hall window
part-union = Union
part-connector = Connector

## Tools

tool-hex-key = Hex key
tool-slotted-driver = Flat-blade screwdriver
tool-adapter = Barbed adapter
tool-hose = Manometer hose
tool-leak-fluid = Leak fluid
tool-gas-detector = Gas detector
tool-thermometer = Thermometer
tool-flue-analyser = Flue analyzer
tool-microammeter = Microammeter
tool-electrical-meter = Multimeter
tool-stopwatch = Stopwatch

## What can be looked at closely

subject-plate = Rating plate
subject-conversion-label = Conversion label
subject-orifices = Orifice stamp
subject-spring-mark = Spring mark
subject-low-gas-switch = { -low-gas-switch(case: "title") }
subject-supply-vent = Regulator vent
subject-vent = Vent
subject-air-opening = Air opening
subject-connector = Connector
subject-drip-leg = Drip leg
subject-burners = Flames
subject-filter = Filter
subject-tank-gauge = Tank gauge
subject-meter-dial = Meter dial
subject-co-alarm = CO alarm
subject-status-lamp = Status lamp
subject-supply-regulator = Supply regulator
subject-inducer = Pressure switch hose and condensate trap
subject-box-hose = Burner box hose
subject-flame-rod = Flame rod
subject-register = Registers

## Work beyond the pressures

duty-combustion = combustion analysis and carbon monoxide in the flue
duty-temperature-rise = temperature rise on each level
duty-gas-rate = gas rate at the meter
duty-piping-leak-check = leak check of the whole piping
duty-arrival-looks = a look at vent, air opening, filter and CO alarm
