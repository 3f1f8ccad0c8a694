# Marking: what was seen and what was true for each finding, the time line, the debrief as text.

## The result

marks-care = Practice evidence from a simulator; it confers no qualification. On real gas the appliance's own plate and instructions, the local code and a licensed technician decide.
marks-standing = { marks-care } { $rules }
verdict-met = met
verdict-not-yet-met = not yet met; missing: { $missing }
verdict-ended-by-itself = no verdict: gas lit at a port that was found open, before anybody here could know; nothing is charged, do the job again
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

## What is told of a job, before the findings

told-causes = What was wrong
told-no-cause = Nothing was wrong with this furnace or its supply.
told-cause = { $name }: { $left }
told-cause-own = { $name }, by your own work: { $left }
told-seen = How it shows: { $seen }
told-house = What it means for the house
told-night = The night after: twelve hours as you left it
told-next = Practice next
told-note = The author's note
told-sheet = The job sheet: as found, as left, and what was true then
told-line = { $line }: found { $found }; left { $left }
told-line-name = { $port }, { $stage }
told-blank = –
told-number = { $number } (true { $truth })
told-number-slip = { $number } (true { $truth }; { $what })
told-piping = Whole piping: written { $written ->
    [tight] tight
   *[leaking] leaking
 }
told-joint = { $joint }: written { $written ->
    [tight] tight
   *[leaking] leaking
 }{ $truth ->
    [tight] {" "}(true: tight)
    [leaking] {" "}(true: leaking)
   *[unknown] {""}
 }
told-measured = { $spot }: { $figures }
told-finding = Wrong: { $cause }. Done: { $answer }.
told-not-done = Named as not done: { $work }
told-ending = Handed over: { $ending }

cause-left-right = put right
cause-left-owner-called = still there, its owner called
cause-left-shut-off = still there, furnace shut off
cause-left-in-use = still there, furnace in use
cause-left-open = job not handed over
cause-sheet-empty = Your sheet names nothing as wrong.
cause-named = Named on your sheet: { $causes }.
cause-not-named = Not named. Your sheet names: { $causes }.

# A spring that the work left outside the plate, and what kept its number from being read.
own-read = You wrote { $number } for the manifold on { $stage ->
    [firing] the firing rate
    [low] { -low-fire }
   *[high] { -high-fire }
 }; the spring is set to { $set }{ $why ->
    [starved] : the starved inlet held the reading down
    [earlier] : it was turned after that reading
    [meter] : the meter was off
    [not-right] : the number was not what the meter showed there
   *[plain] {""}
 }
own-unread = You wrote no number for the manifold on { $stage ->
    [firing] the firing rate
    [low] { -low-fire }
   *[high] { -high-fire }
 }; the spring is set to { $set }
own-seen = The plate allows { $least } to { $most }: read again with the cap on and the inlet in order.

read-against = You wrote { $number } for the { $port }, { $stage }; { $side ->
    [below] at least { $limit } is asked for
    [above] at most { $limit } is allowed
   *[inside] that is inside what is allowed, from { $limit } on
 }.
read-off = You wrote { $number } for the { $port }, { $stage }; the pressure there was { $truth }
read-true = You wrote { $number } for the { $port }, { $stage }, and that was the pressure there.
read-spring = You wrote { $number } for the manifold on { $stage ->
    [firing] the firing rate
    [low] { -low-fire }
   *[high] { -high-fire }
 }; its spring was set to { $set }, and the plate asks for { $target } ± { $tolerance }
read-no-number = Your sheet has no number from the { $port } that could show it.
read-looked = You looked at it at { $time }: { $subject }.
read-not-looked = You did not look at it: { $subject }.
read-measured = You wrote for { $spot }: { $figures }.
read-not-measured = You measured nothing there: { $spot }.
read-bubbles = Bubbles grew in your leak fluid: { $joint }.
read-no-bubbles = No bubbles grew in your leak fluid: { $joint }.
read-no-fluid = You put no leak fluid there: { $joint }.
figure-said = { $figure } { $value }

house-not-handed-over = The job was not handed over: the house waits for its heat.
house-leak = Gas comes out into the room at { $flow } ft³/h.
house-open-port = At the next call gas jets from the open port.
house-bypass = A safety device is bridged: nothing stops the burners when it should.
house-over-fired = As you left it, it burned { $percent } % above the plate on { $stage ->
    [firing] its one rate
    [low] { -low-fire }
   *[high] { -high-fire }
 }.
