# Was beim Bereitstellen der Web-App gesagt wird: am Anfang von der Befehlszeile, später vom Server denen, die ihn fragen.

serve-no-port = Ein Port ist eine Zahl von 0 bis 65535, wie --port 4170; 0 nimmt irgendeinen freien.
serve-taken-by-hoodwink = Port { $port } ist belegt: Dort läuft schon ein anderes Hoodwink. Öffne { $address } oder nimm einen anderen Port: { $offer }
serve-taken-by-other = Port { $port } ist von einem anderen Programm belegt. Nimm einen anderen: { $offer }
serve-offer-free = --port { $free } ist jetzt frei, --port 0 nimmt irgendeinen freien und sagt, welchen.
serve-offer-any = --port 0 nimmt irgendeinen freien und sagt, welchen.
serve-forbidden = Dieses System lässt das Programm nicht an Port { $port } lauschen. Nimm einen ab 1024; --port 0 nimmt irgendeinen freien und sagt, welchen.
serve-failed = An Port { $port } kann nichts bereitgestellt werden: { $what }
serve-failed-address = Dieser Rechner hat keine Adresse { $address }.
serve-failed-memory = Der Speicher reicht nicht.
serve-failed-number = Das System lehnt es ab (Fehler { $number }).
serve-failed-unknown = Das System lehnt es ohne Grund ab.

serve-no-file = Diese Datei gibt es hier nicht.
serve-no-host = Die Anfrage muss einmal sagen, an welchen Host sie geht.
serve-other-host = Das ist Hoodwink, nur für diesen Rechner. Es antwortet auf 127.0.0.1 und localhost mit seinem Port und auf keinen anderen Namen; öffne { $address }
serve-other-origin = Das ist Hoodwink, nur für diesen Rechner. Die Seiten anderer Anbieter bekommen keine Antwort; öffne { $address }
serve-only-files = Hier kann man Dateien holen (GET, HEAD), sonst nichts.
serve-no-content = An diesen Server kann man nichts senden; eine Anfrage nach einer Datei hat keinen Inhalt.
serve-other-version = Die Datei ist nicht die Fassung, nach der gefragt wurde.
serve-outside = Die Datei hat { $length } Bytes; der verlangte Teil liegt nicht darin.
serve-fault = Diese Anfrage ist auf einen Fehler des Programms gestoßen. Der Server läuft weiter.

not-built-title = Hoodwink: Die Oberfläche ist nicht gebaut
not-built-heading = Die Oberfläche ist nicht Teil dieses Programms
not-built-before = Es wurde vor ihr gebaut. Rufe im Ordner der Quellen auf:
not-built-after = Das baut die Oberfläche (dazu braucht es Node ab 20), baut mit ihr das Programm neu und öffnet es.
not-built-alone = Das schreibt die Oberfläche allein, als Ordner für einen beliebigen Webhost:
