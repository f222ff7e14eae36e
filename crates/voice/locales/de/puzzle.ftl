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
kind-x-centre = X-Center
kinds-x-centre = X-Center
kind-t-centre = T-Center
kinds-t-centre = T-Center
kind-oblique = Oblique
kinds-oblique = Obliques

list-and = { $first } und { $last }

hold-as-scrambled = Halte ihn wie beim Verdrehen, { $up } oben, { $front } vorn.
hold-turned = { $up } oben, { $front } vorn wird zu { $newup } oben, { $newfront } vorn: { $moves }.

# A number with decimals.
decimal = { $whole },{ $rest }
