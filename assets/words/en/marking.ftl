# Marking: what was seen and what was true for each finding, the time line, the debrief as text.

## The result

marks-care = Practice evidence from a simulator; it confers no qualification. On real gas the appliance's own plate and instructions, the local code and a licensed technician decide.
marks-standing = { marks-care } { $rules }
verdict-met = met
verdict-not-yet-met = not yet met; missing: { $missing }
verdict-not-handed-over = not yet met: not handed over
verdict-not-handed-over-missing = not yet met: not handed over; missing already: { $missing }
marks-result = { $job }: { $verdict }. { $time } of simulated time.
marks-points = { $points } of { $of } points
marks-essentials = Essentials
# How an essential stands; the four are of the same length.
marks-met = met{ "    " }
marks-not-met = NOT MET
marks-not-due = not due
marks-open = open{ "   " }
marks-essential = { $standing }  { $essential }
marks-essential-because = { $standing }  { $essential } ({ $rules })
marks-nothing-found = Nothing to find fault with.
marks-findings = Findings
marks-finding = { $severity }: { $title } [{ $rule } v{ $version }], at { $time }
marks-finding-points = { $severity }: { $title } [{ $rule } v{ $version }], at { $time }, −{ $points }
marks-fails = fails: { $essential }
marks-seen = seen: { $seen }
marks-seen-often = seen: { $seen } ({ $times } times)
marks-true = true: { $truth }
marks-why = why: { $why }
marks-practise = next: { $practise }
marks-competencies = Competencies that this job gave occasion for
marks-shown = shown: { $ids }
marks-not-shown = not shown: { $ids }
marks-none = none
marks-competency = { $id } { $name }
severity-critical = Critical
severity-major = Major
severity-minor = Minor

## Pressures over time

curve-supply = supply
curve-inlet = inlet
curve-manifold = manifold
curve-burner-box = { -burner-box }

## The time line: each action in a few words

done-go = to: { $place }
done-look = looked at: { $subject }
done-sniff = sniffed
done-probe = gas detector held
done-take = taken: { $tool }
done-put-down = tool put down
done-window = { $window } { $to ->
    [open] opened
   *[closed] closed
 }
done-door = { $door } { $to ->
    [on] on
   *[off] off
 }
done-furnace-switch = power { $to ->
    [on] on
   *[off] off
 }
done-thermostat-heat = heat switched { $to ->
    [on] on
   *[off] off
 }
done-setpoint = setpoint to { $degrees } °F
done-jumper = { -jumper } { $to ->
    [on] on
   *[off] off
 }
done-valve-switch = valve switch { $to ->
    [on] on
   *[off] off
 }
done-cock = { $valve } to { $degrees }°
done-neighbor = { $appliance } { $to ->
    [on] on
   *[off] off
 }
done-cap = { $screw }: cap { $to ->
    [on] on
   *[off] off
 }
done-turn = { $screw } { $eighths } eighths
done-plug-loose = { $port }: plug broken loose
done-plug-out = { $port }: plug spun out
done-plug-by-hand = { $port }: plug started by hand
done-plug-by-key = { $port }: plug started with the key
done-plug-in = { $port }: plug spun in
done-plug-tight = { $port }: plug tightened
done-adapter = { $port }: adapter { $to ->
    [on] on
   *[off] off
 }
done-hose-on = hose on: { $port }
done-hose-halfway = hose on halfway: { $port }
done-hose-off = hose off
done-meter-power = { -manometer } { $to ->
    [on] on
   *[off] off
 }
