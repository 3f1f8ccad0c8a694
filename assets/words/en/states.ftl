## Manometer

meter-shows = shows { $display }
meter-shows-beside = shows { $display }; the hose goes elsewhere. { $gauge }
display-dark = nothing, it is off
display-over = more than its range
hose-open = hose open to the air
hose-fully = hose on the { $port }
hose-halfway = hose halfway on the { $port }
hose-wet = { $hose }, drops of water in it
hose-pinched = { $hose }, pinched in one place
low-side-air = open to the air
low-side-box = to the burner box

## Tools

tool-in-hand = in hand
tool-detector = in hand, { $percent } % { -lel }
tool-clipped = clipped in at the flame rod
tool-on-port = on a port
tool-in-roll = in the roll

## Furnace

jumper-fitted = fitted
jumper-not-fitted = not fitted
tag-hangs = hangs on the furnace
tag-not-hung = not hung
door-in-place = in its place
fan-still = still
fan-turns = turns
fan-fast = high speed

## Behind the burner door

burners-blown = { $flames }; the wind of the blower bends them
igniter-white = glows white
igniter-dull = glows dull
igniter-dark = dark
valve-switch = switch { $switch }
cap-in-tray = off, in the tray
box-hose-on = on the gas valve
box-hose-off = off the gas valve, hanging
rod-filmed = under a pale film
ground-on = under its screw
ground-off = off its screw
wire-across = a jumper lies across it
draft-hose-off = its hose is off
draft-hose-split = its hose is split
draft-hose-water = water stands in its hose

## Ports and joints

port-snug = plug seated, snug
port-hand-tight = plug hand-tight
port-started = plug started, thread showing
port-leaning = plug leans in its thread
port-tap-snug = tap, its screw turned in snug
port-tap-loose = tap, its screw seated but not snug
port-tap-open = tap, its screw loosened
port-tap-hose = hose over the tap, fully
port-tap-hose-halfway = hose over the tap, halfway
port-shut-tap-hose = hose over the tap, fully; its screw is still turned in
port-shut-tap-hose-halfway = hose over the tap, halfway; its screw is still turned in
port-adapter = adapter fitted, nothing on it
port-hose = hose on the adapter, fully
port-hose-halfway = hose on the adapter, halfway
port-cracked = { $port }; the boss is cracked
port-wet = { $port }; { $fluid }
fluid-wait = wet with leak fluid, wait and watch
fluid-quiet = wet with leak fluid, no bubbles grow
fluid-small-bubbles = small bubbles grow
fluid-bubbles = bubbles grow

## Screws

screw-under-cap = under its cap
screw-as-found = as found
screw-turn = { $turns } turn from as found
screw-turns = { $turns } turns from as found

## Hall and yard

thermostat-state = room { $room } °F, set to { $setpoint } °F, { $call }
thermostat-heat = heat { $switch }
call-none = no call
call-heat = calls for heat
call-first = calls first stage
call-second = calls first and second stage
alarm-ppm = { $ppm } ppm
register-closed = closed, like others in the house
tank-percent = { $percent } %
dial-turns = { $turns } turns
frost-white = white with frost
frost-climbs = frost climbs it
frost-none = no frost

## Flames

flames-none = no flame
flames-four = four flames
flames-some = { $lit } of four flames
flames-very-low = very low
flames-low = low
flames-full = full
flames-tall = too tall
flames-blue = blue and steady
flames-tips = blue with yellow tips
flames-yellow = yellow and lazy
flames-all = { $count }, { $height }, { $look }

## States that many parts share

valve-between = { $degrees }° open
state-shut = shut
state-open = open
state-closed = closed
state-on = on
state-off = off
state-burning = burning
state-no-gas = turned on, no flame

level-firing = firing
level-low-fire = { -low-fire }
level-high-fire = { -high-fire }

# States under test, as reports and findings write them. No comma, so that they can stand in a list.
stage-rest = at rest
stage-rest-again = at rest again
stage-rest-again-after = at rest again { $minutes } min
stage-firing = firing
stage-low = low
stage-high = high
stage-full-load = full load
stage-none-of = `{ $id }` is none of { $known }
