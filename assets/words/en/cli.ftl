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

explain-unknown = There is no field, fault, rule or competency `{ $name }`. `quarterturn explain` lists the fields, `quarterturn explain rules` the rules.
explain-unknown-near = There is no field, fault, rule or competency `{ $name }`; nearest: { $near }. `quarterturn explain` lists the fields, `quarterturn explain rules` the rules.

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
run-met = essentials met, { $points } of 100 points
run-not-met = not yet met, { $points } of 100 points
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
