# The cutaway: what stands behind the sheet steel, for those who are coached.

cutaway-title = Cutaway: no meter shows this
cutaway-tab = Cutaway: { $leaf }
cutaway-close = Close, F7
cutaway-pressures = Pressures
cutaway-valve = Gas valve
cutaway-supply = Supply
cutaway-sequence = Sequence
cutaway-air = Air

## Pressures along the pipe

cutaway-pressure = { $pressure } { $unit }
cutaway-psi = { $pressure } psi
cutaway-loss = takes { $pressure }
cutaway-flow = { $flow } ft³/h
cutaway-place = { $name }: { $value }
cutaway-takes = { $loss }; { $state }
cutaway-tank = Tank
cutaway-main = Gas main
cutaway-source = Tank or gas main
cutaway-first-regulator = First regulator, at the tank
cutaway-between = Between the regulators
cutaway-after-supply = After the regulator
cutaway-tee = Tee in the house
cutaway-inlet = Inlet port
cutaway-manifold = Manifold port
cutaway-box = Burner box
cutaway-supply-regulator = Supply regulator
cutaway-house-line = Supply shut-off and house line
cutaway-branch = Manual valve and connector
cutaway-gas-valve = Gas valve
cutaway-orifices = Orifices
cutaway-others = To the other appliances: { $flow }
cutaway-handle =
    handle { $degrees ->
        [0] across, shut
        [90] along the pipe, open
       *[other] at { $degrees }° of 90°
    }
cutaway-switched-off = its switch off
cutaway-coils-off = no volts at the coils
cutaway-coils-on = volts at the coils

## The regulators cut open

cutaway-valve-figure = The gas valve cut open: shut-off seat under the coil, regulator seat under diaphragm and springs
cutaway-only-spring = the only one
cutaway-spring-presses = Spring, { $level }: in { $turns } of { $all } turns, presses
cutaway-spring-rests = Spring, { $level }: in { $turns } of { $all } turns, rests
cutaway-holds = The spring would hold { $pressure }
cutaway-manifold-is = The manifold stands at { $pressure }
cutaway-gives = The outlet stands at { $pressure }
cutaway-seat-open = Regulator seat { $percent } % open
cutaway-coil-level = Coils on for { $level }: the shut-off seat is called open
cutaway-coil-on = Coil on: the shut-off seat is called open
cutaway-coil-off = Coils off: the shut-off seat is pressed shut
cutaway-screwed = The screw presses the spring together by { $mm } mm
cutaway-passes = Gas through it: { $flow }
cutaway-vents = Gas out of its vent: { $flow }

## The control's sequence

sequence-standby = Standby
sequence-inducer-start = Inducer start
sequence-switch-proving = Pressure switch
sequence-pre-purge = Pre-purge
sequence-igniter = Igniter warm-up
sequence-trial = Trial for ignition
sequence-flame-proving = Flame proving
sequence-blower-on = Blower-on delay
sequence-burning = Burning
sequence-burning-first = Burning on low
sequence-burning-top = Burning on high
sequence-next-call = Second stage called
sequence-inducer-up = Inducer to high
sequence-next-switch = High pressure switch
sequence-limit = Limit open
sequence-rollout = Roll-out switch open
sequence-post-purge = Post-purge
sequence-blower-off = Blower-off delay
sequence-retry = Purge before another try
sequence-lockout = Lockout
sequence-for-call = Waits for a call for heat
sequence-for-time = Waits for its time to pass
sequence-for-switch = Waits for the pressure switch to close
sequence-for-next-switch = Waits for the high pressure switch to close
sequence-for-flame = Gas is on: waits for a flame
sequence-for-blower = Counts from the gas on: waits for a warm exchanger
sequence-for-end = Waits for the call to change or end
sequence-for-limit = Waits for the limit to close
sequence-for-reset = Waits for a reset by hand
sequence-for-power = Waits for its time, or for the power to be cut
sequence-of = { $passed } of { $limit } s
sequence-since = { $passed } s
sequence-most = { $limit } s
sequence-said-now = Now: { $state }. { $waits }. { $timer }
sequence-said = { $state } { $timer }
sequence-power = Power on
sequence-no-power = No power
sequence-no-call = no call
sequence-call = heat called
sequence-call-level = { $level } called
sequence-calls = { $power }; { $call }.
sequence-closed = closed
sequence-open = open
sequence-switch = Pressure switch { $state }.
sequence-switch-level = Pressure switch, { $level }: { $state }.
sequence-safeties = Limit { $limit }, roll-out { $rollout }, low-gas contact { $low_gas }.
sequence-flame = Flame { $current } µA, at least { $least }. Failed tries: { $tries } of { $all }.

## Gas in the air

air-breathing = Where people breathe
air-floor = Above the floor
air-vestibule = Burner vestibule
air-percent = { $percent } % gas
air-of-limit = { $percent } % of the lower limit
air-line = { $name }: { $value }, { $limit }
air-leak = Gas out of the { $place }: { $flow }
air-leak-inlet = inlet port
air-leak-manifold = manifold port
air-leak-hose = hose
air-leak-connector = connector
air-leak-vent = supply regulator's vent, outdoors
air-no-leak = No gas gets out.
air-window = The window stands open.
