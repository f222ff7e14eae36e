# Algorithmen, Tabellen davon, und Methoden im Vergleich. $kind ist „corner“ oder „edge“.

break-least = Noch nicht gelöst: { $unsolved }. Ein neuer Zyklus beginnt bei { $target }, Buchstabe { $letter }: so braucht das Ganze die geringste geschätzte Zeit.

verdict-right = richtig
verdict-empty = kein Algorithmus
verdict-other-case = löst stattdessen { $actual }
verdict-inverse = löst den umgekehrten Fall, { $actual }
verdict-without-buffer = ist ein Dreierzyklus ohne den Puffer: { $pieces }
verdict-other-kind = ist ein Dreierzyklus von { $kinds }: { $pieces }
verdict-leaves-turned = ist richtig, lässt das Puzzle aber um { $rotation } gedreht zurück; mach das am Ende rückgängig
verdict-not-a-three-cycle = ist kein Dreierzyklus; bewegt werden { $moved }
verdict-turned = ist kein Dreierzyklus; bewegt werden { $moved }, und das Puzzle bleibt um { $rotation } gedreht
verdict-does-nothing = tut nichts
verdict-unreadable = ist nicht lesbar, Zeichen { $at }: { $what }
verdict-too-long = hat { $turns } Züge; ausgeführt werden höchstens { $most }
verdict-no-case = der Fall „{ $named }“ ist nicht lesbar: nötig sind zwei Ziele auf zwei verschiedenen Teilen, keines davon das des Puffers
verdict-place = Zeile { $line }, Spalte { $column }

sheet-empty = Die Tabelle ist leer.
sheet-no-table = Zeile { $line }: das ist nicht als Tabelle lesbar. { $what }
sheet-too-much = Zeile { $line }: bis hierher kommt die Tabelle auf mehr als { $cells } Zellen oder { $bytes } MB; mehr wird nicht gelesen. Lass weg, was zu keinem Fall gehört, oder teile sie in mehrere Dateien.
sheet-no-header = Das ist weder eine Liste noch ein Gitter. Eine Liste beginnt mit den Namen der Spalten: first, second (oder pair) und algorithm, dazu vielleicht kind, buffer, notes. Ein Gitter hat Ziele am oberen und am linken Rand. Die erste Zeile ist hier: { $found }
sheet-column-missing = Der Liste fehlt die Spalte „{ $column }“.
sheet-kind-unknown = Es ist nicht zu erkennen, ob das Ecken oder Kanten sind; sag --kind corner oder --kind edge.
sheet-order-unknown = Es ist nicht zu erkennen, an welcher Seite des Gitters das erste Ziel steht: { $right } Zellen sind richtig, wenn es links steht, und ebenso viele, wenn es oben steht. Sag --first left oder --first top.
sheet-no-buffer = „{ $text }“ ist kein Sticker dieser Art ({ $kind }) und kann nicht der Puffer sein.
sheet-several = Die Tabelle hat Fälle mehrerer Arten oder Puffer: { $found }. Wähle mit --kind und --buffer.
sheet-no-cases = Die Tabelle hat keinen lesbaren Fall.
account-cells = { $cells ->
    [one] 1 Zelle
   *[other] { $cells } Zellen
}: { $right } richtig, { $wrong } falsch, { $empty } leer, { $unread } nicht verstanden.
account-wrong = Falsch: { $places }.
account-unread = Nicht verstanden: { $places }.
account-twice = { $count ->
    [one] Ein Algorithmus steht zweimal da: { $places }.
   *[other] { $count } Algorithmen stehen zweimal da: { $places }.
}
account-contradictions = { $count ->
    [one] Ein Fall hat einen richtigen Algorithmus und einen, der etwas anderes tut: { $places }.
   *[other] { $count } Mal hat ein Fall einen richtigen Algorithmus und einen, der etwas anderes tut: { $places }.
}
account-asides = { $count ->
    [one] Ein Text, der zu keinem Fall gehört, bleibt erhalten.
   *[other] { $count } Texte, die zu keinem Fall gehören, bleiben erhalten.
}
account-more = { $list }; und { $more } weitere
remark-no-head = Keine Zeile nennt die Spalten; sie wurden an dem erkannt, was in ihnen steht.
remark-kind = Nach dem, was die Algorithmen tun, sind das { $kinds }.
remark-other-buffer = Die Tabelle nennt den Puffer { $found }, gefragt war { $asked }; genommen ist { $taken }.
remark-two-cases = Zeile { $line } nennt zwei Fälle, „{ $text }“ und „{ $word }“; genommen ist der zweite.
sheet-coverage = { $kinds }, Puffer { $buffer }: { $covered } von { $cases } Fällen haben einen richtigen Algorithmus.
sheet-means = Im Mittel { $moves } Züge (eine mittlere Schicht als einer gezählt), geschätzt { $seconds } s.
sheet-missing = Es fehlen: { $cases }
sheet-worst = Die schwersten, mit geschätzten Sekunden:
sheet-slow = Viel langsamer als das Beste, das bekannt ist:
sheet-slow-line = { $case }: { $seconds } s, aber { $best } s: { $algorithm } ({ $origin })
sheet-filled = { $count } Fälle ergänzt: { $by }.
sheet-wrote = Geschrieben nach { $file }.
import-question = { $what } Geschrieben wurde nichts. Sag --kind oder --buffer, oder --anyway, um sie zu schreiben, wie sie ist.
sheet-nothing-to-fill = Es gibt nichts zu ergänzen.
origin-sheet = Tabelle
origin-inverse = umgekehrt
origin-mirror = gespiegelt
origin-rotation = gedreht
origin-search = gesucht
column-letters = Buchstaben
column-targets = Ziele
column-algorithm = Algorithmus
column-moves = Züge
column-notes = Notizen
column-check = was er tut
grid-title = Dreierzyklen der { $kinds }, Puffer { $buffer }
grid-refused = Nicht richtig
grid-first-second = erstes ↓ zweites →

