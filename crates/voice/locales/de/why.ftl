# Warum ein Versuch nicht aufging: ein Satz für jede Art von Fehler.

why-as-planned = Alles geschah wie geplant, und der Würfel ist gelöst: nichts ist zu erklären.
why-memo-itself = Alles geschah, wie das Memo es sagt; das Memo selbst löst den Würfel nicht.
why-nothing-found = { $whole ->
    [yes] Weder ein Fehler noch zwei{ $most ->
        [three] { "" } oder drei
       *[two] { "" }
    } führen hierher.
   *[no] Nichts, was geprüft wurde, führt hierher.
} War es dieser Scramble? So gehalten? Hast du früher aufgehört?
why-deeper = Mit --deep werden drei Fehler gesucht.
why-any-other = Ist noch ein anderer Stein ungelöst?
why-ambiguity = { $count ->
    [one] { $whole ->
        [yes] Keine andere Erklärung ist so wahrscheinlich wie die erste.
       *[no] Die erste ist die wahrscheinlichste der geprüften; es kann weitere geben.
    }
   *[other] { $whole ->
        [yes] { $count }
       *[no] Mindestens { $count }
    } Erklärungen sind so wahrscheinlich wie die erste, sie selbst mitgezählt; am Würfel allein sind sie nicht zu unterscheiden.
}
why-slightly = Die erste ist nur wenig wahrscheinlicher als die nächste{ $whole ->
    [yes] .
   *[no] ; es kann weitere geben.
}
why-memo-fault = Das Memo selbst löst den Würfel nicht. { $sentence }
why-besides = Außerdem, auf dem Weg zu dem, wohin das Memo führt:
why-missing = Ist noch ein anderer Stein ungelöst? { $sentence } Wenn es sonst keiner ist, sag „sonst nichts“.
missing-alone = { $piece } kann nicht die einzige ungelöste { $kind ->
    [corner] Ecke
   *[edge] Kante
} sein: durch Drehen bleibt nie nur eine; mindestens eine weitere muss es sein.
missing-turned = So, wie sie genannt sind, können die { $kinds } nicht durch Drehen entstehen, denn sie sind zusammen nicht richtig { $kind ->
    [corner] verdreht
   *[edge] gekippt
}; mindestens eine weitere muss ungelöst sein.
missing-exchanged = Durch Drehen bleibt nie eine ungerade Zahl von Vertauschungen; mindestens zwei weitere { $kinds } müssen ungelöst sein.
unlooked-as-planned = Die { $kinds } wurden nicht angesehen; angenommen ist, dass sie wie geplant herauskamen.
unlooked-any-way = Die { $kinds } wurden nicht angesehen; wie geplant erklärt nichts den Rest, also können sie beliebig herausgekommen sein.
why-no-outcome = Wie kam der Würfel heraus? Mit --seen die Sticker, wie du sie siehst, ? für unbekannte, oder einige Seiten: "U: … F: …". Mit --unsolved die Steine: "UF>UR>FR", "UF gekippt", "weiß-grün und weiß-rot vertauscht", "Kanten: A B", "zwei Ecken", "nur Kanten: UF gekippt, UR gekippt".
why-ways = { $count ->
    [one] Ein anderer Fehler wirkt ebenso
   *[other] { $count } andere wirken ebenso
}
why-also = zum Beispiel: { $sentence }
why-broken-off = Die Suche wurde vor ihrem Ende abgebrochen; es kann mehr geben.
why-questions = Diese Antworten würden am meisten sagen:
why-question = { $sentence } (--answer { $name }=yes oder { $name }=no)
why-other-size = Der Versuch war an einem { $planned }; zu sehen war ein { $seen }.
why-contradiction = Die Steine passen nicht zusammen: zwei Plätze würden denselben Stein zeigen.
why-no-piece = Bei { $piece } sind Farben, die kein Stein zusammen hat.
why-no-hold = Die Mitten liegen nicht, wie sie können, wie der Würfel auch gehalten wird.
why-no-letter = Es gibt keinen Buchstaben { $position } der { $kinds }: das Memo hat { $letters }.
why-no-ask = „{ $text }“ ist keine Antwort; schreib sie wie corner.5=yes, mit einem der Namen aus den Fragen.

