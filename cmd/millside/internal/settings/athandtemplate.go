package settings

// AtHandTemplate explains the file; its examples are comments, so that it holds nothing yet.
const AtHandTemplate = `# Things at hand: the mills, boards, paddles, reeds, raddles, looms and yarns that you
# have.
#
# One thing a line: what it is, what you call it, a colon, and its figures with commas
# between. Lines that begin with # are passed over; take the # away from an example and
# put in your own figures. "millside at-hand" shows what is read.
#
# A mill has a circumference and a peg step, the way from one place for the end pegs to
# the next. If you know them, add rise (how far the warp climbs in a turn), height, peg
# length, and layers (how many layers of yarn a peg may take).
# mill floor mill: circumference 2 yd, peg step 18 in, rise 3 in, height 60 in
# mill table mill: circumference 1.2 m, peg step 30 cm, peg length 12 cm, layers 3
#
# A board has the distances from peg to peg, in the order of the warp.
# board wall board: 36 in x 10, 18 in
#
# A paddle has positions: its holes and slots together.
# paddle long paddle: positions 20
#
# A reed has its number and how it is counted, and a width if you know it.
# reed ten dent: 10 dents an inch, width 36 in
# reed fine reed: 60 in 10 cm, width 90 cm
#
# A raddle has a space, from tooth to tooth, and spaces, how many there are.
# raddle half inch: space 1/2 in, spaces 72
#
# A loom has heddles, as many on each shaft, or shaft by shaft from the first on.
# loom big loom: heddles 100 on 8 shafts
# loom table loom: heddles 60 and 60 and 40 and 40
#
# A yarn has its size and, if you like, colour, cones (what each weighs with its tube),
# tube (what an empty one weighs) and packages (how many you have).
# yarn white cotton: cotton 8/2, colour natural white, packages 12
# yarn grey wool: worsted 2/16, colour grey, cones 250 g and 180 g, tube 30 g
`
