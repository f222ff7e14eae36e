# Ob ein Memo oder die Züge eines Versuchs stimmen, und wenn nicht, wo sie abweichen.

check-right = Das Memo stimmt: ausgeführt löst es den Würfel.
check-kind-right = { $kinds }: richtig.
check-kind-wrong = { $kinds }: { $count ->
    [one] ein Fehler.
   *[other] { $count } Fehler.
}
check-leads-to = So ausgeführt, wie es dasteht, lässt das Memo { $pieces } ungelöst.
check-cannot-be-carried-out = So, wie es dasteht, lässt sich das Memo nicht ausführen.
check-unchecked = Nicht geprüft: { $kinds }.

check-letter = Buchstabe { $position } der { $kinds }, { $letter }: { $what }
check-end = Nach dem letzten Buchstaben der { $kinds }: { $what }
check-wrong-sticker = richtiger Stein, falscher Sticker.
check-followed-from-elsewhere = das liegt bei { $elsewhere }; der Buchstabe davor führt zu { $place }.
check-buffer-letter = das ist auf dem Stein des Puffers selbst, für den nichts gemerkt wird.
check-closed-early = der Zyklus ist noch nicht geschlossen; ein Buchstabe fehlt.
check-closed-late = der Zyklus war schon geschlossen.
check-solved-already = dieser Stein ist schon richtig.
check-break-on-solved = ein neuer Zyklus, begonnen bei einem gelösten Stein.
check-turned-wrong-way = { $kind ->
    [corner] die Ecke ist andersherum verdreht.
   *[other] eine an ihrem Platz gekippte Kante braucht ihre beiden Buchstaben.
}
check-letter-missing = davor fehlt ein Buchstabe.
check-other-letter = ein anderer Buchstabe ist an der Reihe.
check-left-out = { $pieces } { $count ->
    [one] fehlt.
   *[other] fehlen.
}
check-instead = Bei { $place } liegt, was nach { $target } gehört: { $letter }.
check-instead-any = Richtig ist hier jeder Buchstabe von { $pieces }.
check-instead-nothing = Hier ist nichts mehr zu merken.

check-parity-overlooked = Die Parität ist übersehen: die Zahl der Buchstaben ist ungerade.
check-parity-without-need = Parität ist ohne Not vermerkt: die Zahl der Buchstaben ist gerade.

check-moves-right = Die Züge führen den Plan aus und lösen den Würfel.
check-moves-solve = Die Züge lösen den Würfel trotzdem.
check-moves-turn = Ab Zug { $turn }: { $what }

place-letter = Buchstabe { $position } der { $kinds }, { $letter }, { $part ->
    [setup] im Setup
    [undo] beim Zurücknehmen des Setups
   *[algorithm] im Algorithmus
}
place-letters = Buchstaben { $position }–{ $last } der { $kinds }, { $letter }, { $part ->
    [setup] im Setup
    [undo] beim Zurücknehmen des Setups
   *[algorithm] im Algorithmus
}
place-parity = im Paritätsalgorithmus
place-end = nach dem letzten Schritt

how-other-way = { $where }: { $planned } wurde andersherum gedreht, als { $made }.
how-other-amount = { $where }: { $planned } wurde als { $made } gedreht.
how-left-out = { $where }: { $planned } wurde ausgelassen.
how-added = { $where }: { $made } wurde gemacht und gehört nicht dahin.
how-doubled = { $where }: { $made } wurde zweimal gemacht.
how-other-face = { $where }: { $made } wurde statt { $planned } gemacht, an einer anderen Seite.
how-other-width = { $where }: { $made } wurde statt { $planned } gemacht, mit einer anderen Zahl von Schichten.
how-step-left-out = { $where }: der ganze Schritt { $planned } wurde ausgelassen.
how-step-doubled = { $where }: der ganze Schritt { $made } wurde zweimal gemacht.
how-not-undone = { $where }: das Setup wurde nicht zurückgenommen; { $planned } fehlt.
how-undone-wrong-way = { $where }: das Setup wurde nicht zurückgenommen, sondern wiederholt: { $made } statt { $planned }.
how-held = { $where }: der Würfel wurde als Ganzes gedreht, { $made }.
how-broken-off = { $where }: hier enden die Züge; { $planned } fehlt.
how-gone-on = { $where }: der Plan war ausgeführt; { $made } kam danach.
how-otherwise = { $where }: { $made } wurde statt { $planned } gemacht.
how-otherwise-nothing = { $where }: { $planned } wurde nicht gemacht.

memo-unknown-letter = Spalte { $column }: „{ $found }“ ist kein Buchstabe des Schemas ({ $kind }); seine Buchstaben sind { $letters }.
memo-ambiguous-letters = Spalte { $column }: diese Zeichen lassen sich auf mehr als eine Weise als Buchstaben lesen; setze Leerzeichen zwischen die Buchstaben.
memo-empty = Das Memo ist leer, und der Würfel ist nicht gelöst.
check-no-kind = Welche Buchstaben sind „{ $text }“? Schreib die Art und ihre Buchstaben, wie wing=KDVA.
check-kind-twice = Die Buchstaben der { $kinds } wurden zweimal genannt.
check-no-memo = Es gibt kein Memo zu prüfen. Gib die Buchstaben mit --corners und --edges an (andere Arten wie --letters wing=KDVA), oder die Züge mit --moves.
