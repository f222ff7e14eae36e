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
kind-x-centre = x-centre
kinds-x-centre = x-centres
kind-t-centre = t-centre
kinds-t-centre = t-centres
kind-oblique = oblique
kinds-oblique = obliques

list-and = { $first } and { $last }

hold-as-scrambled = Keep it as it was scrambled, { $up } up, { $front } front.
hold-turned = { $up } up, { $front } front becomes { $newup } up, { $newfront } front: { $moves }.

# A number with decimals.
decimal = { $whole }.{ $rest }
