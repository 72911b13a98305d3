package plan

// Look is when the winder is asked to look at the lease, and what for.
type Look struct {
	// Chain and Pass say after which return pass, both counted from 1; 0 where nothing is to be seen.
	Chain, Pass int
	// Kind is [CheckLease] where the seam between two groups shows the return order, else [CheckFoot].
	Kind TaskKind
}

// LeaseLook is the look at the lease that a warp asks for: after the first return pass with an even
// number of ends, since only there do the two return orders put different ends side by side where the
// groups meet on a lease that one of them makes wrong. Where no return pass is even the lease is right
// either way; then it is asked after the first return pass of more than one end where position 1 lies,
// on which every end's number depends. A warp without either asks for no look: Pass is 0.
func (p *Plan) LeaseLook() Look { return p.look }

// text asks the question in a few words.
func (l Look) text() string {
	if l.Kind == CheckFoot {
		return "look at the lease: where does position 1 lie in the group just laid?"
	}
	return "look at the lease: do neighbours alternate where the last two groups meet?"
}

func findLook(chains []Chain) Look {
	var odd Look
	for _, c := range chains {
		for k := 1; k < len(c.Passes); k += 2 {
			switch n := c.Passes[k].Ends(); {
			case n%2 == 0:
				return Look{Chain: c.Number, Pass: k + 1, Kind: CheckLease}
			case n > 1 && odd.Pass == 0:
				odd = Look{Chain: c.Number, Pass: k + 1, Kind: CheckFoot}
			}
		}
	}
	return odd
}
