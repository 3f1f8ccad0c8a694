# `fidelity`: the guide, its figures, the rows of its checks, and what is wrong with tables and cases.

## The guide, a page of Markdown

guide-head =
    # The fidelity guide

    What is claimed about the model stands here, each claim beside the reference it was held against, with
    the condition, the tolerance and the result. A claim that is not here is not made. The appliance's own
    plate and instructions, the local code and a licensed technician decide on real gas.

    This page is written by the program itself:

    ```
    cargo run --no-default-features --features cli -- fidelity --write docs
    ```

    A test compares it with a fresh run, so it cannot go stale.

    - **pass**: every row lies within the tolerance.
    - **known miss**: a row lies outside, and the check says why and what was tried. Beside each stands a
      check of the bound that holds all the same (`.columns`, `.cells`, `.bound`); that one must pass.
    - **FAIL**: a row lies outside and nobody knows why. The program then ends with exit code 1.

    A printed figure is rounded; half a unit of its last digit is taken off the difference before it is
    judged. `.memory` marks figures from memory: they guard against change and prove little.
guide-figure = Fig. { $number }: { $title }
guide-summary-columns = | chapter | checks | rows | pass | known miss | fail |
guide-all = all
guide-source = source: { $source } ({ $truth })
guide-condition = condition: { $condition }
guide-tolerance = tolerance: { $tolerance }, for { $reason }
guide-worst = worst of { $rows } rows: { $row }
guide-no-row = there is no row
guide-row = { $label }: reference { $reference }, model { $result } { $unit }
guide-row-off = { $row } ({ $off } %)
guide-row-off-rounded = { $row } ({ $off } % beyond rounding)
guide-misses = Known misses
guide-misses-columns = | check | rows outside | why it is left standing |
guide-miss-row = { $label }: { $result } for { $reference }
guide-outside = { $outside } of { $rows }
guide-not-used = Rows not used
guide-not-used-columns = | table | rows | why |
guide-corrected =
    Used with a correction: the table for propane at 11 in. w.c. (IFGC 2018 Table
    402.4(28)) skips 70 ft in its length labels, so that every label after 60 ft is wrong and the printed
    capacities are 5 to 23 % too large for it; some rows of the transcribed first-stage table (402.4(25)) are
    shifted too. The lengths used are those that the figures belong to; the column `length_ft_as_printed`
    keeps the labels.
guide-tables-not-used = Tables of a known name that are not used at all:
guide-tables-columns = | table | why |
guide-left-out = What the model leaves out
guide-left-out-where = As the head of each module says; the file is under `src`.
guide-left-out-columns = | module | what it is | left out |

## Bands, references, verdicts

band-absolute = ±{ $band } { $unit }
band-relative = ±{ $band } %
band-uneven = { $below } to { $above } %
band-either = ±{ $absolute } { $unit } or ±{ $relative } %
band-at-most = at most the reference
band-at-least = at least the reference
truth-published = published
truth-closed-form = closed form
truth-solver = independent solver
truth-invariant = invariant
truth-memory = from memory
verdict-pass = pass
verdict-known-miss = known miss
verdict-fail = FAIL

## A check on the terminal; names have at most ten characters

check-claim = claim
check-source = source
check-condition = condition
check-tolerance = tolerance
check-worst = worst
check-rows = rows
check-rows-outside = { $rows }, { $outside } outside
claim-no-row-chapter = Checks without a row
claim-no-row = claims.ron has no row `{ $id }`.
claim-no-band = There is no band.

## Figures

