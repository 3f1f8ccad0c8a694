# Records of attempts: how one ended, what is wrong with one, what a replay finds.

## How an attempt ended

record-handed-over = handed over
record-ignition = stopped by an ignition
record-stopped = stopped before the hand-over
record-digest = a digest has 16 hexadecimal digits

## What is wrong with a record

record-too-large = A record has at most { $most } bytes; this has { $bytes }.
record-too-many-lines = A record has at most { $most } lines.
record-empty = The file is empty.
record-no-first-line = The first line is not finished, so there is no record to read.
record-line-too-long = The line has { $bytes } bytes; at most { $most } are read.
record-not-utf8 = The line is not UTF-8 text from here on.
record-not-one = This is not a record: `format` is not "{ $format }".
record-bad-header = The scenario's hash is not that of its text, or a name is too long or not plain.
record-newer = The record has version { $version } of the format; this program reads versions up to { $known }. A newer program is needed.
record-no-version = There is no such version of the format; this program reads 1 to { $known }.
record-one-thing = A line tells one thing: `do`, `mark`, `note`, or `end` with its `digest`.
record-no-checksum = The line does not end with its checksum.
record-broken-chain = The checksum does not follow: this line, or a line before it, was changed, added or taken away.
record-otherwise-written = The line is not written as this version writes it: an unknown field, another order or blanks.
record-misplaced = At tick { $tick } after tick { $last }: { $why }.

## Why a line cannot be written

record-full-ticks = a record holds at most a day
record-full-lines = the record has as many lines as it may have
record-full-too-long = the line is longer than a record takes
record-full-ended = the record has its end already
record-full-backwards = a record does not go back in time
record-full-mark = a mark stands every 250 ticks and nowhere else
record-full-header = the header's names or hash are not what they must be

## The report on a fault

record-fault = error[{ $code }]: line { $line }, column { $column }: { $message }
record-fault-field = error[{ $code }]: line { $line }, column { $column }, `{ $field }`: { $message }

## Help during an attempt

record-coached = coached
record-solo = solo

## Replays

replay-scenario = the scenario in the record cannot be read
replay-scenario-why = the scenario in the record cannot be read: { $why }
replay-finished = the attempt has ended
replay-differs = tick { $tick } (line { $line }) comes out differently: { $recorded } recorded, { $replayed } replayed
replay-differs-other = { $difference } (version { $model } of the model wrote it, this is version { $now })
replay-differs-early = { $difference } (an early version of the model wrote it, this is version { $now })
