# Ob ein Memo oder die Züge eines Versuchs stimmen, und wenn nicht, wo sie abweichen.

check-right = Das Memo stimmt: ausgeführt löst es den Würfel.
check-kind-right = { $kinds }: richtig.
check-kind-wrong = { $kinds }: { $count ->
    [one] ein Fehler.
   *[other] { $count } Fehler.
}
check-right-held = Das Memo stimmt, mit { $up } oben und { $front } vorn gehalten: ausgeführt löst es den Würfel.
check-right-if-held = Das Memo stimmt, wenn du ihn mit { $up } oben und { $front } vorn hältst. { $made ->
    [nothing] Du hast ihn gelassen, wie er gescrambelt wurde; er sollte mit { $planned } gedreht werden.
   *[other] Du hast ihn mit { $made } gedreht; { $planned ->
        [nothing] er sollte bleiben, wie er gescrambelt wurde.
       *[other] es sollte { $planned } sein.
    }
}
check-right-if-scramble-turn-left-out = Das Memo stimmt für den Scramble ohne Zug { $turn }, { $planned }. Wurde er ausgelassen?
check-right-if-scramble-turn-wrong = Das Memo stimmt für den Scramble mit { $made } statt { $planned } als Zug { $turn }.
check-right-if-scramble-turn-added = Das Memo stimmt für den Scramble mit { $made } zusätzlich vor Zug { $turn }.
check-right-if-kinds-exchanged = Das Memo stimmt, wenn { $kinds } vertauscht werden.
check-right-if-other-buffer = Das Memo stimmt für einen anderen Puffer: { $buffers }.
check-buffer-of = { $buffer } bei den { $kinds }
check-leads-to = So ausgeführt, wie es dasteht, lässt das Memo { $pieces } ungelöst.
check-cannot-be-carried-out = So, wie es dasteht, lässt sich das Memo nicht ausführen.
check-unchecked = Nicht geprüft: { $kinds }.

check-letter = Buchstabe { $position } der { $kinds }, { $letter }: { $what }
check-end = Nach dem letzten Buchstaben der { $kinds }: { $what }
check-wrong-sticker = richtiger Stein, anderer Sticker.
check-followed-from-elsewhere = du hast noch einmal bei { $elsewhere } geschaut. { $first ->
    [yes] Schau zuerst bei { $place }.
   *[no] Nach { $before } schau bei { $place }.
}
check-buffer-letter = das ist auf dem Stein des Puffers selbst, für den nichts gemerkt wird.
check-closed-early = der Zyklus ist noch nicht geschlossen; ein Buchstabe fehlt.
check-closed-late = der Zyklus war schon geschlossen.
check-solved-already = dieser Stein war von Anfang an richtig.
check-break-on-solved = ein neuer Zyklus, begonnen bei einem gelösten Stein.
check-turned-wrong-way = { $kind ->
    [corner] die Ecke ist andersherum verdreht.
   *[other] eine an ihrem Platz gekippte Kante braucht ihre beiden Buchstaben.
}
check-letter-missing = davor fehlt ein Buchstabe.
check-other-letter = das liegt dort nicht.
check-left-out = { $pieces } { $more ->
    [0] { $count ->
        [one] fehlt.
       *[other] fehlen.
    }
   *[other] und { $more } weitere fehlen.
}
check-followed-from-wrong-sticker = Bei Buchstabe { $position } der { $kinds } hast du { $letter } genommen, einen anderen Sticker des Steins von { $other }, und von dort weiterverfolgt.
check-has-letter = für diesen Stein hast du schon einen Buchstaben: Buchstabe { $number }, { $earlier }.
check-other-letter-between = ein anderer Buchstabe ist an der Reihe.
check-letter-too-many = ein Buchstabe zu viel.
check-letters-exchanged = Die Buchstaben { $position } und { $with } der { $kinds }, { $letter } und { $other }, sind vertauscht.
check-pairs-exchanged = Die Paare { $letter } und { $other } der { $kinds } (ab den Buchstaben { $position } und { $with }) sind vertauscht.
check-instead-there = Dort liegt, was nach { $target } gehört: { $letter }.
check-instead-letter = Richtig ist hier { $letter } ({ $target }).
check-hardly-fits = Kaum ein Buchstabe passt zu diesem Scramble. War es dieser, und so gehalten?
check-more = Und { $count ->
    [one] ein weiterer Fehler.
   *[other] { $count } weitere Fehler.
}
check-instead = Bei { $place } liegt, was nach { $target } gehört: { $letter }.
check-instead-any = Richtig ist hier jeder Buchstabe von { $pieces }{ $more ->
    [0] {""}
   *[other] {" "}oder { $more } weiteren Steinen
}.
check-instead-nothing = Hier ist nichts mehr zu merken.

check-parity-overlooked = Dieser Scramble hat Parität, und du hast keine vermerkt.
check-parity-without-need = Du hast Parität vermerkt, und dieser Scramble hat keine.

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
check-moves-many = { $first } … ({ $count } Züge)
place-whole-letter = Buchstabe { $position } der { $kinds }, { $letter }
place-whole-letters = Buchstaben { $position }–{ $last } der { $kinds }, { $letter }
place-move = { $where }, Zug { $number }
how-letter-left-out = { $where }, wurde nicht ausgeführt: { $planned } fehlt.
how-letter-doubled = { $where }, wurde zweimal ausgeführt.
how-letters-exchanged = { $where }, wurde nach dem nächsten ausgeführt.
how-step-inverted = { $where }: rückwärts gemacht, { $made } statt { $planned }.
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

memo-unknown-letter = { $kinds }, Spalte { $column }: „{ $found }“ ist keiner deiner Buchstaben; das sind { $letters }.
memo-ambiguous-letters = { $kinds }, Spalte { $column }: diese Zeichen lassen sich auf mehr als eine Weise als Buchstaben lesen; setze Leerzeichen zwischen die Buchstaben.
memo-empty = Das Memo ist leer, und der Würfel ist nicht gelöst.
check-no-kind = Welche Buchstaben sind „{ $text }“? Schreib die Art und ihre Buchstaben, wie wing=KDVA.
check-kind-twice = Die Buchstaben der { $kinds } wurden zweimal genannt.
check-parity-twice = Das Memo vermerkt Parität, und --parity sagt nein. Was gilt?
check-no-memo = Es gibt kein Memo zu prüfen. Gib die Buchstaben mit --corners und --edges an (andere Arten wie --letters wing=KDVA), oder die Züge mit --moves.