plot-steel-natural-low = Schedule 40 steel, natural gas, low pressure
plot-steel-natural-psi = Schedule 40 steel, natural gas, 2 to 5 psi
plot-steel-propane = Schedule 40 steel, propane
plot-steel-older = Schedule 40 steel, older editions of the tables
plot-copper-natural = Semirigid copper, natural gas
plot-copper-propane = Semirigid copper, propane
plot-fittings = Screwed fittings
plot-gravity = Capacity with gases of other specific gravity
plot-csst-low = Corrugated tubing, natural gas, low pressure
plot-csst-psi = Corrugated tubing, natural gas, 2 and 5 psi: at standard and at its own density
plot-csst-propane = Corrugated tubing, propane
plot-orifices = Utility gas through drilled orifices
plot-leaks = Gas through a small hole
plot-clocking = Seconds for a turn of the dial at rated input
plot-vapour-pressure = Vapour pressure of commercial propane
plot-altitude = Air pressure, and input of the same orifice, by altitude
plot-flue-gas = Oxygen and carbon dioxide in dry flue gas
plot-efficiency = Heat that does not go up the flue
plot-dilution = Gas gathering in a ventilated room
axis-capacity-ft3-h = capacity, ft³/h
axis-capacity-kbtu-h = capacity, kBtu/h
axis-capacity-ft3-h-or-kbtu-h = capacity, ft³/h or kBtu/h
axis-inside-diameter-in = inside diameter, in
axis-equivalent-length-ft = equivalent length, ft
axis-specific-gravity-air-1 = specific gravity (air = 1)
axis-multiplier = multiplier
axis-pressure-in-w-c = pressure, in. w.c.
axis-flow-ft3-h = flow, ft³/h
axis-hole-mm = hole, mm
axis-rated-input-kbtu-h = rated input, kBtu/h
axis-seconds = seconds
axis-temperature-f = temperature, °F
axis-pressure-psia = pressure, psia
axis-altitude-ft = altitude, ft
axis-against-sea-level = against sea level
axis-excess-air = excess air, %
axis-share = share, %
axis-share-of-the-gross-heat = share of the gross heat, %
axis-time-min = time, min
axis-gas-m3-m3 = gas, m³/m³
axis-length = length, ft
plot-deviations = model over reference, %
plot-title = Fig. { $number }. { $title }
plot-key = Lines: model. Circles: reference. Below: deviations, the reference's own rounding taken off; shaded: the band of the first check.

## Rows against closed forms

row-natural-gas = natural gas
row-flow-cm3 = { $label }, flow in cm³/s
row-above-outlet = { $label }, Pa above the outlet
row-ends-exchanged = { $label }, ends exchanged
row-element-turned = { $label }, element turned
row-propane = propane
row-inlet-opens = inlet opens
row-inlet-closes = inlet closes
row-balanced-seat = balanced seat
row-psi-rated-flow = { $name }, { $psi } psi, { $percent } % of rated flow
row-lift = { $lift_in } in lift
row-psi-inlet = { $psi } psi inlet
row-small-valve-natural = small valve, natural
row-small-valve-propane = small valve, propane
row-second-stage-propane = second stage, propane
row-turn = { $name }: one turn
row-droop-over-travel = { $name }: droop over the travel
row-per-100-inwc-of-inlet = { $name }: per 100 in. w.c. of inlet
row-pa-shut = { $start_pa } Pa shut in
row-hole-10-mm = hole of 10 mm²
row-half-inch-steel = 1/2 in. steel, 10 m
row-tubing-ehd-18-10 = tubing EHD 18, 10 m
row-laminar = { $name }, { $bore } mm, Re { $re }
row-mm-then-mm = { $first_mm2 } mm² then { $second_mm2 } mm²
row-three = three of: { $name }
row-holes-mm = holes of { $first } and { $second } mm²
row-both-ends-pa = { $name }, both ends at { $pa } Pa
row-next-to-nothing = { $name }, 1 nPa
row-high-to-low-pa = { $name }, { $upper } to { $lower } Pa
row-drop-pa = { $drop_pa } Pa
row-heat-into-air = { $btu_h } Btu/h into { $cfm } ft³/min
row-rule-1-08 = 1.08 rule
row-high-5-000-ft = high at 5,000 ft (density 0.862)
row-lag = lag { $lag_s } s, after { $constants } of it
row-cold-tank-warming-2 = cold tank warming, 2 h and 4 h
row-blower-low = blower on low
row-three-and-six-s = { $name }, 3 s and 6 s
row-exchanger-cooling-20-s = exchanger cooling, 20 s and 40 s
row-half-inwc = 0.5 in. w.c.
row-10-5-psi = 10 to 5 psi
row-line-cut = { $name }, cut at { $percent } %
row-two-pipes = { $first_ft } ft of { $first_in } in. before { $second_ft } ft of { $second_in } in.
row-ten-90-elbows = ten 90° elbows
row-ten-45-elbows = ten 45° elbows
row-ten-tees-by-branch = ten tees by the branch
row-changes-h-min = { $changes_h } changes/h, { $minutes } min
row-tenth-m3-h-for-good = 0.10 m³/h for good
row-half-m3-h-for-good = 0.50 m³/h for good
row-half-m3-h-for-a-time = 0.50 m³/h for 40.4 min
row-aired-from-4-76 = aired from 4.76 % for (V/Q)·ln 4.76
row-breathing-height = breathing height
row-leak = { $name }, leak in the { $place }
row-heat-into-house = { $btu_h } Btu/h into { $loss_w_k } W/K
row-name-inwc = { $name }, { $pressure } in. w.c.
row-natural-gas-1-5 = natural gas, 1.5 of 3.5 in. w.c., rated 14,500 of 22,000 Btu/h
row-natural-gas-1-7 = natural gas, 1.7 of 3.5 in. w.c., the 70 % class
row-propane-4-9-10 = propane, 4.9 of 10 in. w.c., the 70 % class