done-meter-zero = { -manometer } zeroed
done-meter-unit = { -manometer } shows { $unit }
done-low-side-air = low side of the { -manometer } to the air
done-low-side-box = low side of the { -manometer } to the { -burner-box }
done-gauge = hose put to: { $gauge }
done-fill-column = { -u-tube } filled to zero
done-leak-fluid = leak fluid on: { $joint }
done-wipe = wiped dry: { $joint }
done-rollout = roll-out switches reset
done-measure = measured: { $spot }
done-unclip = { -microammeter } unclipped
done-watch-start = stopwatch started
done-watch-stop = stopwatch stopped
done-write = reading written: { $port }
done-write-joint = leak check written: { $joint }
done-write-finding = finding written: { $cause }
done-strike-finding = finding struck: { $cause }
done-write-measured = measurement written: { $spot }
done-tag = warning tag { $to ->
    [on] on
   *[off] off
 }
done-call-owner = owner of the supply called
done-call-emergency = emergency number called
done-tell-work-starts = customer told: work starts
done-tell-smell-drill = customer told: what to do at a smell of gas
done-tell-unsafe = customer told: unsafe, it stays off
done-tell-get-out = customer told: get out
done-hand-over = handed over

## Findings of hazards, isolation and gas at open ports

seen-back-in = went back in after the alarm
true-back-in-not-told = gas had stood in the air, and nobody was told to get out
true-back-in-not-shut = gas had stood in the air, and the supply was not shut
true-back-in-not-called = gas had stood in the air, and nobody was called
true-back-in-gas = gas still stood in the air there, a tenth of its lower limit or more
seen-after-alarm = after the alarm: { $done }
true-after-alarm = gas stood in the air inside
seen-flash-port = a flash at the gas valve
true-flash-port = gas from the { $port } met a flame or the igniter
seen-flash-burners = a flash in the burner compartment
true-flash-burners = gas that had gathered met a flame or the igniter
seen-no-sniff = first act: { $done }
true-no-sniff = inside, nose and detector had not been used yet
seen-floor-not-smelt = nothing was smelt or probed at the floor
true-floor-not-smelt = the fuel is propane, which pools there
seen-not-aired = the burners were lit with the window of the { -furnace-room } closed from the beginning
true-not-aired = the fuel is propane, which pools in low places
seen-wrong-parts-fired = the burners were lit
true-wrong-parts-fired = springs, orifices or papers were not for the gas in the pipes
seen-unattended = { $minutes } min out of the house with the manometer on a port
true-unattended = gas stood on its joint
seen-port-opened = the { $port } was opened
true-port-opened = { $pressure } stood behind it, manual shut-off valve at { $angle }
true-opened-firing = the burners fired, { $pressure } at the port
seen-gas-from-port = gas hisses at the gas valve
true-gas-from-port = the { $port } was open and gas came to it
seen-called-open = heat was called
true-called-open = the { $port } stood open with nothing on it
true-valve-open = the manual shut-off valve was open
true-power-on = the furnace had power
seen-cross-thread = the plug of the { $port } leaned in its thread
true-cross-thread = it was started with the key
seen-cracked = the key suddenly turned easily
true-cracked = the boss of the { $port } is cracked

## Findings of what was read and written

seen-written = { $value } { $unit } written for { $port }, { $stage }
true-stood = the meter stood there at { $lower } to { $upper }
true-unsettled = it had not come to rest; until then it showed { $lower } to { $upper }
true-both-legs = both legs together stood at { $lower } to { $upper }
true-never-shown = the meter showed no such number, there or in any other state
true-from-before = the meter stood there before the last turn or repair; nothing like it was read since
true-other-port = the hose was on the other port
# The state of the furnace, the other appliances and the hand valves that a number belongs to.
true-other-state = it stood with { $firing ->
    [out] the burners out
    [firing] the furnace burning
    [low] { -low-fire } burning
   *[high] { -high-fire } burning
 }, { $others ->
    [0] nothing else burning
    [one] another appliance burning
   *[other] the other appliances burning
 }, { $valve ->
    [shut] the gas shut off by hand
    [part-open] a hand valve part open
   *[open] the hand valves open
 }
true-other-unit = the meter showed it in { $unit }
true-meter-off = the meter read { $pressure } too { $side ->
    [high] high
   *[low] low
 }
