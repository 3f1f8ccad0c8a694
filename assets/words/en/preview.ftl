# `preview`: a job as it is found, beside the healthy bench. Columns of the table have 8 to 20 characters.

preview-title = { $scenario }, seed { $seed }: what a correct meter would show
preview-plate = plate { $model } ({ $fuel })
preview-plate-label = plate { $model } ({ $fuel }, from the conversion label)
preview-figures = inlet { $inlet_least } to { $inlet_most }, manifold { $manifold } in. w.c.; input { $input } Btu/h
preview-fault = fault: { $fault } { $severity }
preview-state = state
preview-supply = supply
preview-inlet = inlet
preview-manifold = manifold
preview-input = input
preview-of-high = of high
preview-others = others
preview-found = found
preview-healthy = healthy
preview-differs = * differs from the healthy bench: 0.05 in. w.c. or 1 % of a rate, or more
preview-missed = not reached: { $missed }
preview-control = the control says: { $status }

## The job's own manometer

own-meter-title = this job's { -manometer }, its zero not set
own-meter-inlet = at the inlet
own-meter-manifold = at the manifold
own-meter-dark = nothing
own-meter-over = over its range

## The picture

picture-title = { $scenario }, seed { $seed }
picture-supply = behind the supply regulator
picture-inlet = inlet
picture-manifold = manifold
picture-found = as found
picture-healthy = healthy; shaded: what is allowed; a star: differs; in. w.c.