house-carbon-monoxide = As you left it, its flue carried { $ppm } ppm of carbon monoxide, air-free, on { $stage ->
    [firing] its one rate
    [low] { -low-fire }
   *[high] { -high-fire }
 }.
house-under-fired = As you left it, it burned { $percent } % of the plate's input at the full rate: on the coldest night the house falls behind.
house-spring-high = With its inlet in order, { $stage ->
    [firing] it
    [low] { -low-fire }
   *[high] { -high-fire }
 } burns { $percent } % above the plate by the spring that you left: soot, carbon monoxide, a cracked exchanger.
house-spring-low = { $stage ->
    [firing] It
    [low] { -low-fire(case: "title") }
   *[high] { -high-fire(case: "title") }
 } burns { $percent } % below the plate by the spring that you left: late lighting, condensation, a house that falls behind.
house-no-heat = The house has no heat tonight: { $why ->
    [manual-valve] the manual shut-off valve is shut
    [supply] the gas is shut off at the supply
    [valve-switch] the switch on the gas valve is off
    [power] the furnace has no power
    [door] without the blower door it does not run
   *[thermostat] the thermostat is switched off
 }.
house-appliance-out = { $appliance }: its flame is out, and it does not light by itself.
house-does = { $cause }, still there: { $harm }
house-until = { $cause }, until its owner has been: { $harm }
house-would = { $cause }, if it ran: { $harm }
house-spared = { $cause }, put right. Left, it would have meant: { $harm }
house-shut-off-rightly = The house has no heat until it is put right, and that is right here: this furnace must not burn.
house-shut-off-on-paper = It is reported as shut off, and anybody can turn it on.
house-shut-off-needlessly = The house has no heat tonight, and nothing here spoke against running it.
house-sound = As you left it, nothing is wrong in this house.

night-ignition = After { $minutes } min gas met a flame.
night-gas = { $gas } ft³ of gas came out into the furnace room, at most { $share } % of its lower flammable limit.
night-alarm = After { $minutes } min a gas alarm would have sounded.
night-roll-out = { $times ->
    [one] A roll-out switch opened.
   *[other] Roll-out switches opened { $times } times.
 }
night-carbon-monoxide = The flue carried up to { $ppm } ppm of carbon monoxide, air-free.
night-lockouts = { $times ->
    [one] The furnace locked out once.
   *[other] The furnace locked out { $times } times.
 }
night-limits = { $times ->
    [one] The limit opened once.
   *[other] The limit opened { $times } times.
 }
night-cold = The house was cold for { $hours } h and stood at { $inside } °F at the end; its thermostat asks for { $set } °F.
night-went-out = { $appliance }: its flame went out.
night-sound = { $cycles ->
    [0] The furnace did not run through a cycle, and the house was not cold: { $inside } °F at the end.
    [one] The furnace ran through one cycle, and the house stood at { $inside } °F at the end.
   *[other] The furnace ran through { $cycles } cycles, and the house stood at { $inside } °F at the end.
 }

next-job-part = “{ $title }”, and in it: { $part }
next-same-job = This job again in another house (“{ $title }”), and in it: { $part }
next-job = “{ $title }”, the next job.
next-again = “{ $title }” again, up to the hand-over.
next-again-unsafe = “{ $title }” again, up to the hand-over: find out first whether it may burn at all.

sheet-empty = The sheet is empty: nothing was read, checked or found on paper.
sheet-no-pressure = The sheet has no pressure on it.
sheet-made-up = { $count ->
    [one] A number on the sheet was never shown by the meter: { $number }.
   *[other] { $count } numbers on the sheet were never shown by the meter, the first of them { $number }.
 }
sheet-again = { $count } numbers were written for one line, the last of them counts: { $port }, { $stage }.
sheet-contradicts = The sheet says “{ $answer }” of { $cause }, and the job ended otherwise: { $ending }.
sheet-nothing-ended = The sheet says that nothing was wrong, and the job ended otherwise: { $ending }.
sheet-is-right = { "" }
sheet-is-coarse = written too coarsely
sheet-is-unsettled = not settled yet
sheet-is-one-leg = one leg of the U-tube
sheet-is-other-state = from another state
sheet-is-other-port = from the other port
sheet-is-other-unit = shown in another unit
sheet-is-never-shown = never shown by the meter

## Pressures over time