seen-first-barb = { $port }: hose over the first barb only
true-first-barb = gas came out beside it
seen-old-zero = a number written at the { $port } with the zero of before
true-old-zero = the manometer was zeroed last at the { $port }
seen-column-blown-out = the water of the { -u-tube } was blown out
seen-spring-gauge-strained = the needle of the spring gauge went past its end
true-gauge-overstrained = more pressure stood there than the gauge takes
seen-rate-with-others = the meter's dial was timed and written
true-rate-with-others = other appliances drew { $flow } ft³/h meanwhile
seen-rise-disturbed = the air was measured and written
true-rise-door-off = a furnace door was off
true-rise-filter = the filter is blocked, and nobody had looked at it
seen-zero-pressed = the zero button was pressed
true-zero-pressed = { $pressure } pressed on the meter

## Findings of what was never read

seen-stage-unread = no right manifold reading on { $levels ->
    [firing] the firing rate
    [low] { -low-fire }
    [high] { -high-fire }
   *[both] { -low-fire } and { -high-fire }
 }
seen-stage-unread-after = no right manifold reading on { $levels ->
    [firing] the firing rate
    [low] { -low-fire }
    [high] { -high-fire }
   *[both] { -low-fire } and { -high-fire }
 } after: { $repair }
true-stage-unread = that stage's setting is unknown
seen-running-unread = no right inlet reading while firing
seen-running-unread-after = no right inlet reading while firing after: { $repair }
true-running-unread = what the supply delivers is unknown
seen-inlet-state-unread = no right inlet reading at: { $state }
true-inlet-state-unread = what the supply gives there is unknown
seen-nothing-found = every number on the sheet is written as left
true-nothing-found = how the furnace was found is unknown
seen-loaded-unread = no right inlet reading with the other appliances on
seen-loaded-unread-after = no right inlet reading with the other appliances on after: { $repair }
true-loaded-unread = what the supply delivers under { -full-load } is unknown
seen-hold-short = longest hold at rest with the meter on the inlet: { $seconds } s
true-hold-short = the card asks for { $seconds } s
seen-supply-unread = not read afterwards: { $readings }
true-supply-unread = everything behind the regulator moved
seen-flue-not-analyzed = no flue analysis on the full rate after: { $work }
true-flue-not-analyzed = what leaves the burners since then is unknown
unread-inlet-rest = inlet at rest
unread-inlet-loaded = inlet on { -high-fire } with the others
unread-manifold-high = manifold on { -high-fire }

## Findings of screws and springs

seen-turned = { $screw } turned
true-turned-before-found = no pressure as found stood on the sheet for that stage
true-turned-before-inlet = the inlet, { $pressure } then, had not been read on that level
true-supply-turned-before-inlet = the inlet, { $pressure } then, had not been read at rest and under load
true-turned-unseen = no meter showed the pressure that it sets
seen-cranked = { $screw } turned up with the inlet at { $pressure }
true-cranked = its spring is set to { $set }, the plate ends at { $most }
seen-outside-band = { $stage ->
    [firing] manifold pressure
    [low] { -low-fire }
   *[high] { -high-fire }
 } left at { $set }; the plate says { $target } ± { $tolerance }
true-outside-band = { $side ->
    [below] its spring is set below the plate's band
   *[above] its spring is set above the plate's band
 }
seen-big-jump = { $screw } by { $eighths } eighths in one go
true-big-jump = { $seconds } s after the last turn
true-big-jump-first = the first turn
seen-bottomed = { $screw } came to its stop
true-bottomed = its coils touch: it regulates nothing there
true-wrong-screw = { $burned ->
    [out] nothing burned
    [firing] the furnace burned
    [low] { -low-fire } burned
   *[high] { -high-fire } burned
 }
