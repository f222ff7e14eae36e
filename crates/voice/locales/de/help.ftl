# Die Hilfe der Kommandozeile: Befehle, Angaben und Optionen. Die englischen Texte stehen bei den Optionen selbst (cli, arguments/).
# help-BEFEHL-OPTION gilt für einen Befehl, help-any-OPTION für jeden, der keinen eigenen Text hat.

help-usage = Aufruf:
help-usage-options = [OPTIONEN]
help-usage-command = BEFEHL
help-heading-commands = Befehle
help-heading-arguments = Angaben
help-heading-options = Optionen
help-default = [sonst: { $value }]
help-environment = [Umgebung: { $name }]
help-possible = [möglich: { $values }]
help-possible-heading = Möglich:

# Wie die Werte der Optionen heißen.
help-value-ANSWER = ANTWORT
help-value-ATTEMPT = VERSUCH
help-value-BYTES = BYTES
help-value-CHOICE = WAHL
help-value-COMMAND = BEFEHL
help-value-CONDITION = BEDINGUNG
help-value-CORNERS = ECKEN
help-value-DAY = TAG
help-value-EDGES = KANTEN
help-value-EVENT = DISZIPLIN
help-value-FILE = DATEI
help-value-FORM = FORM
help-value-KIND = ART
help-value-KIND-LETTERS = ART=BUCHSTABEN
help-value-LETTERS = BUCHSTABEN
help-value-METHOD = METHODE
help-value-METRIC = ZÄHLUNG
help-value-MOVES = ZÜGE
help-value-NAME = NAME
help-value-NAME-yes-no = NAME=yes|no
help-value-NUMBER = ZAHL
help-value-ORDER = REIHENFOLGE
help-value-PIECES = TEILE
help-value-PIXELS = PIXEL
help-value-PLACE = ORT
help-value-PORT = PORT
help-value-ROTATION = ROTATION
help-value-SCRAMBLE = SCRAMBLE
help-value-SECONDS = SEKUNDEN
help-value-SHARE = ANTEIL
help-value-SHEET = TABELLE
help-value-SHELL = SHELL
help-value-SIDE = SEITE
help-value-SIZE = GRÖSSE
help-value-STICKER = STICKER
help-value-STICKERS = STICKER
help-value-TAG = SPRACHE
help-value-TARGET = ZIEL
help-value-TARGETS = ZIELE
help-value-TIME = ZEIT
help-value-TIMINGS = ZEITEN
help-value-TURNS = DREHUNGEN
help-value-VIEW = ANSICHT

man-NAME = BEZEICHNUNG
man-SYNOPSIS = ÜBERSICHT
man-DESCRIPTION = BESCHREIBUNG
man-OPTIONS = OPTIONEN
man-SUBCOMMANDS = BEFEHLE
man-VERSION = VERSION

