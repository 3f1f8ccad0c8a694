# `prove`: what a proof of scenarios found, in lines and as a page of Markdown.

## The page

proof-page =
    # Proof of the scenarios

    This page is made by `quarterturn prove --seeds 20 --write docs`; a test proves every scenario anew on
    its first seeds and holds the rows against this page.

    A scenario proves itself. The reference technician does the job on each seed, seeing and doing only
    what a person can see and do, and finds what is wrong by what it reads, not by looking into the file;
    it must finish with full marks. Then its work is spoiled: a step dropped, swapped, hurried or botched,
    forked from the good run at that point, on the first seed of each set of faults and each variant that a
    job draws. Each spoiled run must lose exactly its own items. Ways that a
    job gives no occasion for are not tried on it.

    The technician's marks show that a job can be solved and that the marking is consistent. They say
    nothing about real gas: there the appliance's plate and instructions, the local code and a licensed
    technician decide.
proof-columns = | scenario | seeds solved | spoiled runs right | the same signs as |
proof-scenario = | { $title } (`{ $scenario }`) | { $solved } of { $seeds } | { $right } of { $runs } | { $same } |
proof-same-none = no other fault
proof-untripped = Rules that no spoiled run of any scenario tripped: { $rules }.
proof-alike-none = Faults that show the same signs as another on the healthy bench, { $fuel }: none.
proof-alike = Faults that show the same signs as another on the healthy bench, { $fuel }:
proof-alike-pair = { $one } and { $other }
proof-seed-columns = | seed | faults | taken for | ending | points | time | actions |
proof-no-points = –
proof-spoiled-columns = | spoiled, seed { $seed } | forked at | lost | points |

## Lines

proof-solved = { $scenario }: { $solved } of { $seeds } seeds solved
proof-spoiled = { $right } of { $runs } spoiled runs lost exactly their own items
proof-misjudged-seed = seed { $seed }, { $misjudged }
proof-no-rule = rules that no spoiled run tripped: { $rules }
proof-same-signs = shows the same signs as: { $faults }
proof-stopped = seed { $seed } ({ $faults }): { $why }
proof-unsolved = seed { $seed } ({ $faults }): points { $points }, ending { $ending }
proof-finding = { $rule }: { $seen }
proof-refused = refused { $refused }
proof-taken-for = taken for: { $faults }
proof-misjudged = “{ $spoiled }” forked at { $time }: should lose { $wanted }, lost { $lost }
proof-misjudged-stopped = “{ $spoiled }” forked at { $time }: should lose { $wanted }, lost { $lost } ({ $why })
proof-nothing = nothing
proof-fault-at = { $fault } at { $severity }
proof-no-ending = none
proof-in-service = in service
proof-owner-called = runs, owner called
proof-shut-off = shut off and tagged

examined-summary = { $scenario }: { $fair } of { $runs } fair runs lost nothing; { $caught } of { $blind } blind runs judged rightly
examined-unfair = fair run { $run }, seed { $seed } ({ $manners }): { $lost }
examined-passed = blind run, seed { $seed }: met by "{ $habit }"
examined-bench = { $fuel } { $fault }({ $severity })
examined-bench-bare = { $fuel } { $fault }
examined-no-ending = { $bench }: not tried, the technician's ending cannot be right
examined-page-head =
    # The marks tried from both sides

    Made by `quarterturn examine --write docs`. A fair run is the reference technician's work done in other manners and in another sequence, as a person may do it who works as well: up to six manners and up to six changes of the sequence are composed at random, others on every job. It must lose nothing. A blind run does the ritual well, from the nose at the door to the full cycle, heeds nothing that shows, and ends by one habit. It must not meet the essentials of a job that has anything to find.
examined-page-fair =
    ## Fair runs

    | job | lost nothing |
    |---|---|
examined-page-fair-row = | { $what } | { $right } of { $runs } |
examined-page-manners =
    The same runs by manner: those that had it, others beside it.

    | manner | lost nothing |
    |---|---|
examined-page-sequences =
    The same by what came earlier or later than in the technician's own work. None of it touches what has its fixed place: the nose before the hands, three barriers before a port is opened, zero before a reading, the inlet before a screw, leak fluid before a lighting, everything back before the hand-over.

    | sequence | lost nothing |
    |---|---|
examined-page-blind =
    ## Blind runs

    "caught": essentials not met. "fits": met, and rightly so: the job asks for nothing that the habit leaves undone. "passes": met, a miss.
examined-page-job = job
examined-page-seed = seed
examined-page-passes = **passes**
examined-page-fits = fits
examined-page-caught = caught
examined-page-misses = ## Misses
examined-page-no-misses = None.