## Rows of invariants

row-low-pressure = low pressure
row-medium-pressure = medium pressure
row-hole-gas = hole, { $name }, { $what }
row-rusted-steel = rusted steel
row-tubing = tubing, { $name }, { $what }
row-rate-against-manifold = rate against manifold, { $name }
row-seat-area-against-lift = seat area against lift
row-spring-force-against-screw = spring force against screw
row-outlet-falling-against-load = outlet falling against load
row-outlet-against-inlet = outlet against inlet
row-outlet-against-screw = outlet against screw
row-ball-valve = ball valve
row-plug-cock = plug cock
row-area-against-handle = { $name } area against handle
row-vapour-pressure-against-temperature = vapour pressure against temperature
row-gas-room-against-leak = gas in a room against leak
row-draft-against-inducer-speed = draft against inducer speed
row-air-against-free-vent = air against free vent
row-carbon-monoxide-falling-air = carbon monoxide falling with air, { $name }
row-oxygen-against-air = oxygen against air, { $name }
row-carbon-dioxide-falling-air = carbon dioxide falling with air, { $name }
row-excess-air-against-oxygen = excess air against oxygen, { $name }
row-efficiency-falling-flue = efficiency falling with flue, { $name }
row-efficiency-falling-air = efficiency falling with air, { $name }
row-heat-against-gas = heat against gas, { $name }
row-flame-current-against-gas = flame current against gas, { $name }
row-rated-gas = { $name }, { $percent } % of rated gas
row-worst-exchanger = worst exchanger
row-worst-house = worst house
row-worst-volume-any-step = worst volume in any step
row-worst-place-any-step = worst place in any step
row-worst-opening-tenth-fourfold = worst opening, tenth to fourfold
row-worst-pressure-flow-any = worst pressure or flow in any step

## Rows of parts

row-range = { $name }: { $least } to { $most }
row-low = { $id }, low
row-high = { $id }, high
row-id-rated-gas = { $id }, { $percent } % of rated gas
row-110-rated = { $id }, 110 % of rated
row-ppm-o = { $ppm } ppm at { $o2 } % O₂
row-least-rise-from-90 = { $id }, least rise from 90 to 140 % of rated gas
row-140-against-ten-times = { $id }, 140 % against ten times the healthy value
row-excess-air-against-400 = no excess air, against the 400 ppm of ANSI Z21.47
row-three-quarters-vent-blocked = three quarters of the vent blocked, against 100 ppm
row-gas-off = { $id }, gas off
row-dirty-half-current-left = dirty, half the current left
row-filthy-tenth-left = filthy, a tenth left
row-from-gas-blower = from gas to blower
row-settling-low-before-high = settling on low before the high stage
row-lockout-before-another-start = lockout before another start
row-igniter-warm-up = igniter warm-up
row-igniter-after-gas-opens = igniter on after the gas opens
row-trial-for-ignition = trial for ignition
row-blower-off-after-gas = blower off after the gas
row-purge-between-tries = purge between tries
row-trials-before-lockout = trials before lockout
row-from-loss-flame-shut = from loss of flame to shut gas
row-zeroed = { $id }, zeroed { $state }, { $inwc } in. w.c.
row-inch-off = 1 in. w.c. off, before zeroing
row-inch-off-zeroed = 1 in. w.c. off, zeroed, { $inwc } in. w.c.
row-zeroed-under-pressure = zeroed at { $trapped } in. w.c., put to 7.0
row-whiff = a whiff
row-natural-gas-whiff = natural gas, a whiff
row-second-stage-propane-11 = second stage, propane, 11 in. w.c.
row-line-regulator-natural-gas = line regulator, natural gas, 7 in. w.c.
row-appliance-regulator-natural-gas = appliance regulator, natural gas, 3.5 in. w.c.
row-rated-flow = { $percent } % of the rated flow
row-name-rated-flow = { $name }, { $percent } % of rated flow
row-inlet-normal = { $name }, inlet { $percent } % of normal
row-healthy-bench-natural-gas = healthy bench, natural gas
row-healthy-bench-propane = healthy bench, propane
row-supply-as-set = { $name }, supply as set
row-second-stage-5-10 = second stage, 5 to 10 psi
row-line-regulator-1-2 = line regulator, 1 to 2 psi
row-appliance-regulator-5-10 = appliance regulator, 5 to 10.5 in. w.c.
row-inlet-inwc = inlet { $inwc } in. w.c.
row-bottomed-inlet = bottomed, inlet { $inwc } in. w.c.
row-fully-out-inlet = fully out, inlet { $inwc } in. w.c.
row-inlet = { $id }, { $name }, inlet
row-manifold = { $label }, manifold
row-worst-tick = worst tick
row-healthy-bench-80-000 = healthy bench, 80,000 Btu/h, 1/2 ft³ dial, 1,030 Btu/ft³
row-dial-chart = { $btu_h } Btu/h, 1 ft³ dial, 1,000 Btu/ft³
row-screw = { $id }, { $stage } screw
row-tank-full = { $percent } % full, 40 °F
row-tank-draw = { $gallons } gal, { $cfh } ft³/h, { $outside_f } °F
row-cfh = { $cfh } ft³/h
row-low-high-within-tenth = { $id }, low to high, within a tenth
row-low-high-within-1 = { $id }, low to high, within 1 %
row-id-inlet = { $id }, inlet { $inlet } in. w.c.