help-hoodwink = Vom Scramble zum Memo zur geprüften blinden Lösung, mit dem Grund für jeden Buchstaben
help-hoodwink-trace = Einen Scramble verfolgen: das Memo mit dem Grund für jeden Buchstaben und eine Lösung, die ausgeführt und richtig gefunden wurde
help-hoodwink-scramble = Scrambles machen: gleichmäßig zufällige oder solche, die eine Bedingung erfüllen; zählen, wie selten eine Bedingung ist
help-hoodwink-check = Ein Memo prüfen oder die Züge eines Versuchs, wie sie gemacht wurden: richtig, oder wo es falsch wird und warum
help-hoodwink-why = Einen Versuch erklären, der nicht aufging: die Fehler, die zu dem führen, was du siehst, die wahrscheinlichsten zuerst
help-hoodwink-shortest = Eine Lösung in so wenigen Zügen wie möglich suchen, und sagen, ob das bewiesen ist
help-hoodwink-setups = Die kürzesten Set-up-Züge jedes Ziels aufzählen, durch Suche gefunden
help-hoodwink-apply = Züge auf ein gelöstes Puzzle anwenden: sein Bild, seine Sticker, was ungelöst ist
help-hoodwink-show = Ein Puzzle als Bilddatei zeichnen (SVG oder PNG)
help-hoodwink-conventions = Deine Konventionen zeigen oder eine Datei davon prüfen
help-hoodwink-conventions-show = Das Netz mit deinen Buchstaben drucken und alles, was festgelegt ist
help-hoodwink-conventions-check = Eine Datei mit Konventionen prüfen
help-hoodwink-algs = Algorithmen finden; Tabellen davon prüfen, ergänzen und ausgeben; das Modell der Hände an deine Zeiten anpassen
help-hoodwink-algs-find = Alle Algorithmen für einen Fall oder für alle Fälle eines Puffers finden, bewiesen kürzeste
help-hoodwink-algs-fit = Die Kosten des Modells der Hände an deine eigenen Zeiten anpassen (CSV mit den Spalten algorithm und seconds)
help-hoodwink-algs-check = Über jede Zeile einer Tabelle Rechenschaft geben; Rückgabewert 1, wenn eine nicht richtig ist
help-hoodwink-algs-import = Eine Tabelle lesen, wie du sie hast, Liste oder Gitter, und als Liste schreiben; was nicht stimmt, wird gesagt
help-hoodwink-algs-fill = Die Lücken durch Umkehren, Spiegeln, Drehen und Suchen füllen, jede mit ihrer Herkunft
help-hoodwink-algs-stats = Abdeckung, mittlere Züge und geschätzte Zeit, die schwersten Fälle und die, die viel schneller sein könnten
help-hoodwink-algs-export = Eine Tabelle als CSV, Markdown oder als Gitter zum Drucken schreiben
help-hoodwink-compare = Methoden über gleichmäßig zufällige Zustände vergleichen: Buchstaben, Algorithmen, Züge, geschätzte Zeit
help-hoodwink-round = Eine Runde nach den Regeln werten: bester Versuch, Mittelwert oder Durchschnitt, Limits, Plätze
help-hoodwink-many = Sagen, wie viele Puzzles man auf einmal versuchen soll: die Punkte, die jede Zahl bringen kann
help-hoodwink-serve = Die Web-App nur für diesen Rechner bereitstellen, bis sie mit Strg-C beendet wird
help-hoodwink-completions = Die Vervollständigungen für eine Shell drucken
help-hoodwink-man = Die Handbuchseite drucken, im Format von man(1): des ganzen Programms oder eines Befehls
help-any-subcommand-help = Diese Hilfe oder die eines Befehls drucken

help-any-help = Hilfe drucken
help-any-version = Die Version drucken
help-any-conventions = Die Datei mit deinen Buchstaben, Puffern, Farben und so weiter (TOML), oder - für die Standardeingabe; ohne sie gelten die üblichen
help-any-language = Die Sprache aller Sätze: en oder de
help-any-puzzle = Das Puzzle: 2 für das 2x2 bis 7 für das 7x7
help-any-facelets = Die Sticker, wie man sie sieht, statt eines Scrambles: die Seiten U L F R B D Reihe für Reihe, mit den Namen deiner Farben oder, wo sich diese unterscheiden, mit ihren Anfangsbuchstaben, mit beliebigen Abständen; oder das Netz, wie es gedruckt wird
help-any-scramble = Der Scramble, gemacht mit dem Puzzle so gehalten, wie die Farben deiner Konventionen sagen
help-any-json = Ein JSON-Objekt
help-any-corners = Die Buchstaben der Ecken, gruppiert und getrennt, wie du magst
help-any-edges = Die Buchstaben der Kanten
help-any-others = Die Buchstaben einer anderen Art von Teilen, wie wing=KDVA oder x-centre=QC; einmal je Art
help-any-hold = Wie das Puzzle aufgenommen wird
help-any-hold-conventions = Wie deine Konventionen sagen
help-any-hold-best = Bei einem Puzzle ohne feste Mitten wie dem 2x2: so von allen 24, dass das Memo am kürzesten ist
help-any-hold-most-centres = Bei einem Puzzle ohne feste Mitten wie dem 4x4: so von allen 24, dass die meisten Center schon richtig sind
help-any-ease = Kosten, die algs fit geschrieben hat
help-any-out = Wohin geschrieben wird; sonst auf die Standardausgabe
help-any-file = Die Tabelle (CSV, Semikolons oder Tabulatoren), oder - für die Standardeingabe
help-any-kind = Die Art der Teile, wo die Tabelle sie nicht sagt: corner oder edge, oder eine von Wings oder Centern wie wing oder x-centre
help-any-buffer = Der Puffer, wo die Tabelle ihn nicht sagt; sonst der deiner Konventionen
help-any-first = Wo das erste Ziel eines Gitters steht, wo es die Algorithmen nicht verraten
help-any-first-left = Links in einer Zeile
help-any-first-top = Oben über einer Spalte

