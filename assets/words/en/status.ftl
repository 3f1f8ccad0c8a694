# The control's status lamp: what is printed beside its flashes, and what it says.

## The chart inside the panel door

lamp-rest = at rest
lamp-working = working
lamp-weak-flame = burning, flame current weak
lamp-switch-open = low pressure switch open
lamp-switch-closed = pressure switch closed with the inducer still
lamp-high-switch-open = high pressure switch open
lamp-low-gas = gas pressure too low
lamp-retry = another try follows
lamp-locked-out = locked out
lamp-stray-flame = flame felt with the gas shut
lamp-limit-open = limit open
lamp-rollout-open = roll-out switch open

## What the control says

status-no-power = dark, no power
status-no-call = waiting, no call for heat
status-switch-closed-at-rest = not starting, pressure switch closed at rest
status-inducer-starting = inducer starting
status-awaits-pressure-switch = waiting for the pressure switch
status-awaits-gas-pressure = waiting for gas pressure, low-gas switch open
status-pre-purge = purging before light-up
status-igniter-warming = igniter warming
status-trial-for-ignition = gas on, waiting for flame
status-flame-proving = flame there, proving it
status-blower-to-come = burning, blower to come
status-blower-to-come-weak = burning, blower to come, flame current weak
status-burning = burning
status-burning-weak = burning, flame current weak
status-burning-low = burning on low
status-burning-low-weak = burning on low, flame current weak
status-high-called = high stage called
status-inducer-to-high = inducer to high
status-awaits-high-pressure-switch = waiting for the high pressure switch
status-burning-high = burning on high
status-burning-high-weak = burning on high, flame current weak
status-limit-open = limit open, gas off
status-rollout-open = roll-out switch open, gas off
status-post-purge = purging after burning
status-blower-off-delay = blower clearing the heat
status-stray-flame = locked out, flame felt with the gas shut
status-retry-no-flame = no flame, trying again soon
status-retry-flame-lost = flame lost, trying again soon
status-retry-pressure-switch = pressure switch did not close, trying again soon
status-retry-gas-pressure = gas pressure too low, trying again soon
status-locked-out-no-flame = locked out after its tries
status-locked-out-flame-lost = locked out, flame lost too often
status-locked-out-pressure-switch = locked out, pressure switch did not close
status-locked-out-gas-pressure = locked out, gas pressure too low

## Fuels

fuel-natural = natural gas
fuel-propane = propane