curve-supply = supply
curve-inlet = inlet
curve-manifold = manifold
curve-burner-box = { -burner-box }

## The time line: each action in a few words

done-go = to: { $place }
done-look = looked at: { $subject }
done-sniff = sniffed { $height ->
    [floor] at the floor
   *[head] at head height
 }
done-probe = gas detector held { $height ->
    [floor] at the floor
   *[head] at head height
 }
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
done-turn = { $screw } turned: { $turn }
turn-way = { $amount } { $way ->
    [in] clockwise
   *[out] counterclockwise
 }
# Eighths of a turn, as people say them.
turn-amount = { $whole ->
    [0] { $part ->
        [1] an eighth of a turn
        [2] a quarter turn
        [3] three eighths of a turn
        [4] half a turn
        [5] five eighths of a turn
        [6] three quarters of a turn
       *[other] seven eighths of a turn
     }
    [1] { $part ->
        [0] one turn
        [1] one turn and an eighth
        [2] one turn and a quarter
        [3] one turn and three eighths
        [4] one and a half turns
        [5] one turn and five eighths
        [6] one turn and three quarters
       *[other] one turn and seven eighths
     }
   *[other] { $part ->
        [0] { $whole } turns
        [1] { $whole } turns and an eighth
        [2] { $whole } turns and a quarter
        [3] { $whole } turns and three eighths
        [4] { $whole } and a half turns
        [5] { $whole } turns and five eighths
        [6] { $whole } turns and three quarters
       *[other] { $whole } turns and seven eighths
     }
 }
done-plug-loose = { $port }: plug or tap screw broken loose
done-plug-out = { $port }: plug spun out, or tap screw loosened
done-plug-by-hand = { $port }: plug started by hand
done-plug-by-key = { $port }: plug started with the key
done-plug-in = { $port }: plug or tap screw turned in
done-plug-tight = { $port }: plug or tap screw turned by { $turn }
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
done-write = written: { $number } for { $port }, { $stage }
number-written = { $value } { $unit }
done-write-tight = written: { $joint } tight
done-write-leaking = written: { $joint } leaking
done-write-piping-tight = written: piping tight
done-write-piping-leaking = written: piping leaking
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
done-hand-over = handed over: { $ending }

## Findings of hazards, isolation and gas at open ports

seen-back-in = went back in after the alarm
true-back-in-not-told = gas had stood in the air, and nobody was told to get out
true-back-in-not-shut = gas had stood in the air, and the supply was not shut
true-back-in-not-called = gas had stood in the air, and nobody was called
true-back-in-gas = gas still stood in the air there, a tenth of its lower limit or more
seen-after-alarm = done after the alarm: { $done }
true-after-alarm = gas stood in the air inside
seen-flash-port = a flash at the gas valve
true-flash-port = gas from the { $port } met a flame or the igniter
seen-flash-burners = a flash in the burner compartment
true-flash-burners = gas that had gathered met a flame or the igniter
seen-no-sniff = done first: { $done }
true-no-sniff = neither nose nor detector had been used inside before that
seen-floor-not-smelt = the floor was neither smelt nor probed
true-floor-not-smelt = the fuel is propane, and propane lies at the floor
seen-not-aired = the burners were lit with the window of the { -furnace-room } closed from the beginning
true-not-aired = the fuel is propane, and propane lies in low places until it is aired out
seen-wrong-parts-fired = the burners were lit
true-wrong-part-fired = so they burned: { $cause }
true-wrong-parts-fired = not all of their parts were for the gas in the pipes any more
seen-unattended = { $minutes } min out of the house with the { -manometer } on a port
true-unattended = gas stood on its hose all that time
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

seen-written = { $number } written for { $port }, { $stage }
true-stood = the meter stood there at { $lower } to { $upper }
true-unsettled = it had not come to rest; until then it showed { $lower } to { $upper }
true-both-legs = both legs together stood at { $lower } to { $upper }
true-never-shown = the meter showed no such number, in this state or in any other
true-from-before = the meter stood there before the last turn or repair, and has shown nothing like it since
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
true-shut-tap = the hose was over the tap with the screw turned in: nothing came to it
true-other-unit = the meter showed these digits in { $unit }
true-meter-off = the meter read { $pressure } too { $side ->
    [high] high
   *[low] low
 }
