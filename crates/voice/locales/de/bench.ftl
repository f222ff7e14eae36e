# Was die Werkbank vom Würfel in der Hand sagt.

bench-letters = { $letters ->
    [0] nichts zu merken
    [one] 1 Buchstabe
   *[other] { $letters } Buchstaben
}
bench-parity = Parität zwischen den beiden Fäden
bench-letters-of = Buchstaben { $first } bis { $last } von { $all }
bench-letters-of-kind = Die Buchstaben der { $kinds }
bench-next = jetzt { $turn }
bench-moves = { $moves ->
    [one] 1 Zug
   *[other] { $moves } Züge
}
bench-hold = { $up } oben, { $front } vorn
bench-hold-best = Von allen 24 Arten, ihn zu halten, hat diese das kürzeste Memo.
bench-hold-most-centres = Von allen 24 Arten, es zu halten, sind bei dieser die meisten Center schon richtig.
bench-hold-conventions = Deine Festlegungen sagen, ihn so zu halten.
bench-hold-centres = Die Mitten und deine Festlegungen sagen, wie man ihn hält.

bench-first-title = { $letters ->
    [one] Dieser Würfel ist einen Buchstaben lang.
    [2] Dieser Würfel ist zwei Buchstaben lang.
    [3] Dieser Würfel ist drei Buchstaben lang.
    [4] Dieser Würfel ist vier Buchstaben lang.
    [5] Dieser Würfel ist fünf Buchstaben lang.
    [6] Dieser Würfel ist sechs Buchstaben lang.
   *[other] Dieser Würfel ist { $letters } Buchstaben lang.
}
bench-first-text = Jede Perle am Faden ist ein Buchstabe zum Merken: Er sagt, wohin das nächste Teil gehört. Tippe auf „Nächster Buchstabe“ und sieh, warum.

# Woher die Züge der Ausführung kommen.
bench-from-swap = Der Tausch ist der Algorithmus für { $kind } aus deinen Festlegungen: { $moves }
bench-from-slice = Die halben Drehungen der mittleren Schicht folgen aus der Methode in deinen Festlegungen.
bench-from-sheet = Dreierzyklen kommen aus deiner Tabelle mit Algorithmen{ $found ->
    [0] .
   *[other] ; was ihr fehlt, wurde gesucht und gefunden.
}
bench-from-search = Dreierzyklen wurden gesucht und gefunden; eine eigene Tabelle ginge vor.
bench-from-inner = { $kinds }: Für jeden Buchstaben werden die Züge für dieses Memo gesucht und angewandt, bevor sie gezeigt werden.
bench-from-parity = Der Paritätsalgorithmus aus deinen Festlegungen: { $moves }

bench-unsolved = Ungelöst: { $pieces }
bench-all-solved = Alles gelöst
bench-unsolved-many = { $count } Teile ungelöst

bench-cause-as-planned = Alles ging wie geplant.
bench-cause-letter = Am ehesten bei Buchstabe { $number } der { $kinds }.
bench-cause-start = Am ehesten vor dem ersten Buchstaben.
bench-cause-tracing = Am ehesten beim Merken.
bench-cause-recall = Am ehesten beim Erinnern.
bench-cause-execution = Am ehesten beim Drehen.
bench-cause-none = Keine Ursache gefunden.

bench-link-size = Dieser Link ist für einen { $size }. Die Werkbank zeigt bisher { $sizes }.
