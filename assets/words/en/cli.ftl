## Output

cli-no-output = standard output cannot be written: { $error }
cli-no-json = no JSON can be made: { $error }

## Files

cli-folder-to-read = this is a folder; a file is needed
cli-folder-to-write = this is a folder; a file name is needed
cli-no-file-name = this is not the name of a file

## check

check-fine = { $file }: nothing wrong with this { $kind }
check-record-fine = { $file }: nothing wrong with the { $lines } lines
check-record-torn = { $file }: nothing wrong with the { $lines } lines; its torn last line does not count

## explain

explain-unknown = There is no field, fault, rule, competency or mistake `{ $name }`. `quarterturn explain` lists the fields, `quarterturn explain rules` the rules.
explain-unknown-near = There is no field, fault, rule, competency or mistake `{ $name }`; nearest: { $near }. `quarterturn explain` lists the fields, `quarterturn explain rules` the rules.

## faults

faults-unknown = There is no fault `{ $name }`; `quarterturn faults` lists them.
faults-unknown-near = There is no fault `{ $name }`; nearest: { $near }; `quarterturn faults` lists them.

## Jobs by name

job-learner = an id has 1 to { $most } printable characters
job-unknown = { $name }: there is no such file, and no scenario of this name comes with the program (those are: { $names })

## mark


# Under every verified record.
mark-proof = A replay shows that a record is whole and consistent; it does not show who sat there.

# Whose text of the scenario a record holds.
mark-text-shipped = as it comes with this program
mark-text-changed = not the one that comes with this program under this name
mark-text-own = the author's own

# Names of the lines, at most nine characters.
mark-result = result
mark-job = job
mark-job-line = { $scenario }, seed { $seed }
mark-scenario = scenario
mark-learner = learner
mark-nobody = nobody named
mark-no-help = no help recorded
mark-learner-line = { $learner }, { $help }
mark-way = on the way { $hints } hints, { $back } times back
mark-ended = ended
mark-not-finished = not finished
mark-torn = torn
mark-torn-line = the last line was not finished and does not count
mark-model = model
mark-model-line = recorded with version { $recorded } of the model; this program has version { $now }
mark-model-early = recorded with an early version of the model; this program has version { $now }
mark-verified = verified
mark-verified-line = all { $digests } digests agree
mark-not-verified = NOT VERIFIED: comes out differently from tick { $tick } (line { $line }) on; recorded with program { $recorded }, replayed with { $now }
mark-rules-broken = the rules are broken: { $error }

## run

run-no-record = the record cannot be written: { $error }
run-job-over = The job was over before the script was.
run-time-over = Twelve simulated hours were over before the script was.
run-time-up = Twelve simulated hours passed.
run-technician-done = The technician had no more to do, but the job was not over.
run-stopped = { $file }:{ $line }: `{ $step }` stopped the script: { $reason }

# Names of the lines, at most nine characters.
run-job = job
run-job-line = { $scenario }, seed { $seed }
run-played-by = played by
run-ended = ended
run-time = time
run-time-line = { $time } simulated
run-refused = refused
run-result = result
run-record = record

## A program without a window

window-playing = playing { $job } (seed { $seed }, { $help })
window-playing-learner = playing { $job } (seed { $seed }, { $help }, { $learner })
window-this = this
window-none = quarterturn: { $what } needs a window, and this program was built without one; without one, use `quarterturn run`, `mark`, `script`, `preview`, `check` or `explain`

## fidelity

fidelity-table-broken = a table of the project is broken: { $error }
fidelity-set-aside = not used   { $file }: { $rows } rows: { $reason }
fidelity-count = { $checks } checks, { $rows } rows: { $pass } pass, { $known_miss } known misses, { $fail } fail
fidelity-no-table = { $folder }: there is no table (.csv) in this folder
fidelity-not-used = { $file }: not used: { $why }
fidelity-unknown = { $file }: passed over: neither its name nor its columns say what it is (see docs/reference-tables.md)
fidelity-written = { $files } files written to { $folder }

## Help: each command (`about`), its whole text where there is more, and its arguments.
## A text that stands alone ends without a full stop.

help-quarterturn = A practice simulator for setting gas pressures on a single- or two-stage furnace
help-quarterturn-long =
    A practice simulator for setting gas pressures on a single- or two-stage furnace.

    Without a command it opens the window. The appliance's own plate and instructions, the local code and a licensed technician decide on real gas.

    Exit codes: 0 fine, 1 findings, 2 usage, 3 files, 4 a file of a newer format.
