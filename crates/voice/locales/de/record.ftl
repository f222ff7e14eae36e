# Ergebnisse von Runden, und wie viele Puzzles man versuchen soll.

record-event = { $event ->
    [many] viele 3x3 auf einmal, blind
   *[other] { $event } blind
}
record-round = { $event }: der beste von { $attempts } Versuchen{ $mean ->
    [three] , dazu der Mittelwert aus 3
    [five] , dazu der Durchschnitt aus 5
   *[none] {""}
}. Gewertet nach der Ausgabe vom { $edition }.
record-attempt = { $number }. { $result }
record-best = Bester Versuch: { $result }.
record-mean-three = Mittelwert aus 3: { $result }.
record-mean-five = Durchschnitt aus 5: { $result }.
record-mean-open = { $kind ->
    [three] Den Mittelwert aus 3
   *[five] Den Durchschnitt aus 5
} gibt es, wenn alle { $attempts } Versuche gemacht sind.
record-nothing = Es gibt noch kein Ergebnis.
record-left-aside = { $count ->
    [one] Ein Versuch mehr, als die Runde hat, bleibt außer Acht.
   *[other] { $count } Versuche mehr, als die Runde hat, bleiben außer Acht.
}
record-code = Wie veröffentlicht: { $code }.
record-delegate = Bei einem Wettbewerb gelten das Wort des Delegierten und das aktuelle Reglement.
record-no-result = „{ $text }“ ist kein Ergebnis. Schreib eine Zeit wie 45.31 oder 1:02.50, mit Zeitstrafen 45.31+2, oder DNF, oder DNS.
record-sixty = „{ $text }“: Hinter einem Doppelpunkt gehen Minuten und Sekunden bis 59.
record-too-long = „{ $text }“ ist länger, als irgendwer löst.
record-not-many = „{ $text }“ ist kein Ergebnis von vielen auf einmal. Schreib gelöst und versucht, dann die Zeit: 8/9 45:32; oder DNF, oder DNS.
record-no-code = { $text } steht für kein veröffentlichtes Ergebnis.
record-at-line = Zeile { $line }: { $what }
record-no-name = Zeile { $line } hat keinen Namen: Schreib einen Namen, einen Doppelpunkt und die Versuche.
record-no-edition = Eine Ausgabe vom { $text } gibt es hier nicht. Bekannt: { $known }.
record-no-event = Eine Disziplin „{ $text }“ gibt es hier nicht. Bekannt: { $known }.
record-no-attempts = Es ist kein Versuch angegeben.

many-success = { $right } von { $of } gingen auf: { $percent }, am ehesten { $low } bis { $high }.
many-best = Die meisten Punkte sind mit { $puzzles } Puzzles zu erwarten: im Mittel { $points }.
many-chance = Mindestens { $points } { $points ->
    [one] Punkt
   *[other] Punkte
}: am besten mit { $puzzles } Puzzles, { $chance }.
many-head-puzzles = Puzzles
many-head-limit = Limit
many-head-time = deine Zeit
many-head-points = Punkte
many-head-none = kein Ergebnis
many-head-chance = mindestens { $points }
many-edge = So weit wurde gerechnet: Mehr Puzzles bringen vielleicht mehr, siehe --most.
many-rests = Das beruht darauf, dass Puzzles unabhängig voneinander aufgehen oder nicht, und darauf, dass deine Zeiten gleichmäßig wachsen.
many-no-success = „{ $text }“ ist keine Erfolgsquote. Schreib 24/30, 0.8 oder 80%.
many-care = Stundenlanges Üben strengt Hände und Handgelenke an: Mach Pausen zwischen den Versuchen.