help-hoodwink-trace-holdings = Alle 24 Arten, ein Puzzle ohne feste Mitten aufzunehmen, die beste zuerst: wie, richtige Center, gelöste Steine, Buchstaben jeder Art
help-hoodwink-trace-short = Nur das Memo, ohne Gründe und Lösung; bei einem Stapel Buchstaben, Parität und Haltung, was viel schneller geht
help-hoodwink-trace-batch = Aus einer Datei, oder mit - von der Standardeingabe, einen Scramble je Zeile lesen und je Zeile ein JSON-Objekt schreiben

help-hoodwink-scramble-count = Wie viele
help-hoodwink-scramble-condition = Nur Scrambles, deren Memo eine Bedingung erfüllt, wie "corner.breaks = 1 and edge.flips = 0"; jeder davon ist so wahrscheinlich wie jeder andere
help-hoodwink-scramble-lesson = Die Bedingung einer Lektion; siehe --lessons
help-hoodwink-scramble-lessons = Die Lektionen aufzählen, die es für das Puzzle gibt
help-hoodwink-scramble-how_rare = Zählen, wie viele Zustände die Bedingung erfüllen, und keinen Scramble machen
help-hoodwink-scramble-hold = Wie das Puzzle für sein Memo aufgenommen wird: wie deine Konventionen es sagen, oder die beste aller Arten (gerade Größen; solche Bedingungen werden probiert und nicht gezählt)
help-hoodwink-scramble-blind = Das Puzzle zufällig gedreht lassen, wie es bei blinden Disziplinen ist
help-hoodwink-scramble-seed = Dieselbe Zahl gibt dieselben Scrambles
help-hoodwink-scramble-sheet = Eine Seite zum Drucken schreiben: Scrambles mit Bildern, danach Antworten mit Memo und Gründen (HTML)
help-hoodwink-scramble-json = Ein JSON-Objekt je Zeile

help-hoodwink-check-parity = Ob du dir gemerkt hast, dass der Paritäts-Algorithmus zu machen ist
help-hoodwink-check-parity-yes = Ja
help-hoodwink-check-parity-no = Nein
help-hoodwink-check-moves = Die Züge eines Versuchs, wie sie wirklich gemacht wurden, vom Aufnehmen des Puzzles an; verglichen mit dem, was das Memo, oder ohne eines unser eigenes, verlangt
help-hoodwink-check-strict = Mit Rückgabewert 1 enden, wenn es falsch ist; sonst ist ein gefundener Fehler erledigte Arbeit und der Wert 0

help-hoodwink-why-seen = Die Sticker, wie man sie jetzt sieht, wie das Puzzle auch gehalten wird: die Seiten U L F R B D, Reihe für Reihe, mit ? für unbekannte; oder einige Seiten, "U: … F: …"
help-hoodwink-why-unsolved = Nur was ungelöst ist: "UF gekippt; UFR>DBL>UBR" (bei UFR liegt, was nach DBL gehört, …; ein ? dahinter, wenn du nicht nachgesehen hast, wie sie gedreht sind), "UF und UR vertauscht", "UF, UR" (irgendwie ungelöst), oder nur "zwei Ecken". Steine nach Stickern, nach Farben (weiß-grün) oder nach Buchstaben (Kanten: A>B); mit "nur Kanten: …" wurden die Ecken nicht angesehen, mit "sonst nichts" wurde kein Stein weggelassen
help-hoodwink-why-list = Die Liste, in der der Scramble steht, einer je Zeile: ein anderer davon kann gemacht worden sein
help-hoodwink-why-rates = Wie wahrscheinlich jeder Fehler ist, als Verzeichnis der Fehler (TOML); ohne es gelten die üblichen Schätzungen
help-hoodwink-why-answer = Eine Antwort auf eine Frage eines früheren Laufs, wie corner.5=yes; kann mehrmals gegeben werden
help-hoodwink-why-deep = Auch nach drei Fehlern suchen
help-hoodwink-why-seconds = Die Suche nach drei Fehlern nach so vielen Sekunden beenden und sagen, was bis dahin gefunden wurde
help-hoodwink-why-most = Wie viele Erklärungen höchstens gesagt werden