slip-scramble-turn-wrong = Scramble, Zug { $turn }: { $made } wurde statt { $planned } gemacht.
slip-scramble-turn-left-out = Scramble, Zug { $turn }: { $planned } wurde ausgelassen.
slip-scramble-turn-added = Scramble, vor Zug { $turn }: { $made } wurde gemacht und gehört nicht dahin.
slip-scramble-turns-exchanged = Scramble, Züge { $turn } und { $next }: { $planned } wurde in anderer Reihenfolge gemacht, { $made }.
slip-scramble-mirrored = Der Scramble wurde wie im Spiegel gemacht.
slip-scrambled-in-other-hold = Der Scramble wurde mit anders gehaltenem Würfel gemacht, vorher gedreht um { $made }; aufgenommen wurde er wie immer.
slip-other-scramble = Scramble { $number } der Liste wurde stattdessen gemacht.
slip-held-wrong = Du hast ihn anders gehalten, als das Memo gemacht wurde: nach dem Scramble { $made ->
    [nothing] blieb er wie gescrambelt
   *[other] wurde er um { $made } gedreht
}; { $planned ->
    [nothing] er hätte so bleiben sollen
   *[other] er hätte um { $planned } gedreht werden sollen
}.
slip-wrong-sticker-followed = Bei Buchstabe { $position } der { $kinds } hast du { $took } genommen, einen anderen Sticker des Steins von { $letter }, und von dort weiterverfolgt: { $taken } statt { $meant }.
slip-wrong-sticker = Bei Buchstabe { $position } der { $kinds } hast du { $took } genommen, einen anderen Sticker des Steins von { $letter }.
slip-closed-early = Buchstabe { $position } der { $kinds }: der Zyklus wurde einen Buchstaben zu früh geschlossen, ohne { $meant }.
slip-cycle-missed = Der Zyklus { $meant } der { $kinds }, ab Buchstabe { $position }, wurde übersehen.
slip-flip-missed = Die gekippte Kante { $meant }, Buchstaben { $position } und { $next } der { $kinds }, wurde übersehen.
slip-twist-missed = Die verdrehte Ecke { $meant }, Buchstaben { $position } und { $next } der { $kinds }, wurde übersehen.
slip-twist-other-way = Buchstabe { $position } der { $kinds }: die Ecke wurde als andersherum verdreht gemerkt, { $taken } statt { $meant }.
slip-traced-from-other-buffer = Die { $kinds } wurden von { $buffer } als Buffer verfolgt: { $taken }.
slip-parity-overlooked = Dieser Scramble hat Parität, und der Paritätsalgorithmus wurde nicht gemacht.
slip-parity-overlooked-exchange = Dieser Scramble hat Parität, und die zwei Kanten wurden beim Verfolgen nicht vertauscht.
slip-parity-without-need = Dieser Scramble hat keine Parität, und der Paritätsalgorithmus wurde gemacht.
slip-parity-without-need-exchange = Dieser Scramble hat keine Parität, und zwei Kanten wurden beim Verfolgen vertauscht.
slip-letter-neighbour = Buchstabe { $position } der { $kinds }: { $meant } wurde mit { $taken } verwechselt, seinem Nachbarn im Schema.
slip-letter-alike = Buchstabe { $position } der { $kinds }: { $meant } wurde mit { $taken } verwechselt, das ähnlich klingt oder aussieht.
slip-letter-other = Buchstabe { $position } der { $kinds }: { $meant } wurde mit { $taken } verwechselt.
slip-letter-dropped = Buchstabe { $position } der { $kinds }: { $meant } wurde ausgelassen.
slip-pair-dropped = Buchstaben { $position } und { $next } der { $kinds }: das Paar { $meant } wurde ausgelassen.
slip-letter-doubled = Buchstabe { $position } der { $kinds }: { $meant } wurde zweimal ausgeführt.
slip-pair-doubled = Buchstaben { $position } und { $next } der { $kinds }: das Paar { $meant } wurde zweimal ausgeführt.
slip-pair-reversed = Buchstaben { $position } und { $next } der { $kinds }: das Paar { $meant } wurde als { $taken } ausgeführt.
slip-letters-exchanged = Ab Buchstabe { $position } der { $kinds }: zwei Buchstaben wurden vertauscht, { $meant } als { $taken } ausgeführt.
slip-pairs-exchanged = Ab Buchstabe { $position } der { $kinds }: die Paare { $meant } wurden als { $taken } ausgeführt.
slip-kinds-exchanged = Die Buchstaben der { $kinds } und der { $others } wurden vertauscht, jede an der anderen Art ausgeführt.
slip-kind-forgotten = Die { $kinds } wurden vergessen: nichts von { $meant } wurde ausgeführt.
slip-turn-other-way = { $where }: Zug { $turn }, { $planned }, wurde andersherum gedreht.
slip-turn-half = { $where }: Zug { $turn }, { $planned }, wurde als { $made } gedreht.
slip-turn-quarter = { $where }: Zug { $turn }, { $planned }, wurde als { $made } gedreht.
slip-turn-left-out = { $where }: Zug { $turn }, { $planned }, wurde ausgelassen.
slip-turn-added = { $where }: { $made } wurde vor Zug { $turn } gemacht und gehört nicht dahin.
slip-turn-other-face = { $where }: Zug { $turn }, { $planned }, wurde als { $made } gemacht.
slip-turn-wide = { $where }: Zug { $turn }, { $planned }, wurde als { $made } gemacht.
slip-setup-left-out = { $where }: das Setup { $planned } wurde ausgelassen und doch zurückgenommen.
slip-setup-doubled = { $where }: das Setup { $planned } wurde zweimal gemacht.
slip-setup-wrong-way = { $where }: das Setup wurde als { $made } statt { $planned } gemacht.
slip-setup-not-undone = { $where }: das Setup wurde nicht zurückgenommen; { $planned } wurde ausgelassen.
slip-setup-undone-wrong-way = { $where }: das Setup wurde als { $made } statt { $planned } zurückgenommen.
slip-setup-undone-twice = { $where }: das Setup wurde zweimal zurückgenommen, { $made }.
slip-setup-of-another = { $where }: { $made } wurde statt { $planned } gemacht, wie für { $other }.
slip-algorithm-left-out = { $where }: der Algorithmus wurde ausgelassen.
slip-algorithm-doubled = { $where }: der Algorithmus wurde zweimal gemacht.
slip-algorithm-inverted = { $where }: der Algorithmus wurde rückwärts gemacht.
slip-algorithm-of-other-kind = { $where }: ein anderer Algorithmus wurde gemacht, { $made }.
slip-held-otherwise = Von da an wurde der Würfel anders gehalten, gedreht um { $made }: { $where }.
slip-broken-off = { $where }: ab Zug { $turn } wurde nichts mehr gemacht.

