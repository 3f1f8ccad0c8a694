## The job and the figures that were read

sheet-title = Job sheet
sheet-supply = Supply: { $owner }.
sheet-supply-yours = You may set the supply regulator inside its limits.
sheet-supply-theirs = The supply regulator is its owner's: call, do not touch.
sheet-required = Also asked for: { $work }.
sheet-hold = { -lock-up(case: "title") }: watch it for { $seconds } s at least.
sheet-settle = A reading counts { $seconds } s after a change.
sheet-seed = Seed { $seed }, { $help }.
sheet-hint = Hint { $number }: { $hint }
sheet-next-hint = Hint { $number } of { $all } on this job
sheet-plate = Plate
sheet-rise = Temperature rise on the plate: { $least } to { $most } °F.
sheet-plate-unread = Plate: not read yet.
sheet-label = Conversion label, which governs
sheet-no-label = No conversion label.
sheet-delivery = Supply regulator: { $least } to { $most }, { -lock-up } at most { $rest } { $unit }
sheet-figures = { $paper }, { $fuel }: inlet { $inlet_min } to { $inlet_max }, manifold { $manifold } { $unit }
sheet-target = { $pressure } ± { $tolerance }
sheet-level-target = { $level } { $pressure } ± { $tolerance }
sheet-notes = Notes
sheet-no-notes = Nothing yet. What you look at closely is noted here.
sheet-before = (before the repair)

## The grid of readings

grid-cell = { $row }, { $phase }
grid-row = { $port }, { $stage }
grid-inlet = Inlet
grid-manifold = Manifold
grid-lock-up = { -lock-up }
grid-full-load = { -full-load }
grid-lock-up-again = { -lock-up } after flow
grid-as-found = as found
grid-as-left = as left
grid-found = found
grid-left = left
grid-title = Readings, { $unit }
grid-press = Press a cell to write what the { -manometer } shows.
grid-empty = not written
grid-said = { $cell }: { $reading }
grid-meter = The { -manometer } shows { $number } { $unit }
grid-meter-dark = The { -manometer } is off.
grid-unit = Unit { $unit }, press for the next
grid-write = Write

## Why a number cannot be written

entry-empty = Type the number that the { -manometer } shows.
entry-no-number = “{ $text }” is not a number. Write it like 4.9.
entry-decimals = Three decimals at most.
entry-too-much = No manometer shows that much.

## Leak checks

joints-title = Joints checked
joints-tight = tight
joints-leaking = leaking
joints-piping = Whole piping
joints-said = { $joint }: { $verdict }

## Handing over

hand-over-title = Hand over and leave
hand-over-in-service = The furnace is back in service
hand-over-owner-called = It runs; the owner of the supply has been called
hand-over-shut-off = Shut off, tagged and explained
hand-over-not-done = Not done here, and still to be done on a real job:
hand-over-choose = Choose how the job ends first.

## What was wrong

finding-none = Nothing is written yet.
finding-line = { $cause }: { $answer }
finding-strike = Strike: { $cause }
finding-part = 1. Which part of the system?
finding-other-part = Another part
finding-cause = What was wrong there?
finding-answer = 2. What was done about it?
finding-evidence = 3. What speaks for it?
finding-write = Write it on the sheet
finding-lacks-answer = Say first what was done about it.
finding-reading = { $port }, { $stage }, { $phase }
finding-found = as found
finding-left = as left
finding-look = Look: { $subject }
finding-joint = Leak check: { $joint }
