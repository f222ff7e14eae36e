# Results of rounds, and how many puzzles to try.

record-event = { $event ->
    [many] many 3x3 at once, blindfolded
   *[other] { $event } blindfolded
}
record-round = { $event }: best of { $attempts }{ $mean ->
    [three] , with the mean of 3
    [five] , with the average of 5
   *[none] {""}
}. Scored by the edition of { $edition }.
record-attempt = { $number }. { $result }
record-best = Best: { $result }.
record-mean-three = Mean of 3: { $result }.
record-mean-five = Average of 5: { $result }.
record-mean-open = { $kind ->
    [three] The mean of 3
   *[five] The average of 5
} comes when all { $attempts } attempts are made.
record-nothing = There is no result yet.
record-left-aside = { $count ->
    [one] One attempt more than the round has is left aside.
   *[other] { $count } attempts more than the round has are left aside.
}
record-code = As published: { $code }.
record-delegate = At a competition the delegate's word and the current regulations stand.
record-no-result = “{ $text }” is no result. Write a time such as 45.31 or 1:02.50, with penalties as 45.31+2, or DNF, or DNS.
record-sixty = “{ $text }”: behind a colon, minutes and seconds go up to 59.
record-too-long = “{ $text }” is longer than anybody solves.
record-not-many = “{ $text }” is no result of many at once. Write solved and tried, then the time: 8/9 45:32; or DNF, or DNS.
record-no-code = { $text } stands for no published result.
record-at-line = Line { $line }: { $what }
record-no-name = Line { $line } has no name: write a name, a colon, and the attempts.
record-no-edition = There is no edition of { $text } here. Known: { $known }.
record-no-event = There is no event “{ $text }” here. Known: { $known }.
record-no-attempts = No attempt is given.

many-success = { $right } of { $of } came right: { $percent }, most likely { $low } to { $high }.
many-best = Most points are to be expected with { $puzzles } puzzles: { $points } on average.
many-chance = At least { $points } { $points ->
    [one] point
   *[other] points
}: best with { $puzzles } puzzles, { $chance }.
many-head-puzzles = puzzles
many-head-limit = limit
many-head-time = your time
many-head-points = points
many-head-none = no result
many-head-chance = at least { $points }
many-edge = That is the most that was looked at: more puzzles may bring more, see with --most.
many-rests = This rests on puzzles that come right or not independently of each other, and on your times growing evenly.
many-no-success = “{ $text }” is no success rate. Write 24/30, 0.8 or 80%.
many-care = Hours of practice strain hands and wrists: rest between attempts.