help-play = Open the window on one job
help-scenario = A scenario that comes with the program, by its id, or a scenario's file
help-seed = The seed that the job's numbers are drawn with
help-play-level = How much help there is
help-learner = Who plays, for the record: an id that a class agrees on, not a secret
help-play-coached = Led step by step
help-play-solo = A hint when asked
help-run = Play a job without a window and mark it
help-run-script = Play this script
help-run-technician = Let the reference technician play
help-run-record = Write the record to this file
help-json-object = Print one JSON object
help-mark = Replay records, verify them and mark them
help-mark-records = Records
help-json-array = Print one JSON array
help-script = Print the script that does what a record tells, tick for tick
help-script-record = The record
help-preview = Print what a correct meter would show at rest, on each firing level and under full connected load, as the job is found, beside the same house without faults and with everything set as it should be. A star marks what differs. For authors: it tells the faults
help-preview-svg = Draw the pressures into this file too
help-prove = Let the reference technician do the job on several seeds, then spoil its work in every way
help-prove-long =
    Let the reference technician do the job on several seeds, then spoil its work in every way.

    It must have full marks on every seed, and each spoiled run must lose exactly its own items. Rules that nothing trips and faults that show the same signs are told. Without a scenario, all that come with the program are proven.
help-prove-scenarios = Scenarios: ids that come with the program, or files
help-prove-seeds = How many seeds, from 0 on (1 to 1000)
help-prove-spoiled = On how many of them the work is spoiled too, for each set of faults and each variant that they draw
help-prove-no-alike = Do not look for faults that show the same signs (that takes the longest)
help-prove-write = Write the page to `proof.md` in this folder instead of printing the findings
help-check = Tell everything that is wrong with scenarios, scripts (`.script`) and records (`.jsonl`)
help-check-files = Files; what is neither `.script` nor `.jsonl` is read as a scenario
help-check-strict = Let warnings count as findings: exit code 1
help-check-json = Print one JSON array of files with what is wrong with each
help-explain = Explain a field of a scenario, a fault, a rule, a competency, a mistake, or all fields
help-explain-field = A field by its path, as in `furnace.plate.made_for.high`, or by its name alone; a fault as `faults.plugged_orifice`; a rule, a competency or a mistake by its id, as `left-outside-band`, `C05` or `M39`; `rules`, `competencies` or `mistakes` for all of them; `scoring` for what slips cost. Without it, the fields are printed
help-explain-write = Write the page on the format to `scenario-format.md` and the one on coverage to `coverage.md` in this folder instead of printing
help-faults = Print the catalogue of faults: cause, severity, and what is read and seen beside a healthy bench
help-faults-name = One fault by its name; without it, all of them
help-faults-write = Write the page to `faults.md` in this folder instead of printing it
help-fidelity = Hold the model against tables, laws and solvers, and tell how near it comes
help-fidelity-long =
    Hold the model against tables, laws and solvers, and tell how near it comes.

    Exit code 1 when a check fails; a known miss is told and is no failure.
help-fidelity-json = Print one JSON object with every check, every row and every verdict
help-fidelity-tables = Check the tables (`.csv`) of this folder instead of the project's own references; their layout is in docs/reference-tables.md
help-fidelity-cases = Run the networks, lines, transients and properties of these files instead; their layout is in docs/reference-cases.md
help-fidelity-write = Write the guide, fidelity.md and its figures, into this folder

help-examine = Try the marks from both sides: good work in other manners must lose nothing, blind work must not pass
help-examine-long =
    { help-examine }

    Fair runs do the technician's work in other manners, composed at random; blind runs do the ritual well and think nothing. Without a scenario, all that come with the program are examined.
help-examine-seeds = How many seeds of each job, from 0 on (1 to 1000)
help-examine-from = Number of the first fair run; each number draws its own manners
help-examine-runs = How many fair runs of each job, spread over the seeds (0 to 1000)
help-examine-faults = Try bare benches with one fault of the catalogue each, at three severities and on both fuels, instead of jobs; each bench has fair runs of its own numbers
help-examine-write = Write the page to `examined.md` in this folder instead of printing the findings

## What a job sounds like

help-sound = Let a job sound without a device: write what is heard of it to a file, and draw it
help-sound-script = Play this script instead of a cycle with a port opened under gas after it
help-sound-wav = Write what is heard, one channel at 48 kHz, into this file
help-sound-write = Draw the cycle and the voices, sound/cycle.svg and sound/voices.svg, into this folder
sound-too-long = quarterturn: what came after { $minutes } minutes was not listened to
sound-written = quarterturn: the pictures are in { $folder }
sound-nothing-asked = quarterturn: nothing was written; say --wav FILE or --write FOLDER
sound-cycle-title = What is heard on { $scenario }: captions, level and spectrum
sound-voices-title = The voices at full loudness
sound-time = time, s
sound-level = level, dB of full scale
sound-band = third of an octave, Hz
sound-shade = dB of full scale
