## The opening page

opening-name = Quarterturn
opening-subtitle = Gas pressures on a single- or two-stage furnace, from arrival to handing over.
# The caution, which stands before everything and under every debrief.
opening-caution-title = Before you start
opening-caution-1 = Quarterturn is a practice simulator. It confers no qualification and is no authority.
opening-caution-2 = On real gas the appliance's own plate and instructions, the local code and a licensed technician decide.
opening-caution-3 = Do not carry a figure or a step from here to a real appliance.
opening-caution-4 = If you smell gas where you are now: no switches, no flames, get everybody out, and call from outside.
opening-caution-read = I have read this

## The list of jobs

opening-list = The ladder
opening-list-keys = Arrow keys go from job to job; Enter starts the one that is chosen.
opening-step-met = { $met } of { $all } met
opening-here = you are here, { $met }
opening-step-here = { $step }, your step, { $met }
opening-step-open = { $step }, unfolded, { $met }
opening-step-folded = { $step }, folded, { $met }
opening-job = { $title }, { $fuel }, { $standing }
opening-job-standing = { $fuel }, { $standing }

## The chosen job

opening-job-line = { $step }, { $fuel }. { $standing }
opening-next = Your next step
opening-chosen = The job that you chose
opening-resume = Go on where you stopped
opening-unfinished = { $title }, { $at }
opening-about = What it is about, what it is practice for, seed
opening-older = Older attempts
opening-help = Help
opening-coached = Led step by step to the first reading, then from reading to reading.
opening-solo = No prompting; a hint when you ask for one.
opening-start = Start
opening-practice = Practice for
opening-practice-only = Evidence of practice only; it confers no qualification.
opening-seed = Seed
opening-seed-same = The same job with the same seed is the same house.
opening-seed-wrong = ✗ A seed is a whole number, 0 to 18446744073709551615.
opening-close = Close Quarterturn

## How a job was tried before

tried-times = { $count ->
    [0] once
    [one] once
    [2] twice
   *[other] { $count } times
 }
tried-never = – not tried
tried-not-met = ✗ tried { $times }, not yet met
tried-met = ✓ essentials met, tried { $times }
help-coached = Coached
help-solo = Solo
