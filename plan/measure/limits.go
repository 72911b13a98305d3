package measure

// MaxEnds is the most ends that a warp may have.
const MaxEnds = 100_000

// MaxPositions is the most positions that a paddle may have.
const MaxPositions = 60

// MaxWidth is the widest cloth, reed or raddle.
const MaxWidth = 20 * Metre

// Distance is how far two whole numbers are from each other.
func Distance(a, b int) int { return max(a-b, b-a) }
