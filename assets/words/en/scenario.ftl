# Scenarios: what is wrong with one, what is expected instead, what was in a job, the ladder of jobs.

## Values looked at together

problem-size = `{ $found }` is not a size that the model knows.
expected-one-of = one of { $names }
problem-stay-below = This must stay below `{ $other }`.
problem-setting-empty = This setting writes nothing of its own.
problem-no-version = There is no such version of the format: write `version: { $version }`.
problem-too-long = This has { $length } characters; { $most } fit.
problem-room-upright = In a basement, a closet or a garage the furnace stands, but `position` has it lie. Where seeds draw one or the other, write `room` alone: the position follows it.
problem-room-horizontal = In an attic the furnace lies, but `position` has it stand. Where seeds draw one or the other, write `room` alone: the position follows it.
problem-tank-natural = A tank holds propane, but the gas is natural gas.
problem-meter-propane = Propane seldom comes through a utility's meter.
problem-tank-cold = Propane does not boil at this temperature: the tank gives no gas.
problem-fuels = The furnace is marked for { $marked }, but the gas is { $gas }. Right only if this is the fault; else it wants a label in `furnace.conversion`, or the plate of that gas.
problem-label-same-fuel = The label names the fuel that the furnace was made for anyway.
problem-manometer-range = The manometer cannot show the supply at rest, { $pressure } inH2O.
problem-fault-misfit = `{ $fault }` does not fit here: { $why }. Where it fits one setting only, that one writes `faults` of its own in `variants`.
problem-fault-twice = `{ $fault }` is put in twice.
problem-no-ending = At least one way of ending the job must be right.
problem-ending-twice = This ending stands twice.
problem-rule-twice = This rule stands twice.
problem-weight-range = A weight is the same for every seed: one number.
problem-critical-rule = `{ $rule }` decides no essential: only a rule that does can be critical. See `quarterturn explain rules`.

## The job card

problem-drawn-in-text = `{ $word }…)` is shown as it stands: nothing is drawn in a text.
problem-duty-no-means = There are no means for this here: { $duty }.
problem-duty-twice = Listed twice: { $duty }.
problem-duty-never-due = This falls due only where the furnace is handed over to burn, and here it never is.
problem-heat-range = A card states one number: the same for every seed.
problem-heat-differs = The card states { $stated } Btu/ft3, but the gas has { $there } Btu/ft3. Right only if this is the fault.
problem-heat-unstated = The text says { $btu } Btu/ft3, and `card.heating_value` states nothing: marks go by the field.
problem-heat-stated-otherwise = The text says { $btu } Btu/ft3, and `card.heating_value` states { $stated } Btu/ft3: marks go by the field.
problem-heat-not-in-text = `card.heating_value` states { $btu } Btu/ft3, and the text does not say so: the trainee reads the text only.

## The furnace