seen-first-barb = { $port }: hose over the first barb only
true-first-barb = gas came out beside it
seen-old-zero = a number written at the { $port } with the zero from before the move
true-old-zero = the manometer was zeroed last at the { $port }
seen-column-blown-out = the water of the { -u-tube } was blown out
seen-spring-gauge-strained = the needle of the spring gauge went past its end
true-gauge-overstrained = more pressure stood there than the gauge takes
seen-rate-with-others = the meter's dial was timed and written
true-rate-with-others = other appliances drew { $flow } ft³/h through the same meter meanwhile
seen-rise-disturbed = the air was measured and written
true-rise-door-off = a furnace door was off
true-rise-filter = the filter is blocked, and nobody had looked at it
seen-zero-pressed = the zero button was pressed
true-zero-pressed = { $pressure } pressed on the meter

## Findings of what was never read

seen-stage-unread = the sheet has no right number for the manifold on { $levels ->
    [firing] the firing rate
    [low] { -low-fire }
    [high] { -high-fire }
   *[both] { -low-fire } and { -high-fire }
 }
seen-stage-unread-after = the sheet has no right number for the manifold on { $levels ->
    [firing] the firing rate
    [low] { -low-fire }
    [high] { -high-fire }
   *[both] { -low-fire } and { -high-fire }
 } after: { $repair }
true-stage-unread = its setting is not known
seen-running-unread = the sheet has no right number for the inlet with the furnace burning
seen-running-unread-after = the sheet has no right number for the inlet with the furnace burning after: { $repair }
true-running-unread = what the supply delivers under load is not known
seen-inlet-state-unread = the sheet has no right number for the inlet: { $state }
true-inlet-state-unread = what the supply gives in this state is not known
seen-nothing-found = every number on the sheet is written as left
true-nothing-found = how the furnace was found is not known
seen-loaded-unread = the sheet has no right number for the inlet with the other appliances on
seen-loaded-unread-after = the sheet has no right number for the inlet with the other appliances on after: { $repair }
true-loaded-unread = what the supply delivers under { -full-load } is not known
seen-hold-short = longest hold at rest with the meter on the inlet port: { $seconds } s
true-hold-short = the card asks for { $seconds } s
seen-lock-up-unread = no right inlet reading at rest after flow
true-lock-up-unread = how the supply regulator locks up after flow is unknown
seen-lock-up-short = inlet at rest after flow watched for { $seconds } s
true-lock-up-short = a lock-up is watched for { $seconds } s at least
seen-supply-unread = not read afterwards: { $readings }
true-supply-unread = everything behind the regulator moved with it
seen-flue-not-analyzed = no flue analysis on the full rate after: { $work }
true-flue-not-analyzed = what leaves the burners since then is unknown
unread-inlet-rest = inlet at rest
unread-inlet-loaded = inlet on { -high-fire } with the others
unread-manifold-high = manifold on { -high-fire }

## Findings of screws and springs

seen-turned = { $screw } turned
true-turned-before-found = the sheet had no pressure as found for that stage yet
true-turned-before-inlet = the inlet stood at { $pressure }, and had not been read on that rate
true-supply-turned-before-inlet = the inlet stood at { $pressure }, and had not been read at rest and under load
true-turned-unseen = no meter showed the pressure that this screw sets
seen-cranked = { $screw } turned up with { $pressure } at the inlet
true-cranked = its spring is set to { $set } now, and the plate ends at { $most }: the meter cannot show it while the inlet is so low
seen-outside-band = written last for { $stage ->
    [firing] the manifold
    [low] the manifold on { -low-fire }
   *[high] the manifold on { -high-fire }
 }: { $number }
seen-outside-band-unread = no number was written for { $stage ->
    [firing] the manifold
    [low] the manifold on { -low-fire }
   *[high] the manifold on { -high-fire }
 }
true-outside-band = its spring is left set to { $set }; the plate asks for { $target } ± { $tolerance }
seen-big-jump = { $screw } turned in one go: { $turn }
true-big-jump = with { $seconds } s since the turn before; the valve needs more to follow
true-big-jump-first = no number was read on the way
seen-bottomed = { $screw } came to its stop
true-bottomed = its coils touch there, and it regulates nothing any more
true-wrong-screw = { $burned ->
    [out] nothing burned
    [firing] the furnace burned
    [low] { -low-fire } burned
   *[high] { -high-fire } burned
 }
