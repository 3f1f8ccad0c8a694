# Notes from looking closely.

## Plates, labels, marks

found-plate = Model { $model }. { $figures } Input { $input } Btu/h. Gas valve: at most { $most } in. w.c. Temperature rise { $rise_least } to { $rise_most } °F.
found-label = This furnace has been converted. { $figures }
found-figures = For { $fuel }: inlet { $least } to { $most }, manifold { $manifold } in. w.c., orifice { $orifice } ({ $bore } in.).
found-target = { $level ->
    [firing] { $pressure } ± { $tolerance }
    [low] low { $pressure } ± { $tolerance }
   *[high] high { $pressure } ± { $tolerance }
 }
found-absent = There is no { $thing }.
found-absent-here = No { $thing } here.
found-springs = Springs marked for { $fuel }.
found-orifices = Orifices stamped { $stamp }.
found-orifices-plugged = Orifices stamped { $stamp }. Something sits in one of them.
found-delivery = Delivers { $least } to { $most } in. w.c.; at rest at most { $rest }.
found-tank-gauge = The tank gauge stands at { $percent } %.
found-dial = Test dial of { $turn } ft³ a turn; it stands at { $stands }.
found-no-power = The status lamp is dark: no power.
found-status = The control says: { $status }.

## The connector

found-connector-whole = The connector is whole, not kinked, outside the cabinet.
found-connector-kinked = The connector has a kink behind the furnace.
found-connector-creased = The connector has been bent straight; the tube is creased there.

## What is in order or not

found-supply-vent-good = The regulator's vent is open and points down.
found-supply-vent-bad = The regulator's vent is closed up: ice, mud or paint sits in it.
found-vent-good = The flue runs outside by itself, joints closed.
found-vent-bad = Something sits in the end of the flue.
found-air-opening-good = The air opening is free.
found-air-opening-bad = The air opening is partly covered.
found-drip-leg-good = The drip leg hangs below the tee, capped.
found-drip-leg-bad = There is no drip leg, and the branch sags.
found-filter-good = The filter is clean and in place.
found-filter-bad = The filter is gray and matted with dust.
found-flame-rod-good = The flame rod is clean, and its tip reaches into the flame's place.
found-flame-rod-bad = The flame rod has a pale film on it.
found-registers-good = The registers stand open.
found-registers-bad = Many of the registers are closed.
found-box-hose-good = The hose from the { -burner-box } to the gas valve is on and whole.
found-box-hose-bad = The hose from the { -burner-box } to the gas valve is off.
found-low-gas-switch-good = { -low-gas-switch(case: "title") } of the propane kit, wired in.
found-low-gas-switch-bad = The { -low-gas-switch } is not in order.
found-co-alarm-good = The CO alarm shows 0 ppm.
found-co-alarm-bad = The CO alarm calls.
found-good = In order.
found-bad = Not in order.

## The hose between inducer and pressure switches, with its trap

found-draft-hose-split = The draft hose is split near its end.
found-draft-hose-off = The draft hose has come off and hangs down.
found-draft-hose-water = Water stands in the inducer's housing and in the hose.
found-trap-dry = The condensate trap is dry.
found-draft-line-good = The draft hose is on at both ends, and the trap holds water.

## Flames

found-no-flame = No burner is lit.
found-some-flames = { $lit } of { found-count } burners lit.
found-blue-flames = { $of ->
    [one] { found-count-title } blue flame, steady, into the tubes.
   *[other] { found-count-title } blue flames, steady, into the tubes.
 }
found-yellow-flames = { $of ->
    [one] { found-count-title } flame with long yellow tips.
   *[other] { found-count-title } flames with long yellow tips.
 }
# Numbers of burners in words.
found-count = { $of ->
    [0] no
    [1] one
    [2] two
    [3] three
    [4] four
    [5] five
    [6] six
    [7] seven
    [8] eight
   *[other] many
 }
found-count-title = { $of ->
    [0] No
    [1] One
    [2] Two
    [3] Three
    [4] Four
    [5] Five
    [6] Six
    [7] Seven
    [8] Eight
   *[other] Many
 }
