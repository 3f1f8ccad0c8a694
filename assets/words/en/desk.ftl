## A job at work in the window

session-no-haste = Time runs no faster than a clock while gas escapes or an alarm sounds: see to that first.
session-not-recorded = This attempt is not being recorded: { $trouble }

## Jobs, attempts and their files

desk-no-job = There is no job called `{ $id }`.
desk-record-too-large = The record is too large.
desk-fuel-or = { $one } or { $other }
desk-minutes-in = { $minutes } minutes in
desk-settings-not-kept = quarterturn: the settings could not be kept: { $error }
desk-result-not-kept = quarterturn: the result could not be kept: { $error }
desk-no-attempt = There is no attempt called `{ $id }`.
desk-record-closed = the record's file is closed

## The window cannot open

program-error = quarterturn: { $error }

display-no-screen = quarterturn: no screen to open a window on; without one, use `quarterturn run`, `quarterturn mark`, `quarterturn preview` or `quarterturn check`
display-no-driver = quarterturn: no graphics driver to draw the window with (a software one is enough); without one, use `quarterturn run`, `quarterturn mark`, `quarterturn preview` or `quarterturn check`
