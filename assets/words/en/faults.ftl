# What the catalogue says of each fault, by its name: its cause; what its severity is measured by,
# which follows the word of its scale ("pressure", "share"); what each wrong remedy leads to. Ids are
# put together from the rows of `assets/catalogue/faults.ron`.

## Families

fault-family-supply = supply
fault-family-valve = valve and conversion
fault-family-burner = burner, air and altitude
fault-family-control = control
fault-family-measuring = measuring chain and leaks

## What a severity is measured in

severity-share = share { $what }
severity-temperature = temperature { $what }
severity-time = time { $what }
severity-heating-value = heating value { $what }
severity-diameter = diameter { $what }
severity-height = height { $what }
severity-volume = volume { $what }
severity-flow = flow { $what }
severity-pressure = pressure { $what }

## What is wrong with a severity

severity-no-range = { $least } to { $most } is no range
severity-outside = { $text } lies outside { $least } to { $most }
severity-no-number = `{ $text }` is not a plain number

## Why a fault cannot be put into a bench

misfit-tank = there is no tank on this job
misfit-meter = there is no gas main on this job
misfit-converted-to-propane = this is no furnace that was converted from natural gas to propane
misfit-natural-gas = this furnace does not burn natural gas
misfit-four-burners = this furnace has fewer than four burners
misfit-sealed-burner-box = this furnace has no sealed burner box (`furnace.box_suction`)
misfit-port-plugs = the ports of this furnace are taps with captive screws
misfit-two-levels = this furnace has one firing level
misfit-low-gas-switch = there is no low-gas-pressure switch on this furnace

## Remedies beside the repairs

remedy-turn = turn the { $screw }
remedy-call-owner = call the owner of the supply
remedy-shut-off-and-tag = shut off, tag and explain
operation-open-manual-valve = open the manual valve all the way
operation-open-slowly = shut the supply, wait, and open it again slowly
operation-valve-switch-on = turn the gas valve's switch on
operation-fit-cap = put the cap on
operation-reset-rollout = find the cause, then reset the roll-out switches
operation-reset-and-leave = reset the roll-out switches and leave
operation-leave-stage-jumper = leave the jumper on R and W2
operation-zero-meter = take the hose off and zero the manometer
operation-warm-and-zero = let the manometer warm, then zero it with the hose off
operation-change-unit = change the manometer's unit
operation-refit-plug = take out what is in the port and start a plug by hand
operation-tighten-plug = tighten the plug, or the screw of the tap
operation-try-again = call for heat again and again

## Supply

fault-supply-set-low-cause = The spring of the supply regulator is backed off, so that less pressure lifts the diaphragm and shuts the seat.
fault-supply-set-low-severity = below the right setting
fault-supply-set-low-wrong-turn-high-screw = The manifold reads no higher, the screw bottoms out, and the furnace is overfired the day the supply is put right.

fault-supply-set-high-cause = The spring of the supply regulator is screwed in too far, or is the wrong one, so that the seat stays open up to a higher pressure.
fault-supply-set-high-severity = above the right setting
fault-supply-set-high-wrong-mend-replace-gas-valve = A sound valve is swapped, and the next one sees the same pressure beyond what it may.

fault-creeping-supply-seat-cause = A nick or grit in the seat of the supply regulator lets gas past when it should be shut, so that the pressure climbs while nothing burns.
fault-creeping-supply-seat-severity = past the shut seat
fault-creeping-supply-seat-wrong-turn-supply-screw = Set down until it looks right at rest, it starves everything while gas flows, and the seat goes on failing.

fault-blocked-regulator-vent-cause = Ice, an insect's nest or paint in the vent shuts the air in the bonnet in, so that it works as a second, stiff spring on the diaphragm.
fault-blocked-regulator-vent-severity = of the vent blocked
fault-blocked-regulator-vent-wrong-mend-drill-regulator-vent = The drill goes on into the diaphragm, and gas comes out of the vent.
fault-blocked-regulator-vent-wrong-mend-plug-regulator-vent = A regulator that cannot breathe shuts late, and too much pressure reaches the appliances.

