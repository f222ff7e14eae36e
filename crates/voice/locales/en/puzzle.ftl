# What colours, pieces, kinds and holds are called.

colour-white = white
colour-yellow = yellow
colour-red = red
colour-orange = orange
colour-green = green
colour-blue = blue

kind-corner = corner
kinds-corner = corners
kind-edge = edge
kinds-edge = edges
kind-wing = wing
kinds-wing = wings
kind-wing-3 = inner wing
kinds-wing-3 = inner wings
kind-x-centre = x-centre
kinds-x-centre = x-centres
kind-x-centre-3 = inner x-centre
kinds-x-centre-3 = inner x-centres
kind-t-centre = t-centre
kinds-t-centre = t-centres
kind-t-centre-3 = inner t-centre
kinds-t-centre-3 = inner t-centres
kind-left-oblique = left oblique
kinds-left-oblique = left obliques
kind-right-oblique = right oblique
kinds-right-oblique = right obliques

list-and = { $first } and { $last }
list-or = { $first } or { $last }
pieces-number = { $number } { $kinds }

hold-as-scrambled = Keep it as it was scrambled, { $up } up, { $front } front.
hold-turned = Turn the puzzle: { $up } up, { $front } front becomes { $newup } up, { $newfront } front: { $moves }.

# A number with decimals.
decimal = { $whole }.{ $rest }
