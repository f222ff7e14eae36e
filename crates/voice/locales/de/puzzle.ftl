# Wie Farben, Steine, Arten und Haltungen heißen.

colour-white = weiß
colour-yellow = gelb
colour-red = rot
colour-orange = orange
colour-green = grün
colour-blue = blau

kind-corner = Ecke
kinds-corner = Ecken
kind-edge = Kante
kinds-edge = Kanten
kind-wing = Wing
kinds-wing = Wings
kind-wing-3 = Innen-Wing
kinds-wing-3 = Innen-Wings
kind-x-centre = X-Center
kinds-x-centre = X-Center
kind-x-centre-3 = Innen-X-Center
kinds-x-centre-3 = Innen-X-Center
kind-t-centre = T-Center
kinds-t-centre = T-Center
kind-t-centre-3 = Innen-T-Center
kinds-t-centre-3 = Innen-T-Center
kind-left-oblique = Links-Oblique
kinds-left-oblique = Links-Obliques
kind-right-oblique = Rechts-Oblique
kinds-right-oblique = Rechts-Obliques

list-and = { $first } und { $last }
list-or = { $first } oder { $last }
pieces-number = { $number } { $kinds }

hold-as-scrambled = Halte ihn mit { $up } oben und { $front } vorn, so wie beim Verdrehen.
hold-turned = Drehe den ganzen Würfel, bis { $newup } oben und { $newfront } vorn ist: { $moves }. Beim Verdrehen war { $up } oben und { $front } vorn.

# A number with decimals.
decimal = { $whole },{ $rest }