true-needless-turn = it was set to { $pressure } as found
seen-wrong-way = { $screw } by { $eighths } eighths from where it was found
true-wrong-way = it was set to { $found } as found, and the plate asks for { $target }
seen-rise-by-gas = { $screw } turned with a temperature rise off the plate on the sheet
true-rise-by-gas = the rise was { $rise } °F, the plate says { $least } to { $most } °F; the screw stood right, at { $pressure }
seen-cap-off = { $screw }: no cap
true-cap-off = its screw lies open
seen-not-read-capped = cap back on the { $screw }
true-not-read-capped = no right reading of that stage came after it
seen-supply-turned = supply regulator turned
true-supply-turned = it belongs to { $owner }
seen-supply-low = supply regulator left at { $set }; its nameplate says at least { $least }
true-supply-low = its spring is set below what it must deliver
seen-supply-high = supply regulator left at { $set }; its nameplate says at most { $most }
true-supply-high = its spring is set above what it may deliver
seen-valve-pressure = { $pressure } at the gas valve; its plate says at most { $most }
true-valve-pressure = it stood at more than it may see
seen-lock-up = { $pressure } at the inlet at rest, and left so
true-lock-up = it may be { $most } at most

## Findings of ports and joints

seen-port-no-plug = { $port }: no plug in it
seen-port-adapter = { $port }: the adapter is still in it
true-port-open = gas jets out at the next call
seen-low-side-left = the second tube of the { -manometer } is still on the { -burner-box }
true-low-side-left = the box is open there, and its pressure is not what the valve refers to
seen-plug-loose = { $port }: plug { $turns } turns past hand-tight
true-plug-loose = it seeps; snug is half a turn to a turn past hand-tight
seen-joint-unchecked = { $joint }: no leak fluid after it was closed
true-joint-unchecked = whether it is tight was not seen
seen-joint-wrongly = { $joint }: fluid on for { $seconds } s, { $pressure } behind it
true-joint-inlet = the inlet joint carries its pressure with the manual shut-off valve on
true-joint-line = it carries its pressure with the manual shut-off valve on
true-joint-manifold = the manifold joint carries its full pressure on { -high-fire } only
seen-test-joint = { $port }: no leak fluid on the joint with the { -manometer }
true-test-joint-inlet = gas stood on it when the burners were lit
true-test-joint-manifold = gas stands on it while they burn; nobody had looked after { $seconds } s
seen-bubbles = { $joint }: bubbles grew
true-bubbles = nothing was done about it afterwards

seen-written-leaking = { $joint }: written as leaking
true-written-leaking = it was left in use
seen-written-tight = { $joint }: written as tight
true-written-tight = bubbles grew in the fluid
seen-not-judged = { $joint }: leak fluid put on
true-not-judged = nothing was written of it, and it was not wiped off

## Findings of repairs and faults

seen-repair = done: { $repair }
seen-bypass = { $device ->
    [firing] a wire lies across the pressure switch
    [low] a wire lies across the low pressure switch
    [high] a wire lies across the high pressure switch
    [limit] a wire lies across the limit
    [rollout] a wire lies across the roll-out switches
   *[low-gas] a wire lies across the { -low-gas-switch }
 }
true-bypass = the control finds it closed whatever happens
seen-bypass-fired = the burners fired with a wire across a safety switch
true-bypass-fired = nothing would have stopped them
true-dangerous-repair = it makes the installation more dangerous than it was
true-needless-repair = the old part was sound
true-on-suspicion = it was number { $number } with nothing wrong
true-repair-not-yours = it is for { $owner }
seen-fault-left = handed over in use
seen-carbon-monoxide = left to burn with { $ppm } ppm of carbon monoxide, air-free, on { $stage ->
    [firing] its one rate
    [low] { -low-fire }
   *[high] { -high-fire }
 }
true-carbon-monoxide = above { $most } ppm nothing may go on burning
seen-too-much-gas = left to burn { $share } % more gas than the plate's on { $stage ->
    [firing] its one rate
    [low] { -low-fire }
   *[high] { -high-fire }
 }
true-too-much-gas = more than { $most } % above it, exchanger, air and flue are not made for it

## Findings of how it was put back

