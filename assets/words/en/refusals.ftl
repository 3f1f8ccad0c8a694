# Refusals teach: each says what to do, or why not.

## Why something cannot be done

refusal-not-here = That is not within reach from here.
refusal-hand-full = Put down what you hold first.
refusal-door-in-the-way = The furnace door is in the way.
refusal-cap-on = The cap covers the screw.
refusal-port-not-open = Something is in that port already.
refusal-no-plug = There is no plug in that port.
refusal-too-tight = It will not spin: break it loose with the short arm first.
refusal-not-started = The plug is not in the thread yet.
refusal-already-loose = It is loose already: spin it.
refusal-no-adapter = There is no adapter in that port to push the hose on.
refusal-hose-in-the-way = Pull the hose off first.
refusal-adapter-elsewhere = The adapter is still in the other port.
refusal-hose-in-use = The hose is on a port already.
refusal-hose-free = The hose is not on anything.
refusal-meter-off = The manometer is off.
refusal-meter-at-furnace = The manometer hangs at the furnace, where its hose is: go back to it.
refusal-already-so = It is that way already.
refusal-not-on-this-job = There is no such thing on this job.
refusal-absurd = No such number can be read here.
refusal-off-the-dial = The thermostat goes from 45 °F to 90 °F.
refusal-nothing-to-brush = The port is open: there is no joint to brush yet.
refusal-hand-over-inside = Hand over to the customer: go to the hall, or stand up in the { -furnace-room }.
refusal-not-wet = There is no leak fluid on that joint.
refusal-at-stop = The screw is at its stop.
refusal-call-from-outside = Not from in here: go outside first, then call.
refusal-pressure-left = Gas pressure is left behind the shut valve: let it off at the opened inlet port first.
refusal-power-on = Switch the furnace off first: this part carries voltage.
refusal-not-fitted = Nothing like that is fitted here.
refusal-clipped-in = It is clipped in at the flame rod: unclip it first.
refusal-leads-in-the-way = The microammeter's leads are in the way: unclip it first.
refusal-not-clipped = The microammeter is not clipped in.
refusal-nothing-shown = The instrument shows no number there to write.
refusal-watch-not-running = Start the stopwatch at the dial first.
refusal-hose-under-pressure = Gas stands in the hose: shut the valve and let it off, or pull the hose off the port, before another instrument is put on.
refusal-over = The job is over.
refusal-needs-tool = This needs the { $tool } in hand.
refusal-shut-first = Gas stands at this joint: shut the { $valve } first.
refusal-finding-stands = A finding for this cause is written already. Strike it first to write it anew.
refusal-nothing-beside-something = "Nothing found" does not stand beside a finding. Strike the one or the other.
refusal-nothing-to-answer = Where nothing was found, nothing was done about it: it is left as it is.
refusal-too-many-findings = A sheet takes { $most } findings. Whoever names everything has found nothing.
refusal-too-much-evidence = Name each thing that speaks for it once, and no more than { $most }.
refusal-not-on-sheet = What shall speak for it is not on the sheet. Read, measure or look first, and write it down.
refusal-no-such-finding = No finding for this cause is written.
