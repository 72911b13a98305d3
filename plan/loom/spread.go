package loom

import (
	"math/big"
	"strconv"
	"strings"

	"millside/plan/internal/ratio"
)

// spread writes sum over parts as evenly as is possible in whole numbers: any two runs of the same
// length differ by one at the most (a balanced word). 5 over 4 is 1-1-1-2, 12 over 5 is 2-2-3-2-3. It is
// empty where parts is below 1 or sum below 0.
func spread(sum, parts int) []int {
	if parts < 1 || sum < 0 {
		return nil
	}
	word := make([]int, parts)
	done := 0
	for i := range word {
		upTo := i*(sum/parts) + sum/parts + (i+1)*(sum%parts)/parts
		word[i] = upTo - done
		done = upTo
	}
	return word
}

// orderText writes an order as weavers do: "1-1-2".
func orderText(order []int) string {
	parts := make([]string, len(order))
	for i, n := range order {
		parts[i] = strconv.Itoa(n)
	}
	return strings.Join(parts, "-")
}

// nearestFraction is the fraction nearest to r whose denominator is at most limit; of two that are
// equally near the one with the smaller denominator. The denominators are tried one by one, since limit
// is small.
func nearestFraction(r *big.Rat, limit int) *big.Rat {
	var best, off *big.Rat
	for den := 1; den <= limit; den++ {
		n, ok := ratio.Nearest.Whole(ratio.Mul(r, ratio.Of(den)))
		if !ok {
			continue
		}
		try := big.NewRat(n, int64(den))
		if d := new(big.Rat).Abs(ratio.Sub(try, r)); best == nil || d.Cmp(off) < 0 {
			best, off = try, d
		}
	}
	return best
}