true-needless-turn = it was set to { $pressure } as found, inside its range
seen-wrong-way = { $screw } turned from where it was found: { $turn }
true-wrong-way = it was set to { $found } as found, and the plate asks for { $target }
seen-rise-by-gas = { $screw } turned with a temperature rise off the plate on the sheet
true-rise-by-gas = the rise was { $rise } °F, the plate says { $least } to { $most } °F; the screw stood right, at { $pressure }
seen-cap-off = { $screw }: its cap is off
true-cap-off = the screw lies open to dirt and hands
seen-not-read-capped = { $screw }: cap put back on
true-not-read-capped = that stage was not read rightly after it
seen-supply-turned = the screw of the supply regulator turned
true-supply-turned = the regulator belongs to { $owner }
seen-supply-low = supply regulator left set to { $set }; its nameplate asks for at least { $least }
true-supply-low = it gives less than it must deliver
seen-supply-high = supply regulator left set to { $set }; its nameplate allows at most { $most }
true-supply-high = it gives more than it may deliver
seen-valve-pressure = { $pressure } at the gas valve; its plate allows at most { $most }
true-valve-pressure = the valve saw more than it may see
seen-lock-up = { $pressure } at the inlet at rest after the work, and left so
true-lock-up = at rest it may be { $most } at most

## Findings of ports and joints

seen-port-no-plug = { $port }: no plug in it
seen-tap-open = { $port }: the tap's screw stands loosened
seen-tap-hose = { $port }: the hose is still over the tap
seen-screw-loose = { $port }: the tap's screw { $turns } turns past its seat
seen-port-adapter = { $port }: the adapter is still in it
true-port-open = gas jets out at the next call
seen-low-side-left = the second tube of the { -manometer } is still on the { -burner-box }
true-low-side-left = the box stands open there, and the valve refers to another pressure than it should
seen-plug-loose = { $port }: plug { $turns } turns past hand-tight
true-plug-loose = it seeps; snug is half a turn to a turn past hand-tight
seen-joint-unchecked = { $joint }: no leak fluid since it was worked on
true-joint-unchecked = nobody saw whether it is tight
seen-joint-wrongly = { $joint }: fluid on for { $seconds } s, { $pressure } behind it
true-joint-brief = its pressure stood behind it; a small leak shows only after { $seconds } s
true-joint-line = it carries its own pressure with the manual shut-off valve open only
true-joint-yard = it carries its own pressure with the supply shut-off open only
true-joint-manifold = it carries its full pressure on { -high-fire } only
seen-test-joint = { $port }: no leak fluid on the joint with the { -manometer }
true-test-joint-inlet = gas stood on it when the burners were lit
true-test-joint-manifold = gas stands on it while they burn; nobody had looked after { $seconds } s
seen-bubbles = { $joint }: bubbles grew
true-bubbles = nothing was done about them afterwards

seen-written-leaking = { $joint }: written as leaking
true-written-leaking = it was left in use
seen-written-tight = { $joint }: written as tight
true-written-tight = bubbles grew in the fluid
seen-not-judged = { $joint }: leak fluid put on
true-not-judged = nothing was written about it, and it was not wiped off

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
true-on-suspicion = it was part number { $number } with nothing wrong
true-repair-not-yours = that work is for { $owner }
seen-fault-left = left in use as it is
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
seen-too-much-gas-clocked = { $seen }; the meter dial that was written, { $seconds } s a turn, makes { $clocked } % of it by itself
true-too-much-gas = more than { $most } % above it, exchanger, air and flue are not made for it

## Findings of how it was put back

seen-jumper-left = the { -jumper } is still on
true-jumper-left = every call runs on { -high-fire }, and { -low-fire } is never used
seen-valve-switch-off = the switch on the gas valve is off
true-valve-switch-off = no gas comes to the burners, and the furnace locks out
seen-valve-closed = { $valve }: closed, { $angle }
seen-valve-part-open = { $valve }: part open, { $angle }
true-valve-not-open = it opens at 90°, in line with its pipe
seen-tag-hangs = the warning tag still hangs on the furnace
true-tag-hangs = the furnace is back in service
seen-no-power = the service switch is off
true-no-power = the furnace has no power
seen-heat-off = the thermostat is switched off
true-heat-off = it was on as found
seen-heat-on = the thermostat is switched on
true-heat-on = it was off as found
seen-window-open = { $room ->
    [furnace-room] the window of the { -furnace-room } stands open
   *[hall] the window of the hall stands open
 }