## Rows of tables, and why some are not used; what is wrong with a table

unused-another-form-same-rule = another form of the same rule, moist air (the model's air is dry), or a range of practice that the plate sets
row-furnace-air = { $input } Btu/h, { $efficiency } %, { $cfm } cfm
row-altitude = { $feet } ft
unused-derating-rule-formula-orifice = a derating rule or a formula of the orifice table: the plate governs
table-b-area-ratio-needed = `#a/#b area = ratio` is needed
table-drill-outside-1-80 = a drill outside #1 to #80
row-drill-for-drill = #{ $first } for #{ $second }
table-none-ch4-c3h8-ngmix = `{ $other }` is none of CH4, C3H8, NGmix
row-excess-air = { $fuel }, { $excess } % excess air
unused-limit-for-appliances-which = a limit for appliances, which the rules of a job use, or a consequence of figures checked beside it
table-ppm-b-o2-c = `a ppm at b % O2 -> c` is needed
row-measured-ppm = { $measured } ppm at { $o2 } % O₂
table-two-factors-above-50 = two factors above 50 are needed
row-claim-columns = { $claim } Median of each column, model over table.
row-claim-cells = { $claim } Every cell.
row-cells = { $name }, { $count } cells
row-ehd-ft = EHD { $ehd }, { $length } ft
row-ehd = EHD { $ehd }
unused-size-ehd-that-model = a size (EHD) that the model has no figures for
unused-ehd-37-propane-beyond = EHD 37 with propane beyond 5 ft: the column is not 1.58 times its natural-gas sister but falls from 1.59 to 1.23 times
unused-ehd-37-last-row = EHD 37, last row (300 ft, 500 ft at psi): printed 18 to 35 % under its own column
unused-150-ft-row-up = the 150 ft row up to EHD 31 at 0.5 in. w.c.: printed 4 to 7 % under its own columns
unused-marked-table-as-not = marked in the table as not to be tested
row-ehd-drop = EHD { $ehd }, { $drop_inwc } in. w.c.
row-five-more-20-ft = five more in 20 ft, EHD 25
row-kbtu-h-propane-over = kBtu/h of propane over ft³/h of natural gas
unused-definition-note-without-figure = a definition or a note without a figure that the model gives
unused-fitting-that-model-does = a fitting that the model does not have
row-nominal-fitting = { $nominal } in, { $name }
row-sg = SG { $gravity }
unused-gas-that-model-does = a gas that the model does not have
row-viscosity-cp = viscosity, cP
row-code-factor = Cr = 0.00354·S·T·(Z/S)^0.152 at the table's gravity
unused-form-consequence-two-equations = a form or a consequence of the two equations that are checked
row-pipe-low-pressure = { $name }, { $id_in } in, { $length_ft } ft, { $drop } in. w.c.
row-pipe-high-pressure = { $name }, { $id_in } in, { $length_ft } ft, { $inlet } less { $drop } psi
table-pairs-f-psig-are = pairs of °F and psig are needed
unused-property-that-model-does = a property that the model does not use, or one of a gas it does not have (pure methane, a state's mean)
row-property = { $property }, { $gas }
row-claim-bound = { $claim } The miss is no larger.
unused-unit-model-does-not = a unit the model does not show, or an inch of water at another temperature (39.2 or 60 °F); the model's inch is the conventional one
unused-unit-model-does-not-show = a unit the model does not show
table-number-above-zero-needed = a number above zero is needed
row-unit-in-unit = { $from } in { $unit }
table-neither-natural-nor-propane = `{ $other }` is neither natural nor propane
row-gas-low-to-high = { $gas }, { $first } to { $full } in. w.c.
row-drill-low-to-high = { $name }, { $first } to { $full } in. w.c.
row-drill-stage = { $name }, { $stage }, { $inwc } in. w.c.
unused-size-label-that-its = a size label that its own seconds contradict by more than 3 % (70 kBtu/h: 55 s is 65.5 kBtu/h): the label is nominal
row-kbtu-h-ft = { $input } kBtu/h, { $gas }, { $feet } ft³
table-number-drill-1-80 = `{ $name }` is no number drill, #1 to #80
row-drill-in = { $name }, in
row-drill-mm = { $name }, mm
unused-drills-77-78-printed = drills #77 and #78: printed 3 to 8 % over the formula at 3 and 3.5 in. w.c.
row-drill-at-inwc = { $name }, { $inwc } in. w.c.
row-hole-at-inwc = { $hole_mm } mm, { $name }, { $inwc } in. w.c.
unused-flow-so-slow-that = flow so slow that it is laminar (Re under 1,800), where the code's equation goes on turbulent and the model goes over to Hagen–Poiseuille
row-nominal-length = { $nominal } in, { $length } ft
row-nominal-size = { $nominal } in
row-schedule-40-steel-pipe = Schedule 40 steel pipe
row-semirigid-copper-tube = semirigid copper tube
table-seat-not-smaller-than = the seat is not smaller than the diaphragm
row-a-turn = a turn
row-droop-full-travel = droop over the travel
row-outlet-lost-per-inch = outlet lost per inch of inlet
unused-reference-literature-without-figures = a reference to literature without figures
row-full-travel = at full travel
row-inlet-psi = inlet { $inlet } psi
row-changes-minutes = { $changes }/h, { $minutes } min
table-it-names-same-room = it names `same room`, and no row before it gives one
row-leak-minutes = { $leak } m³/h, { $minutes } min
unused-equation-without-figures-recalled = an equation without figures, or a recalled practice
row-leak-at-last = { $leak } m³/h, at last
table-file-larger-than-bytes = the file is larger than { $max_bytes } bytes
table-this-not-utf-8 = this is not UTF-8 text
table-zero-byte-place-table = a zero byte has no place in a table
table-this-not-row-table = this is not a row of a table: { $bad }
table-file-empty-header-column = the file is empty; a header with column names is needed
table-table-header-row = the table has a header and no row
table-second-column-named = a second column is named `{ $name }`
table-fields-where-header = { $count } fields where the header has { $width }
table-more-than-rows = more than { $max_rows } rows
table-there-column = there is no column `{ $column }`
table-not-number = `{ $text }` is not a number
table-does-not-hold-number = `{ $text }` does not hold { $count } number(s)
table-lies-outside = `{ $text }` lies outside { $least } to { $most }
table-material = `{ $text }` is neither Schedule 40 metallic pipe nor copper tube
table-natural-gas-tabled-ft3 = natural gas is tabled in ft3/h; its heating value is not fixed
table-neither-ft3-h-nor = `{ $other }` is neither ft3/h nor kBtu/h
row-drive-low = low pressure, drop { $drop_inwc } in. w.c.
row-drive-high = inlet { $inlet_psi } psi, drop { $drop_psi } psi
row-stream = { $gas } of specific gravity { $gravity }, { $drive }, 60 °F
table-neither-natural-gas-nor = `{ $text }` is neither natural gas nor propane
table-specific-gravity-lies-outside = a specific gravity of { $gravity } lies outside 0.3 to 2.5
table-pressure-w-c-psi = a pressure in `in w.c.` or `psi` is needed
table-drop-psi-more-than = a drop of { $drop_psi } psi is more than the inlet of { $inlet_psi } psi
unused-case-pure-methane-that = a case of pure methane, or one that the guide does not know

## Cases, and what is wrong with one

case-not-whole-number = { $number } is not a whole number
case-number-needed-here-text = a number is needed here, a text was found
case-text-unit-needed-here = a text with a unit is needed here; a bare number goes under a name with its unit, as in `length_m`
case-unknown-field-unit-this = unknown field: `…{ $ending }` is no unit of this
case-area-given-m2-mm2 = an area is given in `…_m2` or `…_mm2`
case-number-needed-here = a number is needed here
case-two-nodes-are-called = two nodes are called `{ $node }`
case-two-elements-are-called = two elements are called `{ $element }`
case-node-given-pressure-volume = a node has a given `pressure`, or `volume`, `start` and `demand`, not both
case-begins-ends-node = `{ $element }` begins and ends at one node
case-there-node-this-case = there is no node `{ $name }` in this case
case-there-element-this-case = there is no element `{ $name }` in this case
case-pressure-flow-expected = no pressure and no flow is expected
case-size-this-material = `{ $size }` is no size of this material
case-nominal-size-needs-its = a `nominal` size needs its `material`
case-nominal-inside-are-both = `nominal` and `inside` are both given
case-inside-nominal-missing = `inside` or `nominal` is missing
case-roughness-material-missing = `roughness` or `material` is missing
case-roughness-more-than-5 = the roughness is more than 5 % of the inside diameter
case-known-fittings-are = known fittings are { $fittings }
case-equivalent-hydraulic-diameter-published = { $ehd } is no equivalent hydraulic diameter with published figures
case-drill-number-diameter = `{ $name }` is no drill number and no diameter
case-cd-missing = `cd` is missing
case-opening-area-diameter-cd = an opening has one of `area`, `diameter` with `cd`, `drill` with `cd`, `cv`
case-regulator-either-behavior-parts = a regulator has either `behavior` or `parts`
case-regulator-behaves-so = no regulator behaves so: { $error }
case-turns-most-max-turns = `turns` is at most `max_turns`
case-seat-most-half-diaphragm = `seat` is at most half of `diaphragm`
case-blend-most-seal = `blend` is at most `seal`
case-regulator-changes-either-its = a regulator changes either its `turns` or its `reference`
case-nothing-can-change-pipe = nothing can change at a pipe or tubing
case-list-items-are-most = the list has { $count } items; { $most } are the most
case-null-value-field-that = null is no value; a field that has none is left out
case-given-twice-different-units = `{ $stem }` is given twice in different units
case-outside-range-from-si = { $number } is outside the range from { $least } to { $most } (SI)
case-name-1-60-bytes = a name of 1 to 60 bytes, no space at its ends, no control character
case-given-twice = `{ $name }` is given twice
case-expected-number = expected a number
case-expected-object = an object
case-no-list = invalid type: a list was found where none is wanted
case-file-bytes-are-most = the file has { $bytes } bytes; { $max_bytes } are the most that are read
case-two-cases-are-called = two cases are called `{ $case }`
case-transients-up-here-take = the transients up to here take more steps than a file may ask for
case-there-case-list = there is no case in the list
case-reference-cases = Reference cases
case-not-named = not named
case-this-not-json = this is not JSON: { $words }
case-file-reference-cases-here = a file of reference cases has `{ $format }` here
case-version-newer-than-this = version { $version } is newer than this program, which reads { $known }
case-versions-count-from-1 = versions count from 1
case-band-needs-its-reason = a band needs its `reason`
case-band-absolute-relative-both = a band has `absolute`, `relative` or both
case-outlet-drop-are-both = `outlet` and `drop` are both given
case-line-outlet-drop-expects = a line has `outlet` or `drop` and expects `flow`, or has `flow` and expects `drop`
case-times-must-rise = times must rise
case-nothing-expected = nothing is expected
case-node-element-missing = `node` or `element` is missing
case-change-node-element-not = a change is at a `node` or at an `element`, not both
row-id-at-time = { $id } at { $seconds } s
row-id-at-time-inwc = { $id } at { $seconds } s, { $inches } in. w.c.
case-problem = line { $line }, column { $column }: { $message }
case-problem-at = line { $line }, column { $column }, { $path }: { $message }