help-hoodwink-round-attempts = Die Versuche der Reihe nach: Zeiten wie 45.31 oder 1:02.50, mit Zeitstrafen wie 45.31+2, DNF, DNF(4:10) mit der Zeit, die verging, DNS; von vielen auf einmal wie "8/9 45:32"
help-hoodwink-round-table = Stattdessen eine Tabelle: eine Zeile je Person, wie „Ines: 45.31 DNF 50.2“, oder - für die Standardeingabe; alle bekommen einen Platz
help-hoodwink-round-event = Die Disziplin: 3x3, 4x4, 5x5 oder many
help-hoodwink-round-edition = Die Ausgabe der Regeln, mit ihrem Tag; ohne sie die neueste, die bekannt ist
help-hoodwink-round-limit = Das Limit eines Versuchs, unter dem er bleiben muss, wie 10:00
help-hoodwink-round-together = Ein Limit für alle Versuche zusammen, wie 30:00
help-hoodwink-round-codes = Die Versuche sind Zahlen, wie Ergebnisse veröffentlicht werden
help-hoodwink-many-success = Wie oft ein Puzzle aufgeht: 24/30, 0.8 oder 80%
help-hoodwink-many-first = Wie lange das erste Puzzle dauert, memoriert und ausgeführt, wie 2:10
help-hoodwink-many-growth = Wie viel länger jedes weitere dauert als das vorige, wie 5
help-hoodwink-many-spread = Wie sehr sich deine Zeiten von Tag zu Tag unterscheiden, wie 15%
help-hoodwink-many-points = Dazu die Zahl von Puzzles mit der besten Chance auf so viele Punkte
help-hoodwink-many-most = Bis zu wie vielen Puzzles gerechnet wird
help-hoodwink-shortest-seconds = Wie lange gesucht wird; gesagt wird, was bis dahin bekannt ist
help-hoodwink-shortest-positions = Wie viele Stellungen höchstens betrachtet werden, für eine Antwort, die nicht vom Rechner abhängt
help-hoodwink-shortest-json = JSON

help-hoodwink-setups-puzzle = Das Puzzle: 2 oder 3
help-hoodwink-setups-kind = Die Art der Teile: corner oder edge
help-hoodwink-setups-target = Nur dieses Ziel, als Buchstabe oder Sticker
help-hoodwink-setups-turns = Nur diese Züge nehmen, wie R,F,D oder R,Lw,M mit jedem Betrag, R2 oder R' mit diesem; sonst Seiten, breite Züge und Mittelschichten

help-hoodwink-show-view = Das Bild
help-hoodwink-show-view-faces = Drei Seiten, wie das Puzzle gehalten wird
help-hoodwink-show-view-net = Das Puzzle aufgeklappt
help-hoodwink-show-view-strip = Die Verfolgung als Streifen von Bildern, eines je Buchstabe
help-hoodwink-show-view-thread = Das Memo als Faden mit einer Perle je Buchstabe
help-hoodwink-show-hidden = Die drei Seiten, die man nicht sieht
help-hoodwink-show-hidden-no = Nicht gezeichnet
help-hoodwink-show-hidden-mirrors = Wie in Spiegeln neben dem Puzzle
help-hoodwink-show-hidden-open = Aufgeklappt
help-hoodwink-show-out = Wohin geschrieben wird; die Endung .svg oder .png entscheidet die Sorte. Ohne sie geht SVG auf die Standardausgabe
help-hoodwink-show-width = Breite eines PNG in Pixeln
help-hoodwink-show-no_letters = Die Buchstaben weglassen
help-hoodwink-show-held = Das Puzzle vor dem Zeichnen drehen, wie "x2 y"
help-hoodwink-show-mark = Einen Sticker hervorheben, wie UFR
help-hoodwink-show-chain = Sticker durch nummerierte Pfeile verbinden, wie UF,RB,DL
help-hoodwink-show-json = Das Bild als Text in einem JSON-Objekt

help-hoodwink-conventions-show-puzzle = Das Puzzle, dessen Netz und Arten von Teilen gezeigt werden: 2 für das 2x2 bis 7 für das 7x7
help-hoodwink-conventions-show-toml = Als Datei mit Konventionen, in der jeder Schlüssel steht
help-hoodwink-conventions-check-file = Die Datei, oder - für die Standardeingabe