true-window-open = it was closed as found
seen-thermostat = the thermostat is set to { $degrees } °F
true-thermostat = the customer had it at { $degrees } °F
seen-door-off = { $door }: off
true-door-off = it was on as found
seen-neighbor-moved = { $appliance }: not on or off as it was found
true-neighbor-moved = the house had it the other way
seen-neighbor-out = { $appliance }: turned on, and nothing burns
true-neighbor-out = its flame went out when the gas was off
seen-neighbor-not-lit = { $appliance }: not seen to burn since the gas of the house was shut off for a repair
true-neighbor-not-lit = its flame lost its gas, or gets air and dirt from the work; it is lit and looked at before anybody leaves
seen-no-cycle = no cycle from the thermostat after the last work
seen-cycle-cut-off = the last cycle was not ended by the thermostat
seen-cycle-unseen = the last cycle was not seen at the furnace
true-no-cycle = nobody saw it light, run at each rate and shut down in one go after that
seen-shut-down-unwatched = the last cycle came to rest with nobody in the house
true-shut-down-unwatched = nobody saw whether the flame went out at once

## Findings of what was proven, and how it ended

seen-not-looked-at = not looked at: { $subjects }
seen-not-looked-at-before-turning = not looked at before a screw was turned: { $subjects }
true-not-looked-at = whether the furnace is made for this gas was taken on trust
seen-owner-not-called = { $owner }: not called
true-owner-not-called = the supply is out of its range, and it is theirs to put right
seen-owner-called = { $owner }: called
true-called-unread = the inlet had not been read at rest and under load: there was nothing to tell them
true-called-needlessly = the supply was in its range, and no number on the sheet said otherwise
seen-emergency-called = the emergency number was called
true-no-emergency = no gas was smelt, probed or seen to escape, and no alarm called
ending-in-service = back in service
ending-owner-called = in service, owner of the supply called
ending-shut-off = shut off and tagged
ending-or = { $first }; or { $second }
seen-ending = left so: { $ending }
true-ending = right here: { $endings }
true-ending-wrong-gas = neither plate nor label is for the gas in the pipes
seen-tagged-open = reported as shut off and tagged, with the manual shut-off valve at { $angle }
seen-not-tagged = reported as shut off; no tag hangs on it, and its manual shut-off valve stands at { $angle }
true-not-tagged = whoever comes next does not know that it must stay off
seen-not-told = the customer was told nothing of the shut-off
true-not-told = the house has no heat
seen-not-announced = nothing was said before the first switch
true-not-announced = nobody in the house knew of it
seen-drill-not-told = nothing was said of what to do at a smell of gas
true-drill-not-told = nobody else will tell them
seen-required-not-done = named as not done: { $work }
seen-required-unsaid = neither done nor named: { $work }
true-required-looks = not looked at before the burners were lit: { $things }
true-required-rise = return and supply air do not both stand on the sheet for: { $levels }
true-required-flue = the flue was not analyzed at the full rate
true-piping-none = nobody watched it shut in
true-piping-no-meter = no { -manometer } was on the inlet port
true-piping-fed = the supply shut-off was open: the regulator makes up for what leaks
true-piping-cut-off = the manual valve was shut: the gauge saw nothing of the piping
true-piping-drawn = an appliance drew gas
true-piping-no-pressure = no working pressure stood in it: { $pressure }
true-piping-brief = watched for { $seconds } s; three minutes are needed
seen-piping-tight = piping: written as tight
true-piping-fell = shut in, it fell by { $fall }
seen-piping-leaking = piping: written as leaking
true-piping-leaking = gas was left on in it
true-required-rate = the dial was not timed at the full rate
seen-rise-too-early = supply air written on { $level }
true-rise-too-early = the burners had been on that level for { $seconds } s
seen-rise-left-off = temperature rise on { $level }: { $rise } °F written, nothing found, nobody called
true-rise-left-off = the plate allows { $least } to { $most } °F

## Findings of what was written as wrong

seen-no-finding = no finding stands on the sheet
seen-findings = on the sheet: { $causes }
seen-finding = on the sheet: { $cause }
seen-finding-answer = on the sheet: { $cause }; answer: { $answer }
seen-unbacked = on the sheet: { $cause }, with nothing on it that speaks for it
true-cause = { $cause }. { $how }
true-wrong-cause = it was not so. It would have shown like this: { $how }
true-finding-answer = that is not what was done, or not how the job ended
true-unbacked = it shows like this: { $how }
true-no-finding = nothing was wrong, and the sheet does not say so
