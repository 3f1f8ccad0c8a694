## The strip at the top: places, time, speed, weather, buttons

strip-here = { $place }, you are here
strip-go = Go to: { $place }
strip-pause = Pause
strip-go-on = Go on
strip-go-on-name = Paused, go on
strip-speed = Speed ×{ $speed }
strip-speed-chosen = Speed ×{ $speed }, chosen
strip-weather = { $degrees } °F outside
strip-weather-high = { $degrees } °F outside, { $feet } ft

# Buttons, each with its name as a screen reader gives it.
strip-hint = Hint
strip-hint-name = Give me a hint, F1
strip-list = List
strip-list-name = What I can see, F3
strip-settings = Settings
strip-cutaway = Cutaway
strip-cutaway-name = Cutaway: what stands behind the sheet steel, F7
strip-leave = Leave
strip-leave-name = Leave the job; it can go on later

## Captions of what is heard, smelled and refused

caption-work-done = the work is done

# Where nose or detector is.
caption-at-floor = just above the floor
caption-at-head = at head height
caption-smell = Here: { $smell }.
caption-door-on = The burner door is on: take it off to see the gas valve.
caption-sniff = Last sniff, { $place }: { $smell }.
caption-detector = Detector { $place }: { $percent } % { -lel }.
caption-ok = OK
caption-danger = Danger: stop, get out, call from outside.

## The slip beside a chosen part

popup-close = Close (Esc)

## The list of what can be seen

sights-title = What I can see (F3 closes)
sights-yard = You stand in the yard.
sights-plant-room = You stand in the { -furnace-room }, in front of the furnace.
sights-gas-valve = You kneel at the furnace's gas valve.
sights-hall = You stand in the hall.
sights-away = You are off the premises, at a safe distance.
# A part, how it stands, and what was noted of it.
sights-part = { $part }: { $state }
sights-part-noted = { $part }: { $state }. { $noted }
sights-before = { $noted } (before the repair)

## Names of parts as they are pointed at

spot-no-low-gas-switch = Inlet pipe, no switch on it
spot-part = { $part }, { $state }

## Settings

settings-title = Settings
settings-unit = Unit
settings-text = Text size
settings-text-window = window
settings-text-projector = projector
settings-scale = Scale
settings-motion = Motion
settings-motion-full = full
settings-motion-reduced = reduced
settings-on = on
settings-off = off
settings-names = Names in the drawing (else while F4 is held)
settings-keys = Letters and digits as keys
settings-sound = Sound
settings-volume = Loudness
settings-speed = Speed at the start
settings-captions = Everything heard that the picture does not show is written as a caption.
settings-close = Close settings

## The tab of the folded job sheet

tab-open =
    Job
    sheet
    F2
tab-fold =
    Fold
    sheet
    F2
tab-open-name = Open the job sheet, F2
tab-put-away = Put away
tab-fold-name = Fold the job sheet, F2

## What a look or a repair has just given

message-noted = Noted: { $note }
message-done = Done: { $repair }.

## Buttons beside a value

stepper-less = { $value }, less
stepper-more = { $value }, more

## On the glass of instruments

glass-power = power
glass-zero = zero
glass-unit = unit
glass-over = over range, { $unit }
glass-room = { $degrees } °F
glass-set = set { $degrees } °F, heat { $switch }
glass-no-call = no call
glass-heat = calls for heat
glass-first-stage = calls first stage
glass-both-stages = calls both stages

## Faces of the other gauges

face-column-empty = { -u-tube }: the water is out
face-column = { -u-tube }: { $lower } in. down at the hose, { $upper } in. up at the other leg
face-dial-past = { -dial-gauge(case: "title") }: the needle is past its range
face-dial = { -dial-gauge(case: "title") }: { $inches } in. w.c.

## What is in hand and what can be done

hand-title = In hand
hand-nothing = nothing
hand-end = End the job
hand-finding = What was wrong
hand-no-ways = { $part }: nothing to do here.
offers-hand = With what you hold
offers-here = Here you can
# A repair that was chosen once: it is done when it is chosen again.
offers-again = { $repair }? Do it

## The card at the end of a job

end-away-title = Off the premises
end-away = You stand at a safe distance. What can be done from here is on the list.
end-handed-over = Handed over
end-in-service = You left the furnace in service.
end-owner-called = You left the furnace running, with the owner of the supply called.
end-shut-off = You left the furnace shut off.
end-ignited-title = Stopped: gas ignited
end-ignited = Gas met a flame or a hot igniter where it must not. On a real job people are burned here. The debrief says how it came to it.
end-step-back = Go back to the step before
end-debrief = Debrief
end-leave = Leave