fault-torn-regulator-diaphragm-cause = A split in the diaphragm lets gas into the bonnet and out of the vent, and the bonnet's pressure helps the spring to hold the seat open.
fault-torn-regulator-diaphragm-severity = of the hole
fault-torn-regulator-diaphragm-wrong-mend-plug-regulator-vent = The gas that came out of the vent now pushes the seat open, and the line's pressure reaches the appliances.

fault-undersized-regulator-cause = A regulator made for less gas than the house draws has to open far, and gives up pressure for that.
fault-undersized-regulator-severity = lost at the flow `supply.droop_flow`, below its set pressure
fault-undersized-regulator-wrong-turn-supply-screw = Set up until it holds under load, it stands too high whenever little is drawn.

fault-undersized-trunk-cause = The pipe that all appliances share is too narrow for their load; the drop goes with about the fifth power of the diameter.
fault-undersized-trunk-severity = of the right diameter
fault-undersized-trunk-wrong-turn-high-screw = Set to the plate with everything on, it overfires as soon as the others are off.

fault-kinked-connector-cause = The flexible connector behind the furnace was bent too sharply, and the kink leaves a slit for the gas.
fault-kinked-connector-severity = of the bore shut by the kink
fault-kinked-connector-wrong-mend-straighten-connector = The tube cracks where it was bent twice, and gas leaks behind the furnace.
fault-kinked-connector-wrong-turn-high-screw = The screw bottoms out, and a new connector later makes it overfire.

fault-partly-open-manual-valve-cause = The handle of the furnace's manual valve was not turned all the way in line with the pipe.
fault-partly-open-manual-valve-severity = degrees from shut
fault-partly-open-manual-valve-wrong-turn-high-screw = The screw bottoms out, and whoever opens the handle overfires the furnace.

fault-shut-manual-valve-cause = The furnace's manual valve was left shut.
fault-shut-manual-valve-wrong-mend-replace-igniter = A sound part is swapped for want of a look at the handle.
fault-shut-manual-valve-wrong-mend-replace-control-board = A sound part is swapped for want of a look at the handle.

fault-water-in-line-cause = Without a drip leg, water has gathered in a sag of the branch; the gas throws it aside and it runs back.
fault-water-in-line-severity = head of the water in the sag
fault-water-in-line-wrong-mend-remove-inlet-screen = What the screen held back goes to the valve's seats, and they no longer shut.

fault-low-main-pressure-cause = The pressure in the utility's main is down, and the regulator cannot give more than it gets.
fault-low-main-pressure-severity = in the main
fault-low-main-pressure-wrong-turn-supply-screw = It is not the trainee's to turn, and once the main is right again everything stands too high.

fault-line-regulator-wide-open-cause = The regulator that should bring pounds down to inches has failed open or was left out, and the line's whole pressure stands at the appliances.
fault-line-regulator-wide-open-wrong-turn-low-screw = The screw has nothing to do with it, and the furnace stays under the line's whole pressure.

fault-nearly-empty-tank-cause = What little liquid is left touches little of the tank's wall, so that it cools as it boils and its pressure falls away.
fault-nearly-empty-tank-severity = of the tank filled
fault-nearly-empty-tank-wrong-turn-high-screw = What is turned in to live with a low tank overfires after the next filling.

fault-cold-tank-cause = In hard cold and at a high draw the liquid boils its own warmth away, and its vapor pressure falls towards nothing.
fault-cold-tank-severity = of the liquid
fault-cold-tank-wrong-mend-flame-on-regulator = A flame at a tank or its regulator can start what nobody can stop.
fault-cold-tank-wrong-turn-high-screw = What is turned in on the coldest morning overfires on a mild day.

fault-freezing-regulator-cause = Moisture in the gas freezes in the regulator's orifice while gas flows, and thaws when it rests.
fault-freezing-regulator-severity = of full flow until the orifice is shut
fault-freezing-regulator-wrong-mend-flame-on-regulator = The flame splits the diaphragm, and gas comes out beside it.