find-one-or-all = Sag, welcher Fall: zwei Ziele, wie UBR RDF oder Buchstaben, oder --all.
find-two-targets = „{ $text }“ sollten zwei Ziele sein, wie UBR,RDF.
find-twist-takes = --twist nimmt zwei Ecken, wie UBL,DFR
find-flip-takes = --flip nimmt zwei Kanten, wie UF,UB
find-exchange-takes = --exchange nimmt zwei Ecken und zwei Kanten, wie UFR,UBR,UF,UR
find-last-takes = --last nimmt zwei Ecken und zwei Kanten, wie UBR,DFR,UF,UR
find-other-kind = { $text } ist eine { $kind ->
    [corner] Ecke
   *[edge] Kante
}; { $takes }.
find-other-count = { $takes }; „{ $text }“ hat { $count }.
find-same-piece = { $first } und { $second } sind auf einem Teil ({ $kind }); nötig sind verschiedene.
find-unreachable = Keine Züge tun das: { $what }
find-only-on = Dreierzyklen werden für Ecken und Kanten des 2x2 und 3x3 gesucht.
find-memory = Folgen bis { $length } Züge brauchen { $needed } MiB Speicher; erlaubt sind { $allowed } MiB. Mit diesen Zügen reicht das für --longest { $possible }. Nimm das, weniger Züge (--moves) oder mehr --memory.
find-memory-any = Den Speicher für Folgen bis { $length } Züge hat kein Rechner; erlaubt sind { $allowed } MiB, was mit diesen Zügen für --longest { $possible } reicht.
find-no-memory = Das System gab die { $needed } MiB Speicher nicht her, die die Suche braucht.
find-stopped = Die Suche wurde abgebrochen.
find-fault = Eine gefundene Folge tut, ausgeführt, etwas anderes. Nichts wurde ausgegeben; das ist ein Fehler des Programms.
find-size = „{ $text }“ ist keine Speichergröße; schreib sie als 4G, 512M oder Zahl der Bytes.
find-reached = { $states } Zustände bei { $length } Zügen
find-searching = Klasse { $class } von { $classes }, { $length } Züge
find-line = { $case }: { $shortest } Züge, nachweislich die wenigsten
find-easiest = { $count ->
    [0] Gesucht bis { $searched } Züge; ein längerer kann leichter sein als der erste.
    [one] Der erste hat die kürzeste geschätzte Zeit von allen.
   *[other] Die ersten { $count } haben die kürzesten geschätzten Zeiten von allen.
}
find-line-unproven = { $case }: { $shortest } Züge; mit { $searched } oder weniger geht es nicht, bewiesen, vielleicht aber mit einer Zahl dazwischen
find-rings-made = { $sequences } Zugfolgen bis { $length } Züge
find-rings-metric = Bei Wings und Centern zählt jeder Zug eins, gleich welche Schichten er dreht: --metric slice.
find-rings-longest = Bei Wings und Centern werden Zugfolgen bis { $most } Züge gesucht: --longest { $most } oder weniger.
find-rings-several = Ecken und Kanten werden mit allen ihren Stickern gesucht, auf dem 2x2 und dem 3x3.
find-rings-many = Mit diesen Zügen gibt es { $count } Zugfolgen von { $length } Zügen, zu viele zum Suchen; höchstens { $most } werden gemacht. Nimm weniger Züge (--moves) oder ein kleineres --longest.
find-rings-no-turns = Es gibt keinen Zug, mit dem gesucht werden könnte; Drehungen des ganzen Puzzles zählen nicht.
find-none = { $case }: keiner bis { $searched } Züge, bewiesen
find-more = und { $count } weitere
turns-empty = Es gibt keine Züge, mit denen gesucht werden könnte.
turns-unknown = „{ $text }“ ist kein Block von Zügen; U, Uw, u, 2U, M oder x sind welche.
turns-not-there = Ein { $size } hat keinen Zug { $turn }.
turns-no-inverse = { $turn } ist dabei, der Zug, der ihn rückgängig macht, nicht; die Suche braucht beide.
turns-free = { $turn } zählt in dieser Metrik nichts, also wäre nichts das Kürzeste; sag --metric execution.
turns-size = Algorithmen werden am 2x2 und 3x3 gesucht, nicht am { $size }.
metric-unknown = „{ $text }“ ist keine Metrik; bekannt sind half, quarter, slice, execution.

