## Captions of a moment

moment-burners-light = burners light
moment-burners-out = burners go out
moment-flames-grow = flames grow
moment-flames-shrink = flames shrink
moment-puff = a puff from the port
moment-hiss = gas hisses from the port
moment-ignition = gas ignites
moment-cross-thread = the plug leans and grates
moment-column-blown = water spurts out of the tube, gas hisses after it
moment-crack = the boss gives with a crack
moment-screw-stop = the screw comes to its stop
moment-relay = a relay clicks
moment-gas-valve = the gas valve clicks

## Captions of what the hand does

moment-lever = the handle of a hand valve turns
moment-thread = a thread turns
moment-hose-on = the hose slips over the barbs
moment-hose-off = the hose pops off
moment-key = a key beeps
moment-switch = a switch snaps
moment-door = a furnace door rattles
moment-window = a window slides