fault-weak-first-stage-cause = The first-stage regulator gives so little that the second stage stands wide open and starves under the whole load.
fault-weak-first-stage-severity = between the stages
fault-weak-first-stage-wrong-turn-supply-screw = The second stage stands wide open as it is; set up, it only stands too high at rest.

fault-single-stage-regulator-cause = One regulator stands straight on the tank; the tank's pressure, which goes with the weather, pushes on its seat.
fault-single-stage-regulator-severity = of the tank when it was set
fault-single-stage-regulator-wrong-turn-supply-screw = Set for today's weather, it is wrong in the next.

fault-early-excess-flow-valve-cause = The excess-flow valve has a weak spring or was chosen too small, slams shut at a flow that the house draws, and bleeds until both sides are equal.
fault-early-excess-flow-valve-severity = at which it shuts
fault-early-excess-flow-valve-wrong-turn-supply-screw = The regulator is sound; set up it stands too high as soon as the valve before it opens.

fault-early-low-gas-switch-cause = The propane kit's low-gas-pressure switch has drifted and opens at a pressure that is right.
fault-early-low-gas-switch-severity = below which it opens
fault-early-low-gas-switch-wrong-mend-bypass-low-gas-switch = Nothing stops the burners any more when the gas really runs short.

fault-air-in-line-cause = After the line was open, air stands in it and must pass the burners before gas does.
fault-air-in-line-severity = of air
fault-air-in-line-wrong-operate-try-again = Air and gas are pushed into the burner chamber, and the light that comes at last is a hard one.
fault-air-in-line-wrong-mend-replace-igniter = A sound part is swapped, and the air is still in the line.

## Valve and conversion

fault-low-stage-set-low-cause = The screw over the low spring of the gas valve is turned out too far.
fault-low-stage-set-low-severity = off the right setting
fault-low-stage-set-low-wrong-turn-high-screw = High fire leaves the plate, and low fire is as lazy as before.

fault-low-stage-set-high-cause = The screw over the low spring of the gas valve is turned in too far.
fault-low-stage-set-high-severity = off the right setting
fault-low-stage-set-high-wrong-turn-high-screw = High fire leaves the plate, and low fire goes on overfiring.

fault-high-stage-set-high-cause = The screw over the high spring of the gas valve is turned in too far.
fault-high-stage-set-high-severity = off the right setting
fault-high-stage-set-high-wrong-turn-low-screw = Low fire leaves the plate, and high fire goes on overfiring.

fault-high-stage-set-low-cause = The screw over the high spring of the gas valve is turned out too far.
fault-high-stage-set-low-severity = off the right setting
fault-high-stage-set-low-wrong-turn-supply-screw = The manifold does not follow the supply, and everything before it stands too high.

fault-dead-high-coil-cause = The coil that loads the high spring is burned out or unplugged, so that the valve stays on its low spring.
fault-dead-high-coil-wrong-turn-high-screw = The spring under that screw is never loaded; once the coil works, the furnace is overfired.
fault-dead-high-coil-wrong-turn-low-screw = Low fire set up to the pressure of high fire burns a full fire on the air of low fire.

fault-no-second-stage-call-cause = The thermostat is set up for one stage, or its wire to W2 is open, so that the control never hears of a second stage.
fault-no-second-stage-call-wrong-operate-leave-stage-jumper = The furnace then runs on high fire at every call, however mild the day.

fault-stuck-in-high-cause = A jumper from W1 to W2 or a welded relay calls the second stage whenever the first is called.
fault-stuck-in-high-wrong-turn-high-screw = High fire set down to pass for low fire leaves the house cold when it needs high fire.

fault-blocked-inlet-screen-cause = Scale and dirt lie on the screen in the gas valve, behind the inlet port.
fault-blocked-inlet-screen-severity = of the free area behind the inlet port blocked
fault-blocked-inlet-screen-wrong-mend-remove-inlet-screen = The dirt goes to the seats, and they let gas past with no call for heat.
fault-blocked-inlet-screen-wrong-turn-high-screw = The screw has no effect until the screen is clean, and then overfires.