seen-jumper-left = the { -jumper } is on
true-jumper-left = every call runs on { -high-fire }
seen-valve-switch-off = valve switch: off
true-valve-switch-off = no gas reaches the burners
seen-valve-closed = { $valve }: closed, { $angle }
seen-valve-part-open = { $valve }: part open, { $angle }
true-valve-not-open = it opens at 90°, in line with its pipe
seen-tag-hangs = the warning tag still hangs there
true-tag-hangs = the furnace is in service
seen-no-power = service switch off
true-no-power = the furnace has no power
seen-heat-off = thermostat switched off
true-heat-off = it was on as found
seen-heat-on = thermostat switched on
true-heat-on = it was off as found
seen-window-open = { $room ->
    [furnace-room] the window of the { -furnace-room } stands open
   *[hall] the window of the hall stands open
 }
true-window-open = it was closed as found
seen-thermostat = thermostat at { $degrees } °F
true-thermostat = found at { $degrees } °F
seen-door-off = { $door }: off
true-door-off = it was on as found
seen-neighbor-moved = { $appliance } not as found
true-neighbor-moved = it was turned otherwise as found
seen-neighbor-out = { $appliance } turned on, and nothing burns
true-neighbor-out = its flame went out for want of gas
seen-no-cycle = no cycle from the thermostat after the last work
true-no-cycle = { -low-fire }, { -high-fire } and shut-down were not seen together
seen-shut-down-unwatched = the last cycle came to rest with nobody in the house
true-shut-down-unwatched = whether the flame went out at once was not seen

## Findings of what was proven, and how it ended

seen-not-looked-at = not looked at: { $subjects }
seen-not-looked-at-before-turning = not looked at before a screw was turned: { $subjects }
true-not-looked-at = whether the furnace is made for this fuel was taken on trust
seen-owner-not-called = { $owner } was not called
true-owner-not-called = the supply is out of range, and it is theirs
seen-owner-called = { $owner } was called
true-called-unread = the inlet had not been read at rest and under load, and nothing else was found to tell them
true-called-needlessly = the supply was in range, and no number said otherwise
seen-emergency-called = the emergency number was called
true-no-emergency = no gas was smelt, probed or seen to escape, and no alarm called
ending-in-service = back in service
ending-owner-called = in service, owner of the supply called
ending-shut-off = shut off and tagged
ending-or = { $first }; or { $second }
seen-ending = ended: { $ending }
true-ending = right here: { $endings }
true-ending-wrong-gas = neither plate nor label is for the gas that it burns
seen-tagged-open = tag on, manual shut-off valve at { $angle }
seen-not-tagged = no tag, manual shut-off valve at { $angle }
true-not-tagged = it was reported shut off
seen-not-told = nothing was said about the shut-off
true-not-told = the house has no heat
seen-not-announced = nothing was said before the first switch
true-not-announced = the heat goes off, and gas may be smelt
seen-drill-not-told = nothing was said of what to do at a smell of gas
true-drill-not-told = nobody else will tell them
seen-required-not-done = named as not done: { $work }
seen-required-unsaid = neither done nor named: { $work }
true-required-looks = not looked at before the burners were lit: { $things }
true-required-rise = return and supply air do not both stand on the sheet for: { $levels }
true-required-flue = the flue was not analyzed at the full rate
true-required-rate = the dial was not timed at the full rate
seen-rise-too-early = supply air written on { $level }
true-rise-too-early = the burners had been on that level for { $seconds } s

## Findings of what was written as wrong

seen-no-finding = no finding stands on the sheet
seen-findings = on the sheet: { $causes }
seen-finding = on the sheet: { $cause }
seen-finding-answer = on the sheet: { $cause }: { $answer }
seen-unbacked = on the sheet: { $cause }, with nothing that speaks for it
true-cause = { $cause }. { $how }
true-wrong-cause = it was not so. { $how }
true-finding-answer = that was not done, or the job ended otherwise
true-unbacked = { $how }
true-no-finding = nothing was wrong, and nobody can read it there
