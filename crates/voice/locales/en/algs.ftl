# Algorithms, sheets of them, and methods compared. $kind is "corner" or "edge".

break-least = Not solved yet: { $unsolved }. A new cycle begins at { $target }, letter { $letter }: so the whole takes the least estimated time.

verdict-right = right
verdict-empty = no algorithm
verdict-other-case = solves { $actual } instead
verdict-inverse = solves the inverse, { $actual }
verdict-without-buffer = is a three-cycle without the buffer: { $pieces }
verdict-other-kind = is a three-cycle of { $kinds }: { $pieces }
verdict-leaves-turned = is right, but leaves the puzzle turned by { $rotation }; undo that at the end
verdict-not-a-three-cycle = is not a three-cycle; it moves { $moved }
verdict-turned = is not a three-cycle; it moves { $moved } and leaves the puzzle turned by { $rotation }
verdict-does-nothing = does nothing
verdict-unreadable = cannot be read, sign { $at }: { $what }
verdict-too-long = has { $turns } moves; at most { $most } are applied
verdict-no-case = the case “{ $named }” cannot be read: two targets are needed, on two different pieces, neither of them the buffer's
verdict-place = line { $line }, column { $column }

sheet-empty = The sheet is empty.
sheet-no-table = Line { $line }: this cannot be read as a table. { $what }
sheet-too-much = Line { $line }: up to here the sheet comes to more than { $cells } cells or { $bytes } MB, which is the most that is read. Leave out what belongs to no case, or divide it into several files.
sheet-no-header = This is neither a list nor a grid. A list begins with a line of column names: first, second (or pair) and algorithm, and perhaps kind, buffer, notes. A grid has targets along the top and the left side. Here the first line is: { $found }
sheet-column-missing = The list has no column “{ $column }”.
sheet-kind-unknown = It cannot be told whether these are corners or edges; say --kind corner or --kind edge.
sheet-order-unknown = It cannot be told which side of the grid has the first target: { $right } cells are right when it stands at the left, and as many when it stands at the top. Say --first left or --first top.
sheet-no-buffer = “{ $text }” is no { $kind } sticker, so it cannot be the buffer.
sheet-several = The sheet has cases of several kinds or buffers: { $found }. Choose with --kind and --buffer.
sheet-no-cases = The sheet has no case that can be read.
account-cells = { $cells ->
    [one] 1 cell
   *[other] { $cells } cells
}: { $right } right, { $wrong } wrong, { $empty } empty, { $unread } not understood.
account-wrong = Wrong: { $places }.
account-unread = Not understood: { $places }.
account-twice = { $count ->
    [one] One algorithm is there twice: { $places }.
   *[other] { $count } algorithms are there twice: { $places }.
}
account-contradictions = { $count ->
    [one] One case has a right algorithm and one that does something else: { $places }.
   *[other] { $count } times a case has a right algorithm and one that does something else: { $places }.
}
account-asides = { $count ->
    [one] One text that belongs to no case is kept.
   *[other] { $count } texts that belong to no case are kept.
}
account-more = { $list }; and { $more } more
remark-no-head = No line names the columns; they were told by what is in them.
remark-kind = By what the algorithms do, these are { $kinds }.
remark-other-buffer = The sheet names the buffer { $found }, you asked for { $asked }; taken is { $taken }.
remark-two-cases = Line { $line } names two cases, “{ $text }” and “{ $word }”; the second is taken.
sheet-coverage = { $kinds }, buffer { $buffer }: { $covered } of { $cases } cases have a right algorithm.
sheet-means = On average { $moves } moves (a slice counted as one), { $seconds } s estimated.
sheet-missing = Missing: { $cases }
sheet-worst = The hardest, with estimated seconds:
sheet-slow = Much slower than the best known:
sheet-slow-line = { $case }: { $seconds } s, but { $best } s: { $algorithm } ({ $origin })
sheet-filled = Filled in { $count } cases: { $by }.
sheet-wrote = Written to { $file }.
import-question = { $what } Nothing was written. Say --kind or --buffer, or --anyway to write it as it is.
sheet-nothing-to-fill = Nothing to fill in.
origin-sheet = sheet
origin-inverse = inverse
origin-mirror = mirror
origin-rotation = rotation
origin-search = search
column-letters = letters
column-targets = targets
column-algorithm = algorithm
column-moves = moves
column-notes = notes
column-check = what it does
grid-title = Three-cycles of { $kinds }, buffer { $buffer }
grid-refused = Not right
grid-first-second = first ↓ second →