help-hoodwink-algs-find-targets = Der Fall: zwei Ziele, als Buchstabe oder Sticker, wie UBR RDF
help-hoodwink-algs-find-puzzle = Das Puzzle: 2 oder 3, für Wings und Center auch 4 bis 7
help-hoodwink-algs-find-kind = Die Art der Teile: corner oder edge, oder eine von Wings oder Centern wie wing oder x-centre
help-hoodwink-algs-find-buffer = Der Puffer; sonst der deiner Konventionen
help-hoodwink-algs-find-all = Alle Dreierzyklen des Puffers
help-hoodwink-algs-find-twist = Zwei Ecken an ihrem Ort drehen, die erste im Uhrzeigersinn: UBL,DFR
help-hoodwink-algs-find-flip = Zwei Kanten an ihrem Ort kippen: UF,UB
help-hoodwink-algs-find-exchange = Zwei Ecken und zwei Kanten tauschen: UFR,UBR,UF,UR
help-hoodwink-algs-find-last = Das letzte Ziel der Ecken, während eine andere Ecke gedreht ist und zwei Kanten getauscht sind: UBR,DFR,UF,UR
help-hoodwink-algs-find-moves = Die Züge, mit denen gesucht wird, wie U,D,R,L,F,B oder R,U,M oder Rw,U; sonst die Seiten, für Wings und Center jede einzelne Schicht, die sie bewegt
help-hoodwink-algs-find-metric = Wie Züge gezählt werden: half, quarter, slice oder execution; sonst, wie die Züge nahelegen
help-hoodwink-algs-find-shortest = Nur die kürzesten jedes Falls
help-hoodwink-algs-find-longest = Die größte Länge, die gesucht wird; ohne sie 12 mit --shortest, was für jeden Dreierzyklus von Ecken reicht, und sonst 10; bei Wings und Centern 8, was das Höchste ist
help-hoodwink-algs-find-by = In welcher Reihenfolge
help-hoodwink-algs-find-by-length = Die kürzesten zuerst
help-hoodwink-algs-find-by-ease = Die für die Hände leichtesten zuerst
help-hoodwink-algs-find-count = Wie viele eines Falls gezeigt oder nach Leichtigkeit gesucht werden
help-hoodwink-algs-find-memory = Speicher, den die Suche nehmen darf, wie 4G oder 512M
help-hoodwink-algs-find-quiet = Kein Fortschritt auf der Standardfehlerausgabe
help-hoodwink-algs-find-json = Ein JSON-Objekt je Zeile, für jeden Fall
help-hoodwink-algs-fit-file = Die Zeiten (CSV mit den Spalten algorithm und seconds), oder - für die Standardeingabe
help-hoodwink-algs-fit-out = Wohin die angepassten Kosten geschrieben werden, für --ease
help-hoodwink-algs-fit-ease = Kosten, von denen ausgegangen wird, wie algs fit sie schrieb
help-hoodwink-algs-fit-seed = Die Zahl, nach der die Zeiten geteilt und neu gezogen werden
help-hoodwink-algs-import-anyway = Sie auch schreiben, wenn die meisten Zeilen einen Fehler gemeinsam haben, wie Ecken als Kanten gelesen
help-hoodwink-algs-export-to = Die Form
help-hoodwink-algs-export-to-csv = Eine Liste
help-hoodwink-algs-export-to-markdown = Eine Markdown-Tabelle
help-hoodwink-algs-export-to-svg = Ein Gitter als Bild
help-hoodwink-algs-export-to-html = Ein Gitter als Seite zum Drucken

help-hoodwink-compare-methods = Methoden: one-swap, slice-swap, three-cycle, zwei durch + verbunden für Ecken und Kanten, Zusätze nach Kommas (wie three-cycle+slice-swap,least,exchange), oder Dateien mit Konventionen
help-hoodwink-compare-count = Wie viele Zustände
help-hoodwink-compare-seed = Die Zahl, nach der die zufälligen Zustände gezogen werden
help-hoodwink-compare-svg = Die geschätzten Zeiten zeichnen: Quantile in diese Datei, ein Histogramm je Methode daneben
help-hoodwink-serve-port = Der Port; 0 nimmt irgendeinen freien, und die gedruckte Zeile sagt, welchen
help-hoodwink-completions-shell = Die Shell
help-hoodwink-man-command = Der Befehl, wie trace oder algs find