problem-bands-overlap = The bands of low and high overlap.
problem-inlet-too-low = The lowest inlet pressure leaves the valve nothing to control the full rate with.
problem-manifold-levels = Write `manifold` for a furnace with one firing level, or `low` and `high` for one with two.
problem-input-levels = Write `input` for a furnace with one firing level, or `input_low` and `input_high` for one with two.
problem-levels-differ = Inputs and manifold pressures are those of a different number of levels.
problem-inlet-over-valve = The highest inlet pressure is above what the gas valve may see.
problem-inlet-unusual = Inlet limits for { $fuel } usually lie between { $least } and { $most } inH2O (makers' manuals).
problem-orifice = `{ $stamp }` does not tell the diameter of an orifice.
expected-orifice = a number drill as "#44" (#1 to #80) or a diameter as "2.14 mm"; or `orifice_size` beside it
problem-low-share = Low is { $inputs } % of high by the inputs, but { $pressures } % by the manifold pressures.
problem-orifice-count = { $written } sizes for { $burners } burners.
problem-coefficient = With these orifices the plate's input would need a discharge coefficient of { $found }. { $fitting }
problem-coefficient-unusual = With these orifices the plate's input needs a discharge coefficient of { $found }; 0.80 to 0.90 is usual (NFPA 54 Annex E). { $fitting }
problem-drill = #{ $number } ({ $inches } in, { $mm } mm: { $coefficient })
problem-drills = For { $middle } it takes { $ideal_mm } mm; nearest drills: { $drills }.
problem-high-on-low = With springs that add up, high cannot be set below low.

## What is possible but not usual

problem-heating-value = The heating value of { $fuel } is usually { $least } to { $most } Btu/ft3 ({ $from }).
problem-gravity = The specific gravity of { $fuel } is usually { $least } to { $most } ({ $from }).
problem-supply-not-for-furnace = The regulator is meant to be set outside what the furnace wants at its inlet, { $least } to { $most } inH2O (plate or label of this scenario).
problem-lockup-share = The lock-up is { $percent } % of the set pressure; usual is at most 120 to 130 % (common practice).
problem-tank-pressure = At this temperature the tank does not reach the pressure wanted before the supply regulator.
problem-tank-boils = All appliances burn { $burn } ft3/h; at this temperature and level the tank boils about { $boils } without end (model of the tank, fitted to a published withdrawal table). Right only if this is the fault.
problem-altitude = At { $height } ft these orifices give { $given } % of the plate's input; usual is { $code } % (IFGC, NFPA 54: 4 % less for each 1,000 ft) to { $makers } % (2 %, some makers' manuals).

## Supply and pipe

problem-droop = The regulator would droop to nothing from where it is found.
problem-upstream = The pressure before the regulator must be above its lock-up, { $pressure } inH2O.
problem-delivery-min = This must stay below `delivery_max`.
problem-supply-limits = The regulator is meant to be set outside its own limits.
problem-lockup-max = This must not be below `delivery_max`.
problem-locks-up = Set as meant, the regulator locks up above the highest pressure at rest. Right only if this is the fault.
problem-no-pipe = At least one stretch of pipe belongs here.
problem-capacity = A wide-open seat passes clearly more than the flow of the droop.
problem-capacity-load = All appliances draw { $flow } ft3/h, more than the regulator passes. Right only if this is the fault.
problem-regulator = No regulator behaves quite so: { $why }. The nearest one is taken.

## What an author says of the job

problem-step-range = A job stands on one step for every seed: one number.
problem-competency = There is no competency `{ $id }`: they are C01 to C22, and `quarterturn explain competencies` lists them.
problem-competency-silent = No rule speaks for { $id }: no marks of this job can show it.
problem-twice = `{ $id }` stands twice.
problem-gives-away = This gives `{ $name }` away before the job.

## Sections, fields, lists, words

problem-other-section = `{ $name }` is not the section that belongs here.
expected-section = { $section }(…) or just (…)
problem-no-section = A section { $section } with named fields belongs here.
expected-fields = (field: value, …)
problem-unknown-field = { $section } has no field `{ $name }`.
problem-field-twice = `{ $name }` stands twice.
expected-field-once = each field once
problem-missing-field = { $section } needs a field `{ $name }`.
problem-no-list = A list belongs here.
expected-list = [value, …]
problem-list-length = This list has { $count } values.
expected-at-most = at most { $most }
problem-word-drawn = This word is the same for every seed. What differs as a whole, as the fuel with its supply, is written in `variants`.
problem-no-word = A word without quotes belongs here.
problem-no-named-section = A named section belongs here.
problem-not-here = `{ $found }` does not belong here.

## Numbers and texts

problem-no-number = `{ $text }` is not a plain number
problem-no-whole-number = `{ $text }` is not a whole number from 0
problem-range-ends = A range has two ends.
problem-range-backwards = This range runs backwards.
expected-range = Between(low, high)
problem-number-belongs = A number belongs here.
problem-no-unit = A { $what } needs its unit, one of { $units }: write it as "{ $short } { $unit }".
problem-not-finite = `{ $text }` is not a finite number
problem-outside = `{ $field }` is outside what the model takes.
problem-unusual = The usual `{ $field }` is { $least } to { $most } ({ $source }).
expected-between = { $least } to { $most }
expected-number = a number without quotes, or Between(low, high)
expected-whole-number = a whole number without quotes, or Between(low, high)
expected-quantity = a text with number and unit, or Between("low", "high")
problem-text-belongs = A text in quotes belongs here.
problem-control-characters = A text has no control characters.
expected-printable = printable characters and line ends
problem-text-length = This text has { $length } characters.
expected-text-length = 1 to { $most }
problem-truth-belongs = Yes or no belongs here.
expected-truth = true or false

## The file

problem-file-size = The file has { $size } bytes; a scenario has at most { $most }.
problem-depth = Brackets stand more than { $most } deep here.
problem-quote = The text that begins here runs over the end of its line: a quote may be missing behind it or before it, and what follows may be no error of its own.
problem-not-ron = This is not RON: { $what }.

## The file as a whole

problem-not-utf8 = The file is not UTF-8 text from here on.
problem-no-scenario = There is no scenario in this file.
problem-unreadable = This cannot be read as a scenario.
problem-more = There are more problems; these come first.
problem-newer = This scenario is written for version { $version } of the format; this program reads version { $known }. A newer program is needed.

## The ladder of jobs

step-read = 1 · Read
step-set = 2 · Set
step-find = 3 · Find
step-judge = 4 · Judge
step-read-asks = Take true readings, write them down and leave everything as it should be.
step-set-asks = Something reads outside its band: bring in what is yours to bring in.
step-find-asks = Something does not work: let the readings lead you to the cause.
step-judge-asks = More than one thing is wrong, or the right end is not a running furnace.

## Choices

problem-choice-words = A choice holds one list of words.
problem-choice-count = There are { $count } words to choose from.
expected-choice-count = 1 to { $most }
expected-word-or-choice = one of { $words }, or OneOf([{ $words }])

## Faults

problem-fault-count = There are { $count } faults to choose from.
problem-fault-belongs = The name of a fault belongs here.
expected-fault = name, name(severity) or OneOf([…])
problem-fault-choice = A choice holds one list of faults.
expected-fault-choice = OneOf([first, second])
problem-no-fault = There is no fault `{ $name }` in the catalogue.
expected-fault-name = a name that `quarterturn faults` lists
problem-fault-written = `{ $name }` is not written like this.
expected-severity-number = a number, as { $example }
expected-severity-text = a text with its unit, as { $example }
problem-severity-range = A severity is a value or a range with two ends.
problem-severity-outside = This severity is outside what the catalogue takes.

## Settings of a job

problem-as-written = { $problem } That is so in the job as it is written.
problem-in-setting = { $problem } That is so in `{ $place }`.
problem-endings-in-setting = { $problem } That is so in `{ $place }`. It may write `endings` of its own.
problem-setting-takes = This setting burns { $fuel } and writes no `{ $field }`: { $field ->
    [supply] regulator, pressures and source
   *[furnace] plate, label and orifices
 } stay those of the job.
problem-no-rule = There is no rule `{ $rule }` in the shared set. `quarterturn explain rules` lists them.
problem-no-rule-near = There is no rule `{ $rule }` in the shared set. Do you mean `{ $near }`? `quarterturn explain rules` lists them.

## Marks between the parts of a list

list-and = { " and " }
list-or = { " or " }
list-with = { " with " }
list-comma-or = { ", or " }

## Endings

problem-fault-unfelt = `{ $fault }`, as severe as this, cannot be felt with anything on the van: no finding has to name it.
problem-no-ending-right = No ending of the list is right where { $faults } is drawn.
problem-ending-instead = By what is drawn here, { $endings } can be right.
problem-in-service = `InService` cannot be right.
problem-too-narrow-shut-off = `InService` alone is too narrow: what is wrong may be left shut off, and nobody who does that is wrong. List `ShutOff` beside it.
problem-too-narrow-owner = `InService` alone is too narrow: what is wrong may be left to the owner of the supply, and nobody who does that is wrong. List `SupplyOwnerCalled` beside it.
problem-owner-called = `SupplyOwnerCalled` is hardly right: no fault of the list that shows is one for the owner of the supply, and the supply is not found out of its limits.
problem-shut-off = `ShutOff` is hardly right: no fault of the list that shows asks for it, fuel and conversion agree, and the supply is not found out of its limits.
problem-helps = What helps against `{ $fault }`: { $remedies }.
problem-helps-theirs = What helps against `{ $fault }`: { $remedies }, and the supply is its owner's.

## Springs and screws of the furnace

problem-screw-bottom = The { $stage ->
    [firing] regulator
    [low] low
   *[high] high
 } screw stands at its bottom: its spring gives at most { $most } inH2O. Right only if this is the fault.
problem-coils-touch = The coils of the { $stage ->
    [firing] regulator
    [low] low
   *[high] high
 } spring touch at this setting.

## Usual figures

problem-supply-set = Usual are { $least } to { $most } inH2O for { $fuel ->
    [natural] low-pressure natural gas
   *[propane] propane behind a second-stage regulator
 } (common practice).
problem-pipe-drop = At { $flow } ft3/h, the { -full-load }, the { $pipe ->
    [trunk] trunk
   *[branch] branch
 } loses { $drop } inH2O; usual is at most { $most } (IFGC 402.4). Right only if this is the fault.
problem-from-propane = NFPA 58 gives 2,516 and 1.52

## Severities of faults

problem-severity-number = The severity is a bare number, { $what }.
problem-severity-text = The severity is a text with number and unit, { $what }.

## The report on a problem

problem-warning = warning
problem-error = error
problem-scenario = scenario
# What follows the colons stands below each other.
problem-found = found:{ "    " }{ $found }
problem-expected = expected: { $expected }
problem-nearest = nearest:{ "  " }{ $nearest }

## What was in a job, for after it

# A full stop is put behind a unit that has none.
in-job-fault = { $fault }. { $cause }
in-job-fault-severity = { $fault }. { $cause } Here: { $how }, { $severity }
in-job-percent = { $percent } %
in-job-supply = The supply regulator was found set to { $set }; its limits are { $least } to { $most }
in-job-stage = The { $stage ->
    [firing] gas valve
    [low] low stage
   *[high] high stage
 } was found set to { $set }; { $target } ± { $tolerance } is right.
in-job-valve = The manual shut-off valve was found { $angle } open of 90°.
in-job-valve-switch = The switch on the gas valve was found off.
in-job-furnace-switch = The furnace's service switch was found off.
in-job-heat-switch = The thermostat's heat switch was found off.
in-job-cap = The cap over the { $screw } was found off.
in-job-plug = Plug or tap screw of the { $port } was found short of snug.
in-job-zero = The { -manometer }'s zero was off by { $pressure }

## Fields explained

explain-fields = Fields of a scenario
explain-places = Stands at { $places }.
explain-value = value: { $value }
explain-required = must be written
explain-default = default: { $value }
explain-limits = limits: { $least } to { $most }
explain-usual = usual: { $least } to { $most } ({ $source })
explain-default-section = `{ $value }`, the defaults of its fields
explain-default-list = `{ $value }`, none
explain-typical = { $value }, typical
explain-typical-both = { $natural }, on propane { $propane }, typical
explain-plain-fault = `{ $fault }`; it is there or not
explain-fault = { $cause } (Family: { $family }.)
value-list = a list of at most { $most }: { $value }
value-section = a section { $section }(…)
value-drawn = { $words }, or one of them for each seed, `OneOf([{ $all }])`
value-truth = `true` or `false`
value-text = a text of at most { $most } characters
value-quantity = a { $what } with its unit ({ $units }), or a range `Between("low", "high")`
value-quantity-fixed = a { $what } with its unit ({ $units }), the same { $whom }
value-number = a { $what }, or a range `Between(low, high)`
value-number-fixed = a { $what }, the same { $whom }
value-fault = a fault by its name with its severity, as `kinked_connector(0.8)`, its name alone for the typical severity, a range `name(Between(low, high))`, or `OneOf([first, second])`; `quarterturn faults` lists them

## Rules and competencies explained

explain-rules = The shared rules: id, points, how bad, title. `quarterturn explain ID` tells more.
explain-rule-essential = essential
explain-rule-harm = harm: { $harm }, { $severity }; { $weight } points, in the family “{ $family }”
explain-rule-cost = costs otherwise than its class, because { $because }
explain-rule-grave = { $harm } when { $when }
explain-rule-caught = caught in time when { $caught }
explain-rule-gates = essential: { $essential }
explain-rule-competencies = competencies: { $ids }
explain-rule-follows = not charged beside: { $rules } (it follows from them)
explain-rule-why = why: { $why }
explain-rule-practise = practise: { $practise }
explain-rule-job = on: { $job }
explain-rule-unsafe = practise, where the furnace must stay off: { $practise } On: { $job }
explain-rule-version = version: { $version }
explain-rule-columns = | id | harm | points | essential | title |
explain-harm-columns = | class of harm | severity | points | fails the job | what it is, and why it costs so much |
explain-gates = yes
explain-gates-not = no
explain-scoring-date = As of { $date }. { $standing }
explain-scoring-given = From { $full } points down to { $least }. { $given }
explain-scoring-repeat = A repeat costs { $points }, all repeats together at most { $most } times the first. { $why }
explain-scoring-caught = Caught in time, a slip costs { $share } of its points. { $means } { $why }
explain-scoring-caps = Most points that a family of rules can cost, beside what is critical, which no cap hides: { $caps }.
explain-competency-columns = | id | name | who has it |
explain-cause-columns = | part of the system | id | cause | how it can be seen | faults |
explain-cause-faults = Names the faults: { $faults }.
explain-competency-rules = rules that speak for it: { $rules }
explain-competency-no-rules = rules that speak for it: none
explain-mistake-columns = | number | mistake | rules | what no rule asks |
explain-mistake-rules = rules that speak for it: { $rules }
explain-mistake-beyond = Not modelled: { $why }
explain-mistake-not-modelled = not modelled
coverage-head =
    # Coverage

    What the shared rules ask, held against the mistakes of the trade and against the competencies that
    jobs are for. `quarterturn explain M39` tells of one mistake, `quarterturn explain C05` of one
    competency, `quarterturn explain mistakes` of all mistakes. Written by
    `quarterturn explain --write docs`; numbers and words are this project’s own.

    > **Take care.** Practice evidence from a simulator. It confers no qualification, and no body that
    > certifies anybody has looked at this page.

    ## Mistakes

    Each with the rules that speak for it. Where there is none, the mistake cannot be made here, and why
    stands beside it.
coverage-beside = Rules that speak for none of these, and for competencies alone: { $rules }.
coverage-competencies =
    ## Competencies

    Each with the rules that speak for it and the shipped jobs that name it among their aims.
coverage-columns = | id | competency | rules | jobs |
coverage-no-rule = none: nothing that is done on a job shows it
family-safety = safety
family-isolation = isolation
family-measuring = measuring
family-adjusting = adjusting
family-restoring = restoring
family-records = records
family-diagnosis = diagnosis

## Why no regulator behaves so

regulator-bad-number = a number is missing, not finite or not above zero
regulator-pressure-order = pressures must rise from droop over set and lock-up to inlet
regulator-flow-order = flows must rise from set over rated to wide open
regulator-lockup-too-low = lock-up is too close to the set point for this droop
regulator-out-of-travel = the set point lies beyond the travel of the screw