find-one-or-all = Say which case: two targets, as UBR RDF or letters, or --all.
find-two-targets = “{ $text }” should be two targets, as UBR,RDF.
find-twist-takes = --twist takes two corners, as UBL,DFR
find-flip-takes = --flip takes two edges, as UF,UB
find-exchange-takes = --exchange takes two corners and two edges, as UFR,UBR,UF,UR
find-last-takes = --last takes two corners and two edges, as UBR,DFR,UF,UR
find-other-kind = { $text } is { $kind ->
    [corner] a corner
   *[edge] an edge
}; { $takes }.
find-other-count = { $takes }; “{ $text }” has { $count }.
find-same-piece = { $first } and { $second } are on one { $kind }; different ones are needed.
find-unreachable = No turns do that: { $what }
find-only-on = Three-cycles are searched for corners and edges of the 2x2 and 3x3.
find-memory = Sequences up to { $length } turns need { $needed } MiB of memory; { $allowed } MiB are allowed. With these turns that is enough for --longest { $possible }. Take that, fewer turns (--moves), or more --memory.
find-memory-any = No machine has the memory for sequences up to { $length } turns; { $allowed } MiB are allowed, which with these turns is enough for --longest { $possible }.
find-no-memory = The system did not give the { $needed } MiB of memory that the search needs.
find-stopped = The search was stopped.
find-fault = A sequence that was found does something else when it is applied. Nothing was given out; this is a fault of the program.
find-size = “{ $text }” is no amount of memory; write it as 4G, 512M or a number of bytes.
find-reached = { $states } states at { $length } turns
find-searching = class { $class } of { $classes }, { $length } turns
find-line = { $case }: { $shortest } turns, proven shortest
find-easiest = { $count ->
    [0] Searched up to { $searched } turns; a longer one may be easier than the first.
    [one] The first has the lowest estimated time of all.
   *[other] The first { $count } have the lowest estimated times of all.
}
find-line-unproven = { $case }: { $shortest } turns; none of { $searched } or fewer, proven, but perhaps some between
find-rings-made = { $sequences } sequences of up to { $length } turns
find-rings-metric = Of wings and centres every turn counts one, whichever layers it turns: --metric slice.
find-rings-longest = Of wings and centres sequences of up to { $most } turns are searched: --longest { $most } or less.
find-rings-several = Corners and edges are searched with all their stickers, on the 2x2 and the 3x3.
find-rings-many = With these turns there are { $count } sequences of { $length } turns, too many to search; at most { $most } are made. Take fewer turns (--moves) or --longest less.
find-rings-no-turns = There is no turn to search with; turns of the whole puzzle do not count.
find-none = { $case }: none up to { $searched } turns, proven
find-more = and { $count } more
turns-empty = There are no turns to search with.
turns-unknown = “{ $text }” is no block of turns; U, Uw, u, 2U, M or x are.
turns-not-there = A { $size } has no turn { $turn }.
turns-no-inverse = { $turn } is there, the turn that undoes it is not; the search needs both.
turns-free = { $turn } counts nothing in this metric, so nothing is shortest; say --metric execution.
turns-size = Algorithms are searched on the 2x2 and the 3x3, not on a { $size }.
metric-unknown = “{ $text }” is no metric; known are half, quarter, slice, execution.

fit-columns = The timings need two columns, algorithm and seconds; here the first line is: { $found }
fit-row = Line { $line }: { $what }
fit-no-number = “{ $text }” is no number of seconds.
fit-too-much = up to here the timings have more than { $most } moves in all; give fewer of them.
fit-too-few = { $given } timings are too few for { $costs } costs; at least { $needed } are needed.
fit-bad-time = Timing { $place }: { $seconds } is no time; more than zero seconds are needed.
fit-no-turns = Timing { $place } has no turns.
fit-parts = Held-out errors need at least 2 parts, not { $parts }.
fit-heading = Fitted to { $count } timings. Seconds for each thing the hands do, with the range that 95 % of redrawn timings gave:
fit-errors = Error { $error } s on these timings, { $heldout } s on timings held out; before the fit { $before } s, by the mean alone { $mean } s.
fit-never = never occurs; kept

