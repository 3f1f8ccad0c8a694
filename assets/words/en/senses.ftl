## Captions of sounds

sound-inducer = inducer hums
sound-inducer-high = inducer, high speed
sound-burners = burners
sound-burners-low = burners, quiet
sound-burners-high = burners, full
sound-blower = blower runs
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
