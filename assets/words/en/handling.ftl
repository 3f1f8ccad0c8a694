# What the hand does on a part itself, beside the part's name.

handling-press = Press: { $act }
handling-turn = Turn it: drag round it, wheel, or ← →
handling-lever = Swing it: drag, wheel, or ← →
handling-brush = Brush it with a few strokes
handling-wipe = Wipe it with a few strokes
handling-smell = Stay there a moment to smell
handling-probe = Hold the detector there a moment
handling-pull = Pull the hose away
handling-refused = ✗ { $why }