fit-columns = Die Zeiten brauchen zwei Spalten, algorithm und seconds; die erste Zeile ist hier: { $found }
fit-row = Zeile { $line }: { $what }
fit-no-number = „{ $text }“ ist keine Zahl von Sekunden.
fit-too-much = bis hierher haben die Zeiten zusammen mehr als { $most } Züge; gib weniger davon.
fit-too-few = { $given } Zeiten sind zu wenige für { $costs } Kosten; nötig sind mindestens { $needed }.
fit-bad-time = Zeit { $place }: { $seconds } ist keine Zeit; nötig sind mehr als null Sekunden.
fit-no-turns = Zeit { $place } hat keine Züge.
fit-parts = Für zurückgehaltene Zeiten braucht es mindestens 2 Teile, nicht { $parts }.
fit-heading = Angepasst an { $count } Zeiten. Sekunden für alles, was die Hände tun, mit dem Bereich, den 95 % neu gezogener Zeiten ergaben:
fit-errors = Fehler { $error } s bei diesen Zeiten, { $heldout } s bei zurückgehaltenen; vor der Anpassung { $before } s, nur mit dem Mittelwert { $mean } s.
fit-never = kommt nicht vor; bleibt

method-slice-not-first = Mit einem Paritätsalgorithmus müssen Kanten mit slice-swap zuerst ausgeführt werden: schreib execution = ["edge", "corner"] unter [memo] oder by = "exchange" unter [parity].
method-not-for-kind = In keiner Schicht zwischen den Seiten liegen { $kinds }, also ist slice-swap keine Methode für sie.
method-between-corners-and-edges = Wo es Ecken und Kanten gibt, werden die { $kinds } vor oder nach beiden ausgeführt, nicht dazwischen: ändere execution unter [memo].
method-no-exchange = Dein Eckenalgorithmus vertauscht keine zwei Kanten, also können im Verfolgen keine vertauscht werden; wähle parity by = "algorithm".
method-no-case = Es gibt keinen Algorithmus für { $first } { $second }.

parity-exchanged = Parität: die Ecken haben eine ungerade Zahl von Buchstaben, also wurden { $first } und { $second } beim Verfolgen füreinander genommen; der letzte Eckenbuchstabe vertauscht sie. Buchstaben: { $counts }.
estimate-line = Geschätzt { $seconds } s.
estimate-saving = Geschätzt { $seconds } s; immer mit dem ersten Anfang in Buchstabenfolge wären es { $naive } s.
step-pair = { $first }{ $second }
step-found = (gesucht)
step-turned = gedrehte Teile
solution-heading-methods = Ausgeführt:

compare-two = Nenne mindestens zwei Methoden zum Vergleichen, wie: hoodwink compare one-swap three-cycle
compare-unknown = „{ $text }“ ist keine Methode; bekannt sind one-swap, slice-swap, three-cycle, zwei davon mit + für Ecken und Kanten (wie three-cycle+slice-swap), gefolgt von ,least ,fewest ,exchange oder ,cycles, oder eine Datei mit Konventionen.
compare-not-corners = „{ $text }“ ist eine Methode nur für Kanten; für Ecken gibt es one-swap und three-cycle, wie one-swap+{ $text }.
compare-heading = { $count } gleichverteilt zufällige Zustände, Startwert { $seed }
compare-letters = Buchstaben
compare-algorithms = Algorithmen
compare-moves = Züge
compare-seconds = geschätzte Sekunden
compare-mean = Mittel
compare-difference = { $second } weniger { $first }: { $mean } ({ $low } bis { $high })
compare-confidence = 95 % Vertrauensbereich für das Mittel der gepaarten Unterschiede:
compare-marked-mean = Mittel { $mean }

# Die Seite der Algorithmen. $has ist „right“, „slow“, „wrong“ oder „nothing“; $layout ist „list“, „rows“ oder „columns“.
way-seconds = { $seconds } s
way-moves = { $count ->
    [one] 1 Zug
   *[other] { $count } Züge
}
way-no-regrip = kein Umgreifen
way-regrip = { $hand ->
    [left] die linke
   *[right] die rechte
} Hand greift vor Zug { $move } um
way-refused = Nicht aufgenommen: { $verdict }.
way-taken = In die Tabelle aufgenommen.
way-dropped = Aus der Tabelle genommen.
sheet-cleared = Alle Algorithmen dieses Puffers wurden herausgenommen.
sheet-layout = { $layout ->
    [rows] Als Gitter gelesen, das erste Ziel am linken Rand.
    [columns] Als Gitter gelesen, das erste Ziel am oberen Rand.
   *[list] Als Liste gelesen.
}
sheet-too-long = Dieser Text ist länger als { $most } MiB; das ist keine Tabelle.
cell-said = { $case }: { $has ->
    [right] richtig
    [slow] richtig, aber ein viel leichterer ist bekannt
    [wrong] tut etwas anderes
   *[nothing] kein Algorithmus
}
cases-matching = { $count ->
    [0] Kein Fall passt.
    [one] 1 Fall passt.
   *[other] { $count } Fälle passen.
}
case-meaning = Das Teil im Puffer { $buffer } geht nach { $first }, das von dort nach { $second }, das von dort in den Puffer.
page-kind-unknown = Es ist nicht zu erkennen, ob das Ecken oder Kanten sind; wähle es, bevor du die Datei öffnest.
page-order-unknown = Es ist nicht zu erkennen, an welcher Seite des Gitters das erste Ziel steht: { $right } Zellen sind richtig, wenn es links steht, und ebenso viele, wenn es oben steht. Wähle es, bevor du die Datei öffnest.
page-find-memory = Folgen bis { $length } Züge brauchen mehr Speicher als die { $allowed } MiB, die eine Seite nehmen darf; mit diesen Zügen reicht das für { $possible }. Nimm weniger Züge oder eine kürzere Länge.
buffer-follows = Der Puffer ist nun { $buffer }, wie die Methode ihn braucht oder üblicherweise hat.
order-follows = Die { $kinds } werden nun zuerst ausgeführt, damit die mittlere Schicht vor dem Paritätsalgorithmus wieder stimmt.
sheet-unused = „Verfolgen“ und „Abspielen“ nutzen diese Algorithmen nicht: Wähle dafür in den Festlegungen Dreierzyklen und den Puffer { $buffer } für die { $kinds }.

# Ein Fehler, den die meisten Zeilen gemeinsam haben.
sheet-exchanged = Die meisten Zeilen lösen das Umgekehrte dessen, was sie sagen: wahrscheinlich stehen die beiden Buchstaben in der anderen Reihenfolge.
sheet-other-buffer = Die meisten Algorithmen lassen den Puffer in Ruhe: wahrscheinlich sind sie für einen anderen Puffer.
sheet-other-kind = Die meisten Algorithmen bewegen Teile einer anderen Art im Kreis: wahrscheinlich sind sie nicht für diese Art.
sheet-no-case-read = Die meisten Fälle sind nicht lesbar: wahrscheinlich sind Art, Puffer oder Buchstaben andere.