fault-natural-springs-on-propane-cause = The propane orifices are in, but the gas valve kept its natural-gas springs at their natural-gas setting.
fault-natural-springs-on-propane-wrong-turn-high-screw = Driven to propane's pressure a natural-gas spring comes coil to coil, and the valve regulates no more.

fault-natural-orifices-on-propane-cause = The propane springs are in, but the natural-gas orifices stayed.
fault-natural-orifices-on-propane-wrong-turn-supply-screw = Turned down until the flames look better, the air is still wrong and the other appliances starve.

fault-unconverted-on-propane-cause = The furnace was moved to propane with nothing changed: natural-gas springs, orifices and plate, no low-gas-pressure switch, no label.
fault-unconverted-on-propane-wrong-turn-low-screw = The manifold reads what the plate says, and the furnace burns half as much again as it may.

fault-propane-orifices-on-natural-cause = The furnace came back to natural gas, but the propane orifices stayed.
fault-propane-orifices-on-natural-wrong-turn-high-screw = No pressure makes up for a hole of the wrong size.

fault-propane-springs-on-natural-cause = The furnace came back to natural gas with its own orifices, but the gas valve kept its propane springs at their propane setting.
fault-propane-springs-on-natural-wrong-turn-supply-screw = Trimmed down until the manifold reads right, every other appliance starves.

fault-bottomed-high-screw-cause = Somebody drove the high screw to its stop; the coils of the spring touch, and the valve no longer regulates.
fault-bottomed-high-screw-wrong-turn-supply-screw = The manifold then follows the supply, and the other appliances with it.

fault-missing-stage-cap-cause = The cap over the high screw is gone, so that the bonnet feels the room beside the burner box, and dirt and hands reach the screw.
fault-missing-stage-cap-wrong-turn-high-screw = Set with the cap off, it is off the plate with the cap on.

fault-leaking-gas-valve-cause = Dirt or wear on the gas valve's seats lets gas into the manifold with no call for heat.
fault-leaking-gas-valve-severity = past the shut valve
fault-leaking-gas-valve-wrong-mend-clean-inlet-screen = What keeps the seats open lies behind the screen, and gas goes on passing.

fault-slow-closing-gas-valve-cause = Gum on the stem of the gas valve lets its seats fall shut slowly when the call ends.
fault-slow-closing-gas-valve-severity = in which the seats fall most of their way
fault-slow-closing-gas-valve-wrong-turn-low-screw = A lower flame burns on just as long after the call.

fault-burner-box-hose-off-cause = The hose that brings the pressure of a sealed burner box to the gas valve's bonnet is off or cracked, and the valve regulates against the room instead.
fault-burner-box-hose-off-wrong-turn-high-screw = Set with the hose off, both stages are wrong the day it is put back.

fault-hunting-valve-regulator-cause = The guide of the gas valve's regulator is worn; the flow shakes it, and it swings by itself.
fault-hunting-valve-regulator-severity = of swing either way at full rate
fault-hunting-valve-regulator-wrong-turn-high-screw = It swings around the new setting as it did around the old one.

## Burner, air and altitude

fault-plugged-orifice-cause = A spider's web or scale sits in one orifice.
fault-plugged-orifice-severity = of the third orifice blocked
fault-plugged-orifice-wrong-turn-high-screw = The burners that are free are overfired to make up for the one that is not.
fault-plugged-orifice-wrong-mend-drill-orifices = No drilled hole is the size that is stamped, and all of them pass too much.

fault-oversize-orifices-cause = The orifices were drilled out, or are a size too large.
fault-oversize-orifices-severity = more area than right
fault-oversize-orifices-wrong-turn-high-screw = Lower pressure draws in too little air for the flame.

fault-lean-gas-cause = The utility sends a leaner gas than usual, as at the peak of winter.
fault-lean-gas-severity = of the gas
fault-lean-gas-wrong-turn-high-screw = When the usual gas is back, the furnace is overfired.

fault-not-derated-for-altitude-cause = High above the sea the fans move less air by mass, and nothing was changed for it at orifices or pressure switches.
fault-not-derated-for-altitude-severity = above the sea
fault-not-derated-for-altitude-wrong-turn-high-screw = Below its pressure the flame yellows and burns back.