by-hand-twisted = Die Ecke bei { $piece } wurde von Hand verdreht, { $clockwise ->
    [yes] im Uhrzeigersinn
   *[no] gegen den Uhrzeigersinn
}.
by-hand-flipped = Die Kante bei { $piece } ging heraus und wurde gekippt wieder eingesetzt.
by-hand-exchanged = Die { $kinds } bei { $first } und { $second } gingen heraus und wurden vertauscht wieder eingesetzt.
by-hand-otherwise-right = Sonst geschah alles wie geplant.

ask-start = Kann vor dem Start etwas falsch gewesen sein, beim Scrambeln oder Aufnehmen?
ask-tracing = Kann das Memo schon falsch gewesen sein, als du es gemerkt hast?
ask-recall = Gab es einen Buchstaben, bei dem du unsicher warst oder suchen musstest?
ask-execution = Fühlte sich ein Zug falsch an, oder stockten die Hände?
ask-kind = Ging bei den { $kinds } etwas schief?
ask-letter = War bei Buchstabe { $position } der { $kinds }{ $letter ->
    [none] { "" }
   *[other] , { $letter },
} etwas merkwürdig?
ask-setup = Warst du bei einem Setup unsicher?
ask-algorithm = Bist du in einem Algorithmus gestolpert oder hast den Faden verloren?
ask-undo = Kann ein Setup falsch oder gar nicht zurückgenommen worden sein?
ask-parity = Warst du bei der Parität unsicher?
ask-held = Drehte sich der Würfel in den Händen, oder eine Schicht zu viel mit?

observed-no-sticker = Spalte { $column }: „{ $found }“ ist nicht verständlich; einen Stein schreibst du mit seinen Stickern (UFR, UF), seinen Farben (weiß-grün) oder seinem Buchstaben nach der Art (Kanten: A).
observed-kind-needed = Spalte { $column }: sag, von welcher Art der Buchstabe „{ $found }“ ist, wie in Kanten: { $found }.
observed-no-letter = Spalte { $column }: „{ $found }“ ist kein Buchstabe der { $kinds } und kein Sticker; Buchstaben stehen getrennt, wie A B oder A>B.
observed-no-piece = Spalte { $column }: kein Stein ist { $found }; ein Stein hat zwei oder drei Farben, die sich berühren.
observed-other-kind = Spalte { $column }: „{ $found }“ ist keine { $kind ->
    [corner] Ecke
   *[edge] Kante
}.
observed-no-cycle = Spalte { $column }: „{ $found }“ geht nicht mit einem anderen Stein derselben Art weiter.
observed-same = Spalte { $column }: { $sticker }>{ $sticker } sagt, dass { $sticker } richtig ist; an einem ungelösten Platz liegt etwas anderes.
observed-no-word = Spalte { $column }: „{ $found }“ ist nach { $piece } nicht verständlich; sag { $expected }.
observed-expected-flip = gekippt | ?
observed-expected-twist = verdreht | im Uhrzeigersinn verdreht | gegen den Uhrzeigersinn verdreht | ?
observed-expected-query = ?
observed-expected-unsolved = ungelöst, oder nenne die Steine
observed-not-two = Spalte { $column }: „{ $found }“ braucht { $wanted ->
    [cycle] zwei oder mehr Steine
   *[two] zwei Steine
} einer Art davor, und da { $count ->
    [one] ist einer
   *[other] sind { $count }
}.
observed-twice = Spalte { $column }: „{ $piece }“ wurde schon genannt.
observed-nothing = Kein ungelöster Stein ist genannt; ein gelöster Würfel braucht keine Erklärung.
observed-no-count = Spalte { $column }: „{ $found }“ ist keine Anzahl; schreib sie wie 3 Ecken.
observed-too-many = Spalte { $column }: es gibt nur { $most } { $kinds }.
why-size = Auf einem { $size } wird ein Versuch durch alle seine Sticker erklärt, wie er herauskam, nicht durch einige Teile.
why-long-list = Die Liste hat { $count } Scrambles; höchstens { $most } werden angesehen.