method-slice-not-first = With a parity algorithm, slice-swap edges have to be carried out first: say execution = ["edge", "corner"] under [memo], or by = "exchange" under [parity].
method-not-for-kind = No layer between the faces has { $kinds } in it, so slice-swap is no method for them.
method-between-corners-and-edges = With both corners and edges, the { $kinds } are carried out before or after the two, not between them: change execution under [memo].
method-no-exchange = Your corner algorithm exchanges no two edges, so none can be exchanged in the trace; choose parity by = "algorithm".
method-no-case = There is no algorithm for { $first } { $second }.

parity-exchanged = Parity: the corners have an odd number of letters, so { $first } and { $second } were taken for each other in the trace; the last corner letter exchanges them. Letters: { $counts }.
estimate-line = Estimated { $seconds } s.
estimate-saving = Estimated { $seconds } s; with the first break in letter order each time it would be { $naive } s.
step-pair = { $first }{ $second }
step-found = (found by search)
step-turned = turned pieces
solution-heading-methods = Carried out:

compare-two = Name at least two methods to compare, as: hoodwink compare one-swap three-cycle
compare-unknown = “{ $text }” is no method; known are one-swap, slice-swap, three-cycle, two of them joined by + for corners and edges (as three-cycle+slice-swap), followed by ,least ,fewest ,exchange or ,cycles, or a conventions file.
compare-not-corners = “{ $text }” is a method for edges only; for corners there are one-swap and three-cycle, as one-swap+{ $text }.
compare-heading = { $count } uniformly random states, seed { $seed }
compare-letters = letters
compare-algorithms = algorithms
compare-moves = moves
compare-seconds = estimated seconds
compare-mean = mean
compare-difference = { $second } less { $first }: { $mean } ({ $low } to { $high })
compare-confidence = 95 % confidence for the mean of the paired differences:
compare-marked-mean = mean { $mean }

# The page of algorithms. $has is "right", "slow", "wrong" or "nothing"; $layout is "list", "rows" or "columns".
way-seconds = { $seconds } s
way-moves = { $count ->
    [one] 1 move
   *[other] { $count } moves
}
way-no-regrip = no regrip
way-regrip = { $hand ->
    [left] left
   *[right] right
} hand regrips before move { $move }
way-refused = Not taken in: it { $verdict }.
way-taken = Taken into the sheet.
way-dropped = Taken out of the sheet.
sheet-cleared = All algorithms of this buffer were taken out.
sheet-layout = { $layout ->
    [rows] Read as a grid, the first target at the left.
    [columns] Read as a grid, the first target along the top.
   *[list] Read as a list.
}
sheet-too-long = This text is longer than { $most } MiB; that is no sheet.
cell-said = { $case }: { $has ->
    [right] right
    [slow] right, but a much easier one is known
    [wrong] does something else
   *[nothing] no algorithm
}
cases-matching = { $count ->
    [0] No case matches.
    [one] 1 case matches.
   *[other] { $count } cases match.
}
case-meaning = The piece in the buffer { $buffer } goes to { $first }, the one there to { $second }, the one there into the buffer.
page-kind-unknown = It cannot be told whether these are corners or edges; choose it before you open the file.
page-order-unknown = It cannot be told which side of the grid has the first target: { $right } cells are right when it stands at the left, and as many when it stands at the top. Choose it before you open the file.
page-find-memory = Sequences up to { $length } turns need more memory than the { $allowed } MiB that a page may take; with these turns that is enough for { $possible }. Take fewer turns, or a shorter length.
buffer-follows = The buffer is now { $buffer }, as the method needs it or usually has it.
order-follows = The { $kinds } are now carried out first, so that the slice is put right before the parity algorithm.
sheet-unused = Trace and Play do not use these algorithms: for that, choose three-cycles and the buffer { $buffer } for the { $kinds } in Conventions.

# One mistake that most rows share.
sheet-exchanged = Most rows solve the inverse of what they say: probably the two letters stand in the other order.
sheet-other-buffer = Most algorithms leave the buffer alone: probably they are for another buffer.
sheet-other-kind = Most algorithms cycle pieces of another kind: probably they are not for this kind.
sheet-no-case-read = Most cases cannot be read: probably the kind, the buffer or the letters are other ones.