fault-delayed-ignition-cause = The igniter stands out of place, or the first burner is dirty, so that gas gathers before it meets the hot surface.
fault-delayed-ignition-severity = by which gas reaches the igniter late
fault-delayed-ignition-wrong-turn-low-screw = More gas gathers before it meets the igniter, and the light is harder.

fault-holed-exchanger-cause = A crack in the heat exchanger lets the blower push house air in, which the inducer then does not draw past the burners.
fault-holed-exchanger-severity = of the burners' air let in by the blower
fault-holed-exchanger-wrong-mend-bypass-rollout = Nothing stops the burners any more when the flames come out.

fault-blocked-vent-cause = Leaves, a nest or ice sit in the vent, and the inducer moves less air.
fault-blocked-vent-severity = of the vent's area blocked
fault-blocked-vent-wrong-turn-high-screw = Less gas suits the little air, and the flue is as blocked as before.
fault-blocked-vent-wrong-mend-bypass-low-switch = The burners light with no draft, and make carbon monoxide.

fault-blocked-intake-cause = The opening that brings air for burning is covered, and the inducer moves less air.
fault-blocked-intake-severity = of the intake's area blocked
fault-blocked-intake-wrong-turn-high-screw = Less gas suits the little air, and the opening is as covered as before.

## Control

fault-dirty-flame-rod-cause = A film of oxide on the flame rod holds the flame current back.
fault-dirty-flame-rod-severity = of the flame current lost
fault-dirty-flame-rod-wrong-turn-high-screw = More gas is to reach the rod, and overfires the furnace.
fault-dirty-flame-rod-wrong-mend-replace-gas-valve = A sound valve is swapped, and the flame is still not seen.

fault-poor-burner-ground-cause = Rust between burners and cabinet, or a crack in the rod's porcelain, keeps the flame current from its way to ground.
fault-poor-burner-ground-severity = of the flame current lost
fault-poor-burner-ground-wrong-mend-replace-gas-valve = A sound valve is swapped, and the flame is still not seen.

fault-weak-igniter-cause = The igniter has aged or is cracked, and does not get hot enough to light gas.
fault-weak-igniter-severity = of its heat lost
fault-weak-igniter-wrong-turn-low-screw = More gas gathers in front of an igniter that cannot light it.

fault-low-pressure-switch-open-cause = The contact of the first-stage pressure switch does not close, whatever the draft.
fault-low-pressure-switch-open-wrong-mend-bypass-low-switch = Nothing stops the burners any more when the flue is blocked.

fault-split-draft-hose-cause = The hose from the exchanger to the pressure switches is split, and part of the draft is lost on the way.
fault-split-draft-hose-wrong-mend-bypass-high-switch = High fire burns its gas whether or not the inducer brings its air.

fault-draft-hose-off-cause = The hose to the pressure switches has come off, and they feel nothing.
fault-draft-hose-off-wrong-mend-bypass-low-switch = Nothing stops the burners any more when the flue is blocked.

fault-low-pressure-switch-closed-cause = The contact of the first-stage pressure switch has welded and never opens.
fault-low-pressure-switch-closed-wrong-mend-bypass-low-switch = A jumper does for good what the welded contact does: nothing proves the draft.

fault-blocked-condensate-trap-cause = The trap is blocked, and condensate stands in the inducer housing and in the draft hose.
fault-blocked-condensate-trap-severity = held off by the water
fault-blocked-condensate-trap-wrong-mend-bypass-low-switch = The water rises on, and the burners run without the draft that the switch asks for.

fault-dry-condensate-trap-cause = The trap was never primed or has dried out, and the inducer draws room air through it instead of air past the burners.
fault-dry-condensate-trap-severity = of the inducer's air let in by the trap
fault-dry-condensate-trap-wrong-mend-bypass-high-switch = High fire burns its gas without the air that the trap takes away.

fault-high-pressure-switch-open-cause = The contact of the second-stage pressure switch does not close, whatever the draft.
fault-high-pressure-switch-open-wrong-mend-bypass-high-switch = High fire burns its gas whether or not the inducer brings its air.

