# What the bench says of the puzzle in hand.

bench-letters = { $letters ->
    [0] nothing to memorise
    [one] 1 letter
   *[other] { $letters } letters
}
bench-parity = parity between the two threads
bench-letters-of = letters { $first } to { $last } of { $all }
bench-letters-of-kind = The { $kinds }’ letters
bench-next = { $turn } is next
bench-moves = { $moves ->
    [one] 1 move
   *[other] { $moves } moves
}
bench-hold = { $up } up, { $front } in front
bench-hold-best = Of all 24 ways to hold it, this one has the shortest memo.
bench-hold-most-centres = Of all 24 ways to hold it, this one has the most centres right already.
bench-hold-conventions = Your conventions say to hold it this way.
bench-hold-centres = The centres and your conventions fix how to hold it.

bench-first-title = { $letters ->
    [one] This cube is one letter long.
    [2] This cube is two letters long.
    [3] This cube is three letters long.
    [4] This cube is four letters long.
    [5] This cube is five letters long.
    [6] This cube is six letters long.
   *[other] This cube is { $letters } letters long.
}
bench-first-text = Each bead on the thread is a letter to remember: it tells where the next piece belongs. Press Next letter and see why.

# Where the moves of the execution come from.
bench-from-swap = The swap is the { $kind } algorithm of your conventions: { $moves }
bench-from-slice = The half turns of the middle layer follow from the method in your conventions.
bench-from-sheet = Three-cycles come from your sheet of algorithms{ $found ->
    [0] .
   *[other] ; what it lacks was found by search.
}
bench-from-search = Three-cycles were found by search; your own sheet would be used instead.
bench-from-inner = { $kinds }: for each letter the moves are found for this memo and applied before they are shown.
bench-from-parity = The parity algorithm of your conventions: { $moves }

bench-unsolved = Unsolved: { $pieces }
bench-all-solved = All solved
bench-unsolved-many = { $count } pieces unsolved

bench-cause-as-planned = All went as planned.
bench-cause-letter = Most likely at letter { $number } of the { $kinds }.
bench-cause-start = Most likely before the first letter.
bench-cause-tracing = Most likely while memorising.
bench-cause-recall = Most likely while recalling.
bench-cause-execution = Most likely while turning.
bench-cause-none = No cause found.

bench-link-size = This link is for a { $size }. The bench shows { $sizes } so far.
