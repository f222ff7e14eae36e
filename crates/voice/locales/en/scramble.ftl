# Scrambles and the conditions that are set for them.

condition-placed = Column { $column }: { $what }
condition-quoted = “{ $text }”
condition-expected = “{ $found }” is not understood; needed is { $expected }.
condition-expected-end = The condition ends here; needed is { $expected }.
condition-unknown-feature = “{ $word }” is no feature; known here are { $known }.
condition-unknown-word = { $feature } is never “{ $word }”; it is one of { $known }.
condition-no-pair = “{ $word }” is no pair; write two letters, as AB, or two stickers with a blank between.
condition-number-too-large = The number is too large; no figure is over 99.
condition-range-backwards = The range goes from { $from } down to { $to }; write the smaller number first.
condition-only-equal = A word or a range is compared by = or != only.
condition-too-deep = Brackets and “not” are nested more than { $most } deep.
condition-too-many = More than { $most } different features of one kind cannot be counted together; leave some out.
condition-size-not-covered = Conditions can be set for the 2x2, 3x3 and 4x4, not for a { $size }.

condition-needs-condition = a feature as corner.breaks or parity, “not” or “(”
condition-needs-comparison = one of = != < <= > >=
condition-needs-value = a number, a word or a feature
condition-needs-number = a number
condition-needs-dot = a dot and a name, as corner.breaks
condition-needs-name = the name of a feature
condition-needs-open = “(”
condition-needs-close = “)”
condition-needs-item = a letter or the name of a sticker
condition-needs-joint = “and”, “or” or the end

condition-never-alone = No scramble meets “{ $part }”: { $why }
condition-never-together = No scramble meets { $parts } together: { $why }
never-parity = corners and edges are always both odd or both even.
never-twists = the twists of all corners always add up to whole turns.
never-flips = the number of flipped edges is always even.
never-parity-and-turning = corners and edges agree in parity, twists add up to whole turns, and flips are even in number; these laws together do not allow it.
never-of-buffer = { $sticker } is on the buffer's own piece, which is never memorised.
never-one-corner-stays = scrambling leaves one corner of an even cube in its place; there are such states only where the puzzle may also lie anyhow.
never-out-of-range = { $feature } goes from { $least } to { $most }.
never-contradiction = they contradict each other, or there are too few pieces.

lesson-unknown = There is no lesson “{ $name }”; there are { $known }.
lesson-not-for = The lesson “{ $name }” does not exist for a { $size }.
lesson-one-cycle = One cycle only
lesson-first-break = The first cycle break
lesson-closing-elsewhere = A cycle closed at another sticker than it began at
lesson-two-breaks = Two cycle breaks in one kind
lesson-twisted-corner = One twisted corner
lesson-buffer-solved = The buffer corner is solved from the start
lesson-buffer-twisted = The buffer corner is twisted in its place
lesson-parity = Parity
lesson-no-parity = No parity
lesson-flipped-edges = Flipped edges
lesson-short-memo = A short memo
lesson-typical-memo = A memo of usual length
lesson-long-memo = A long memo

share-exact = { $matching } of { $total } states: 1 in { $ratio }
share-estimated = This cannot be counted, so it was tried: of { $tried } states { $share } % meet it; in 95 of 100 such trials the true share lies within the bounds, here { $low } % to { $high } %.

scramble-progress = { $done } of { $count } scrambles
scramble-tries = { $tries } states tried for one scramble
scramble-tables = Tables for the 4x4, made once: { $done } %
scramble-solved = (solved: no turns)
scramble-sheet-too-many = A sheet holds at most { $most } scrambles; ask for fewer with --count.
scramble-official = At a competition the official program, the current regulations and the delegate's word stand.

sheet-title = Scrambles for the { $size }
sheet-answers = Answers
sheet-picture = The scrambled puzzle
sheet-holding = Scramble with { $up } up and { $front } in front, then compare with the picture.
sheet-condition = Chosen for: { $condition }
sheet-seed = Made by hoodwink scramble --seed { $seed }
sheet-care = Hours of fast turning strain hands and wrists: take breaks, and stop when it hurts.
