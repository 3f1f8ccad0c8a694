## Captions of sounds

sound-inducer = inducer hums
sound-inducer-high = inducer, high speed
sound-burners = burners
sound-burners-low = burners, quiet
sound-burners-high = burners, full
sound-blower = blower runs
sound-blower-slow = blower labors, slow
sound-hiss = gas hisses
sound-bang = a hard, late light
sound-alarm = alarm sounds
sound-relief = regulator relief opens
sound-neighbor-burning = another burner runs

## Smell of gas

smell-none = no smell of gas
smell-faint = a faint smell of gas
smell-clear = a clear smell of gas
smell-strong = a strong smell of gas

## Figures of instruments

figure-temperature = temperature
figure-oxygen = O2
figure-carbon-dioxide = CO2
figure-carbon-monoxide = CO
figure-carbon-monoxide-air-free = CO air-free
figure-flue-temperature = flue gas
figure-excess-air = excess air
figure-flame-current = flame current
figure-voltage = voltage
figure-resistance = resistance
figure-time = time
figure-turns = turns
figure-seconds-per-turn = one turn
# Ohms beyond the range of the meter, as its display says it.
figure-overload = OL { $unit }
