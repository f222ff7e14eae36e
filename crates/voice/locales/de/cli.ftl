# Was die Befehlszeile um die Ergebnisse herum sagt.

label-scramble = Scramble
label-stickers = Sticker
reasons-heading = Warum, für die { $kinds }:
solution-heading = Ausgeführt (Setup, Tausch, Setup zurück):
step-swap = { $kind }-Tausch

holdings-up = Oben
holdings-front = Vorn
holdings-moves = Drehung
holdings-centres = Center richtig
holdings-solved = Gelöst
holdings-letters = Buchstaben
scramble-hold-most-centres = --hold most-centres ist für das Verfolgen; Scrambles werden für deine Konventionen gezogen oder für --hold best.
hold-shorter = Anders gehalten hat das Memo nur { $letters ->
    [one] 1 Buchstaben
   *[other] { $letters } Buchstaben
}: frage mit --hold best.
hold-best-odd = --hold best ist für Puzzles ohne feste Center; beim { $size } legen die Center und deine Konventionen die Haltung fest.

no-such-puzzle = „{ $text }“ ist hier kein Puzzle; wähle 2, 3, 4, 5, 6 oder 7, wie --puzzle 3.
png-width = Ein Bild von { $width } Pixeln Breite geht nicht; möglich sind 1 bis { $most }.
png-letters = Den vorhandenen Schriften fehlt „{ $letters }“; nimm das Bild als SVG, oder lass mit --no-letters die Buchstaben weg.
png-fault = Aus dem Bild konnten keine Pixel werden; das ist ein Fehler des Programms: { $why }
scramble-missing = Es fehlt der Scramble. Schreibe ihn in Anführungszeichen hinter den Befehl, wie "R U' F2", oder gib die Sticker mit --facelets.
facelets-other-size = Das sind die Sticker eines { $found }, das Puzzle ist aber ein { $size }; gib --puzzle an.
no-such-kind = „{ $text }“ ist hier keine Art von Stein; wähle eine von { $known }.
no-swap = Die Methode hat keinen Tausch für diese Art.
not-text = Diese Zeile ist kein Text (UTF-8).
line-no-moves = In dieser Zeile stehen keine Züge.
file-too-long = Das ist länger als { $most } Bytes; mehr wird nicht gelesen.
system-not-found = Diese Datei gibt es nicht.
system-denied = Dieses System lässt das Programm nicht daran.
system-directory = Das ist ein Verzeichnis; nötig ist eine Datei.
system-no-directory = Ein Teil dieses Pfads ist eine Datei und kein Verzeichnis.
system-full = Wo das hingeschrieben wird, ist kein Platz mehr.
system-number = Das System verweigert es (Fehler { $number }).
system-unknown = Das System verweigert es ohne einen Grund.
output-closed = Die Ausgabe wurde geschlossen.
standard-input = Standardeingabe
held-no-rotation = { $turn } ist keine Drehung des Ganzen; --held nimmt nur x, y und z.

setups-heading = { $algorithm }
    tauscht { $buffer } und { $target }. Ein Setup bringt den Sticker eines Ziels nach { $target } und lässt { $left } in Ruhe.
setups-item = Angabe { $number } von --turns: { $what }
setups-no-turns = In --turns stehen keine Züge; nenne welche, wie R,F,D oder R2,U.
setup-none = keins
setup-not-found = mit diesen Zügen nicht möglich
setups-also = auch { $others }

shortest-solved = Er ist gelöst: kein Zug.
shortest-proven = { $turns ->
    [one] 1 Zug
   *[other] { $turns } Züge
}; keine Lösung ist kürzer.
shortest-open = { $turns } Züge: die kürzeste bisher gefundene Lösung, nicht als kürzeste bewiesen. Keine Lösung hat weniger als { $least } Züge. Mehr Zeit kann beides zusammenbringen: --seconds.
shortest-size = Kürzeste Lösungen werden für 2x2 und 3x3 gesucht, nicht für einen { $size }.
shortest-progress = mindestens { $least } Züge, höchstens { $found }

apply-solved = Jede Fläche zeigt eine Farbe: gelöst.
apply-centres = Die Mitten sind gewandert; wo Teile sind, wird von ihnen aus gesagt.
apply-kind-solved = Alle { $kinds } sind gelöst.
apply-kind = { $kinds }: { $what }.
apply-away = { $count } an anderen Plätzen, bei { $pieces }
apply-turned = { $count } am Platz, aber verdreht, { $pieces }

picture-after = Das Puzzle nach { $moves }
picture-strip = Die Verfolgung, Buchstabe für Buchstabe
picture-ending = { $file }: eine Bilddatei endet auf .svg oder .png.

conventions-right = { $file } ist in Ordnung.
conventions-sheet = die Tabelle der { $kinds }, die sie nennt, { $what }
conventions-ease = die Kosten der Züge, die sie nennt, { $what }
conventions-holding = Gehalten zum Lösen: { $up } oben, { $front } vorn.
conventions-kind = { $kinds }: Puffer { $buffer }, Methode { $method }, { $algorithm }
    Neue Zyklen beginnen { $breaks }.
conventions-kind-searched = { $kinds }: Puffer { $buffer }, Methode { $method }, Algorithmen durch Suche gefunden
    Neue Zyklen beginnen { $breaks }.
breaks-first = beim ersten ungelösten Buchstaben
breaks-fewest = wo die Buchstaben die wenigsten Setup-Züge brauchen
breaks-least = so, dass das Ganze die geringste geschätzte Zeit braucht
breaks-preference = beim ersten ungelösten von { $list }
conventions-parity = Parität: { $algorithm }
conventions-order = Gemerkt in der Reihenfolge { $memo }; ausgeführt in der Reihenfolge { $execution }.
usage-unknown-option = Eine Option „{ $text }“ gibt es hier nicht.
usage-too-much = „{ $text }“ ist ein Wort zu viel; was Leerzeichen enthält, steht in Anführungszeichen.
usage-unknown-command = Einen Befehl „{ $text }“ gibt es nicht.
usage-no-value = { $option } braucht einen Wert.
usage-no-value-of = { $option } braucht einen Wert: { $known }.
usage-value = „{ $text }“ passt nicht zu { $option }; möglich ist { $known }.
usage-number = „{ $text }“ passt nicht zu { $option }: nötig ist eine ganze Zahl, { $least } oder mehr.
usage-number-between = „{ $text }“ passt nicht zu { $option }: nötig ist eine ganze Zahl von { $least } bis { $most }.
usage-twice = { $option } darf nur einmal gegeben werden.
usage-conflict = { $option } und { $other } gehen nicht zusammen.
usage-missing = { $count ->
    [one] { $options } fehlt.
   *[other] { $options } fehlen.
}
usage-missing-command = Sag, was zu tun ist: { $known }.
usage-values = { $option } hat zu viele oder zu wenige Werte.
usage-not-text = Eine der Angaben ist kein Text (UTF-8).
usage-other = Die Angaben sind nicht zu verstehen.
usage-help = Wie man es aufruft: { $call } --help
usage-language = „{ $text }“ ist hier keine Sprache; es gibt { $known }.
no-such-command = Einen Befehl „{ $text }“ gibt es nicht; es gibt { $known }.
one-corner-blind = Gib --blind dazu, dann darf es das.