fault-blocked-filter-cause = The filter is full of dust, and too little air takes the heat away.
fault-blocked-filter-severity = of the filter blocked
fault-blocked-filter-wrong-mend-bypass-limit = The exchanger overheats with nothing to stop it.

fault-closed-registers-cause = Too many registers are closed, and too little air takes the heat away.
fault-closed-registers-severity = of the registers closed
fault-closed-registers-wrong-mend-bypass-limit = The exchanger overheats with nothing to stop it.

fault-tripped-roll-out-cause = Flames came out of the burners once and opened a roll-out switch, which waits for a hand.
fault-tripped-roll-out-wrong-mend-bypass-rollout = The next flame that comes out burns on.
fault-tripped-roll-out-wrong-operate-reset-and-leave = What drove the flames out is still there.

fault-valve-switch-off-cause = The switch on the gas valve was left off.
fault-valve-switch-off-wrong-mend-replace-igniter = A sound part is swapped for want of a look at the switch.
fault-valve-switch-off-wrong-mend-replace-control-board = A sound part is swapped for want of a look at the switch.

fault-dead-thermostat-circuit-cause = The 24 volts do not come through: a broken wire or a dead thermostat.
fault-dead-thermostat-circuit-wrong-mend-replace-gas-valve = Work on gas cannot mend a wire.

fault-jumpered-limit-cause = Somebody put a jumper across the limit and left it there.
fault-jumpered-limit-wrong-mend-replace-control-board = The wire lies across the switch, whatever board is behind it.

fault-jumpered-roll-out-cause = Somebody put a jumper across the roll-out switches and left it there.
fault-jumpered-roll-out-wrong-mend-replace-control-board = The wire lies across the switches, whatever board is behind them.

fault-jumpered-low-pressure-switch-cause = Somebody put a jumper across the first-stage pressure switch; the control finds it closed at rest and does not start.
fault-jumpered-low-pressure-switch-wrong-mend-replace-low-switch = The wire makes the new switch look stuck too.

fault-dead-inducer-cause = The inducer's motor no longer turns: an open winding or seized bearings.
fault-dead-inducer-wrong-mend-bypass-low-switch = It would light with nothing to carry the flue gas off; the control refuses a switch that is closed at rest.
fault-dead-inducer-wrong-mend-replace-low-switch = The new switch feels no draft either.

fault-weak-blower-cause = The blower's capacitor or bearings have gone, and it turns too slowly or not at all.
fault-weak-blower-severity = of its speed lost
fault-weak-blower-wrong-mend-bypass-limit = The exchanger overheats with nothing to stop it.
fault-weak-blower-wrong-turn-high-screw = Underfired, it still overheats, and the house stays cold.

fault-blown-control-fuse-cause = A short on the 24-volt side has blown the fuse on the control board.
fault-blown-control-fuse-wrong-mend-replace-control-board = The new board has a fuse of its own, and the short blows that one too.
fault-blown-control-fuse-wrong-mend-mend-thermostat-wire = Without the fuse no wire carries anything.

## Measuring chain and leaks

fault-meter-zero-off-cause = The manometer's zero has moved, and nobody has set it.
fault-meter-zero-off-severity = shown too much
fault-meter-zero-off-wrong-turn-high-screw = Every stage is set wrong by as much as the zero is off.

fault-meter-zero-drifts-cause = The manometer came from a cold van into a warm room, and its zero moves while it warms.
fault-meter-zero-drifts-severity = of drift while it warms
fault-meter-zero-drifts-wrong-turn-high-screw = The screw chases the meter, and the flame pays.

fault-meter-zeroed-under-pressure-cause = Somebody pressed the zero button with gas on the hose, and the manometer learned that pressure as nothing.
fault-meter-zeroed-under-pressure-severity = on it when it was zeroed
fault-meter-zeroed-under-pressure-wrong-turn-high-screw = Set to what the meter shows, the furnace gets as much too much as the meter learned.

