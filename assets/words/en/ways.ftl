## Tools

way-take = Take the { $tool }
way-put-down = Put down the { $tool }

## Looks

look-plate = Read the rating plate
look-conversion-label = Look for a conversion label
look-orifices = Read the stamp on the orifices
look-spring-mark = Read the mark on the springs
look-low-gas-switch = Look for a { -low-gas-switch }
look-supply-vent = Look at the regulator's vent
look-vent = Look along the vent
look-air-opening = Look at the air opening
look-connector = Look along the connector
look-drip-leg = Look at the drip leg
look-burners = Look at the flames
look-filter = Look at the filter
look-tank-gauge = Read the tank gauge
look-meter-dial = Read the test dial
look-co-alarm = Read the CO alarm
look-status-lamp = Read the control's status
look-supply-regulator = Read the regulator's nameplate
look-inducer = Look at the pressure switch hose and the condensate trap
look-box-hose = Look at the { -burner-box } hose
look-flame-rod = Look at the flame rod
look-register = Look at the registers

## Walking

walk-yard = Go out to the yard
walk-plant-room = Go to the { -furnace-room }
walk-gas-valve = Kneel at the gas valve
walk-hall = Go to the hall
walk-away = Leave the premises, to a safe distance

## Nose and detector

sniff-floor = Smell the air just above the floor
sniff-head = Smell the air at head height
probe-floor = Hold the detector just above the floor
probe-head = Hold the detector at head height

## Calls, and what is said to the people of the house

call-supply-owner = Call the owner of the supply
call-emergency = Call the emergency number
tell-work-starts = Say that heat will be off and gas may be smelled
tell-smell-drill = Show the shut-offs and what to do at a smell of gas
tell-unsafe = Say that the furnace is unsafe and stays off
tell-get-out = Call out: leave the house

## Thermostat

thermostat-heat-off = Switch heat off at the thermostat
thermostat-heat-on = Switch heat on at the thermostat
thermostat-warmer = Set it ½ °F warmer
thermostat-cooler = Set it ½ °F cooler

## The furnace's outside, hand valves, windows, the house's other appliances

door-off = Take the { $door } off
door-on = Put the { $door } on
furnace-switch-off = Switch the furnace off
furnace-switch-on = Switch the furnace on
valve-shut = Shut the { $valve }
valve-open = Open the { $valve }
appliance-off = Turn the { $appliance } off
appliance-on = Turn the { $appliance } on, full
window-close = Close the { $window }
window-open = Open the { $window }
tag-off = Take the warning tag off
tag-on = Hang a warning tag on the furnace
jumper-off = Take the { -jumper } off
jumper-on = Put the { -jumper } on
rollout-reset = Press the roll-out resets

## Joints

joint-brush = Brush leak fluid on it
joint-wipe = Wipe it dry
piping-write-tight = Write: piping tight
piping-write-leaking = Write: piping leaking
joint-write-tight = Write: { $joint } tight
joint-write-leaking = Write: { $joint } leaking

## Manometer

meter-on = Switch the { -manometer } on
meter-off = Switch the { -manometer } off
meter-zero = Zero the { -manometer }
meter-unit = Show { $unit }
meter-low-side-box = Put the low side to the { -burner-box }
meter-low-side-air = Leave the low side open to the air

## The other instruments

measure-write = Write: { $reading }
measure-unclip = Unclip the { -microammeter }
measure-stopwatch-start = Start the stopwatch
measure-stopwatch-stop = Stop the stopwatch
measure-thermometer = Hold the thermometer: { $spot }
measure-flue = Put the analyzer's probe into the flue
measure-clip = Clip the { -microammeter } in at the flame rod
measure-stopwatch = Hold the stopwatch beside the dial
measure-leads = Meter leads: { $spot }
measure-gauge = Put the hose to the { $gauge }
gauge-digital = { -manometer }
gauge-water-column = { -u-tube }
gauge-spring = { -dial-gauge }
measure-fill-column = Fill the { -u-tube } to its zero

## The gas valve: its switch, ports and screws

gas-valve-off = Switch the gas valve off
gas-valve-on = Switch the gas valve on
plug-break-loose = Break the plug loose with the short arm
plug-spin-out = Spin the plug out with the long arm
plug-spin-out-again = Spin the plug out again
plug-tighten = Tighten the plug by ⅛ turn
plug-spin-in = Spin the plug in, key between the fingers
plug-start-fingers = Start the plug with the fingers
plug-start-key = Start the plug with the key
screw-break-loose = Break the tap's screw loose with the driver
screw-loosen = Loosen the tap's screw by a turn
screw-tighten = Tighten the tap's screw by ⅛ turn
screw-turn-in = Turn the tap's screw in to its seat
hose-on-tap = Push the hose over the tap
hose-on-tap-halfway = Push the hose over the tap halfway
adapter-in = Screw the adapter in
adapter-out = Take the adapter out
hose-on = Push the hose fully on
hose-on-halfway = Push the hose over the first barb only
hose-bleed = Pull the hose half off, to let it bleed
hose-off = Pull the hose off
cap-off = Take the cap off
cap-on = Put the cap on
screw-in = Turn it ⅛ in, clockwise
screw-out = Turn it ⅛ out, counterclockwise

## Forms: what is done with a number

form-angle = To an angle
form-angle-do = Turn the handle
form-turn = Turn by
form-screw = Turn of the screw
form-screw-do = Turn the screw
form-screw-help = Turns; + is clockwise and raises the pressure. Keys + and − change it.
form-plug = Turn of the plug
form-plug-do = Turn the plug
form-plug-help = Turns with the short arm of the hex key; + tightens.
form-setpoint = Set to
form-degrees = { " " }°F
form-setpoint-do = Set the thermostat
