# `faults`: the catalogue of faults, what is read and seen of each. A page of Markdown is made of it.

## The page

faults-page =
    # Faults

    This page is made by `quarterturn faults --write docs`; a test keeps it fresh.

    A fault is a change to the model: a spring, a seat, a pipe, an orifice, a meter's zero. What is read
    and seen follows from the model. A scenario puts faults in with its list `faults`, each by its name,
    with a severity within its range or without one for the typical severity; `Between(low, high)` draws
    the severity for each seed, `OneOf([…])` the fault.

    Each entry names what helps: a repair (`mend clean-flame-rod` in a script), a screw, something that
    every job has hands for, the call to the owner, or shutting off and tagging. Several remedies serve
    each by itself, or in the order given. It also names what tempts and harms, and what that leads to.

    "A look shows" tells what a person sees or smells who looks at everything there is to look at, at
    rest and on a call, and what differs from the healthy bench; it is found by really looking at a
    bench with the fault. "Shown by" names the instruments that read something else than on the healthy
    bench, with the states in which the manometer does, from 0.1 in. w.c. on. A fault that a look shows
    may be found before any meter is out: a job that is to be solved by readings needs one that no look
    shows. What is heard and what the control does stands behind the fuel's name.

    The tables hold a healthy bench against one with the fault at its typical severity. Each cell gives
    the inlet pressure, the manifold pressure, and the heat input against the plate's high input. The
    benches are the healthy ones that come with the program: an 80,000 Btu/h two-stage furnace beside a
    water heater and a range of 100,000 Btu/h together. Pressures are in inches of water column, as a
    correct meter shows them; for faults of the manometer its own display is given too. "At rest again"
    is one and five minutes after the burners stopped. A star marks a stage that the burners did not come to.

    The numbers come out of the model and belong to these benches. They are for practice: on real gas
    the appliance's plate and instructions, the local code and a licensed technician decide.
faults-left-out =
    ## Not in the catalogue

    - Hose on the wrong port: something a person does. The bench lets it happen, and the written
      reading shows it.
    - Reading one leg of a U-tube, or at a slant: something a person does. The water column shows both
      legs, and a number written from one of them is found; a slanting look is not modelled.
    - A thermostat timer set wrong: the bench's thermostat has no timer; a second stage that
      is never called is modelled.
    - Carbon monoxide at the registers from a holed exchanger: the exchanger of this
      furnace is under suction, so that house air goes in and no flue gas comes out. The flue's carbon
      monoxide, the flames that change when the blower starts, and the roll-out are modelled.
    - Regulators that hunt because of a torn diaphragm or a vent limiter: the
      model's regulators have no mass. The hunting of a worn guide is modelled as a self-excited swing.

## An entry

fault-severity = severity: { $severity }
fault-severity-none = none; it is there or not
fault-severity-range = { $what }, { $lower } to { $upper }, typical { $typical }
fault-typical-both = { $natural }, on propane { $propane }
fault-remedy = remedy: { $remedies }
fault-wrong = wrong: { $remedy }. { $danger }
fault-signs = on { $fuel }: { $signs }
fault-sight = { $at }: “{ $seen }”
fault-looks = a look shows: { $seen }
fault-looks-on-fuel = a look shows, on { $fuel }: { $seen }
fault-looks-none = nothing
fault-shown-by = shown by: { $tools }
fault-shown-by-on-fuel = shown by, on { $fuel }: { $tools }
fault-shown-by-none = no instrument here
fault-row-healthy = { $fuel }, healthy
fault-row-with = { $fuel }, with the fault
fault-row-severity = { $fuel }, { $severity }
fault-row-inlet = { $fuel }, meter on the inlet port
fault-row-manifold = { $fuel }, meter on the manifold port
fault-percent = { $percent } %
fault-display-dark = dark
fault-display-over = over range

## What is seen, heard, smelt or measured beside the pressures

fault-flame-current = flame current { $is } µA instead of { $was } µA
fault-excess-air = excess air { $is } % instead of { $was } %
fault-co = carbon monoxide { $is } ppm air-free instead of { $was } ppm air-free
fault-rise = temperature rise { $is } °F instead of { $was } °F
fault-draft = draft at the switches { $is } in. w.c. instead of { $was } in. w.c.
fault-gas-rate = gas to the burners { $is } ft³/h instead of { $was } ft³/h
fault-inlet-swing = inlet swings by { $is } in. w.c. instead of { $was } in. w.c.
fault-manifold-swing = manifold swings by { $is } in. w.c. instead of { $was } in. w.c.
fault-times = { $what } ({ $times } times)
fault-retry = another try
fault-lockout = lockout
fault-limit = limit opens
fault-rollout = roll-out switch opens
fault-high-in-vain = high pressure switch awaited in vain
fault-hard-light = a hard, late light
fault-over-pressure = more pressure than the gas valve may see
fault-ignited = escaping gas takes fire
fault-leak = { $flow } ft³/h leak at a port
fault-vented = { $flow } ft³/h come out of the supply regulator
fault-vestibule = up to { $percent } % { -lel } around the burners

## Instruments that show it

shows-manometer-always = { -manometer } at the { $port ->
    [inlet] inlet
   *[manifold] manifold
 } in every state
shows-manometer = { -manometer } at the { $port ->
    [inlet] inlet
   *[manifold] manifold
 } ({ $states })
shows-microammeter = { -microammeter } at the flame rod
shows-analyzer = flue analyzer
shows-thermometers = thermometers in return and supply air
shows-stopwatch = stopwatch at the meter's dial
shows-leak-fluid = leak fluid
shows-detector-burners = gas detector at the burners
shows-detector-yard = gas detector in the yard
shows-other-manometer = the { -manometer } against another one, or open to the air

## What is seen by eye

sight-first-stage = { $subject }, on a first-stage call
sight-both-stages = { $subject }, on a call for both stages
sight-nose = Nose, { $place }
sight-igniter = Igniter
sight-igniter-dark = stays dark
sight-igniter-dim = glows dim
sight-igniter-bright = glows bright
sight-manometer = { -manometer(case: "title") }
sight-meter-unit = set to { $unit }
sight-meter-over = over its range
sight-handle = its handle stands at { $angle }
sight-switch = stands at { $state ->
    [on] on
   *[off] off
 }
sight-cap-missing = its cap is missing
sight-cracked = its boss shows a crack
sight-plug-seated = a plug, seated
sight-plug-loose = a plug that can be spun by hand
sight-plug-started = a plug, most of its thread showing
sight-plug-leaning = a plug that leans in its thread
sight-port-open = open
sight-screw-seated = a tap with its screw turned in
sight-screw-loose = a tap whose screw can be turned without force
sight-tap-open = a tap with its screw loosened
sight-adapter = the barbed adapter, nothing on it
sight-hose = the hose