fault-holed-meter-hose-cause = The manometer's hose is cracked: gas flows through the barb to the hole, and the meter feels what is left.
fault-holed-meter-hose-severity = of the hole
fault-holed-meter-hose-wrong-turn-high-screw = What reads right in a leaking hose is too much at the burners.

fault-water-in-meter-hose-cause = Drops of water in the manometer's hose stick, and let a change of pressure by only when it is large enough to move them.
fault-water-in-meter-hose-severity = held back by the drops
fault-water-in-meter-hose-wrong-turn-high-screw = The drops hold the reading back, and the stage is set past it.

fault-pinched-meter-hose-cause = The manometer's hose is pinched, and the pressure comes through slowly.
fault-pinched-meter-hose-severity = in which the reading comes most of its way
fault-pinched-meter-hose-wrong-turn-high-screw = The early number is not the pressure, and the stage is set past it.

fault-blocked-inlet-tap-cause = Sealant, paint or scale sits in the tapped hole of the inlet port.
fault-blocked-inlet-tap-severity = left free
fault-blocked-inlet-tap-wrong-mend-drill-inlet-tap = The boss cracks and leaks.
fault-blocked-inlet-tap-wrong-mend-replace-supply-regulator = A sound regulator is swapped for want of a second place to measure.

fault-blocked-manifold-tap-cause = Sealant, paint or scale sits in the tapped hole of the manifold port.
fault-blocked-manifold-tap-severity = left free
fault-blocked-manifold-tap-wrong-mend-drill-manifold-tap = The boss cracks and leaks.
fault-blocked-manifold-tap-wrong-mend-replace-gas-valve = A sound valve is swapped for want of a clean hole.

fault-meter-set-to-kilopascals-cause = The manometer was left at kilopascals: a quarter of the number in inches of water.
fault-meter-set-to-kilopascals-wrong-turn-high-screw = A quarter of the number is read as too little gas, and the screw bottoms out.

fault-meter-set-to-millibars-cause = The manometer was left at millibars: two and a half times the number in inches of water.
fault-meter-set-to-millibars-wrong-turn-high-screw = Two and a half times the number is read as too much gas, and the furnace is starved.

fault-low-meter-battery-cause = The manometer's battery is nearly dead: the display stands still, and then goes out.
fault-low-meter-battery-severity = until the display stands still
fault-low-meter-battery-wrong-turn-high-screw = A number that stands still is trusted, and the screw goes on turning.

fault-small-meter-range-cause = The wrong manometer was brought: its range ends below the pressures of this job.
fault-small-meter-range-severity = that it shows at most
fault-small-meter-range-wrong-turn-high-screw = Turned down until a number shows, it is off the plate.

fault-cross-threaded-plug-cause = The plug of the manifold port was started with the key, across its thread.
fault-cross-threaded-plug-wrong-operate-tighten-plug = More force strips the thread or cracks the boss.

fault-loose-inlet-plug-cause = The plug of the inlet port, or the screw of its tap, was not tightened.
fault-loose-inlet-plug-severity = turns past finger-tight
fault-loose-inlet-plug-wrong-mend-replace-gas-valve = A sound valve is swapped for want of a turn with the key.

fault-loose-manifold-plug-cause = The plug of the manifold port, or the screw of its tap, was not tightened.
fault-loose-manifold-plug-severity = turns past finger-tight
fault-loose-manifold-plug-wrong-mend-replace-gas-valve = A sound valve is swapped for want of a turn with the key.

fault-cracked-boss-cause = The plug of the manifold port was driven in so hard that the boss has a crack.
fault-cracked-boss-wrong-operate-tighten-plug = Each turn opens the crack further.

fault-adapter-left-in-cause = The barbed adapter was left in the manifold port instead of the plug, open to the room.
fault-adapter-left-in-wrong-operate-try-again = Gas jets out of the bare adapter at every call.

fault-faded-odorant-cause = New pipe, soil or a long time in a steel tank has taken most of the odor out of the gas.
fault-faded-odorant-severity = of the odor left
fault-faded-odorant-wrong-mend-replace-supply-regulator = No part gives gas its smell back, and nose alone finds no leak meanwhile.
