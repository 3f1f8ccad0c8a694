## The result

result-met = Met: every essential. { $time } of simulated time.
result-not-met = Not yet met. Missing: { $missing }. { $time } of simulated time.
result-ended-by-itself = No verdict: gas lit at a port that was found open, before anybody here could know. Nothing is charged; do the job again. { $time } of simulated time.
result-not-handed-over = Not yet met: not handed over. { $time } of simulated time.
result-not-handed-over-missing = Not yet met: not handed over. Missing already: { $missing }. { $time } of simulated time.
finding-rule-version = { $rule }, version { $version }
finding-often = { $seen } { $times } times.

## The page

debrief-title = Debrief: { $job }
debrief-points = { $reached } of { $possible } points.
debrief-again = The same job again
debrief-other-house = Again, another house
debrief-to-jobs = To the jobs
debrief-pressures = Pressures
debrief-causes = What was wrong
debrief-no-cause = Nothing was wrong with this furnace or its supply.
debrief-house = What it means for the house
debrief-night = The night after: twelve hours as you left it
debrief-next = Practice next
debrief-sheet = The job sheet
debrief-found = found
debrief-left = left
debrief-sheet-number = { $what }: { $number }
debrief-worth = What this is worth

## Essentials

essentials-title = Essentials
essentials-met = met
essentials-missed = missed
essentials-not-due = not called for
essentials-open = not handed over
essentials-line = { $mark } { $essential }: { $verdict }

## What was in the job

in-job-title = What was in this job
in-job-nothing = Nothing was wrong here, and everything was found as it should be.

## Findings

findings-title = Findings
finding-serious = ✗ Critical
finding-plain = ✗ Major
finding-slight = – Minor
finding-at = at { $time }
finding-at-name = { $finding }: show { $time } in the traces
finding-seen = Seen
finding-true = True
finding-why = Why it matters
finding-practise = Practice next
finding-rule = Rule: { $rule }
finding-point = 1 point
finding-points = { $points } points
finding-lost = −{ $points }
finding-worth = worth { $points }; the findings of this kind cost { $most } in all

## Traces

trace-minutes = { $minutes } min
trace-at = At { $time }
trace-at-done = At { $time }: { $done }
trace-point = Point at the traces to read them; the ticks are what you did.
trace-summary = Pressures over time.
trace-span = { $trace }: { $lower } to { $upper } { $unit }

## Before the result

marked-no-rules = The rules cannot be read: { $error }.
marked-ignited = Stopped: gas ignited where it must not. { $result }
marked-not-ended = Not ended. { $result }
marked-hints = { $taken } of the { $all } hints on this job taken.
