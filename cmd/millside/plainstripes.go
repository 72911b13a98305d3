package main

import (
	"fmt"
	"strings"

	"millside/plan"
)

// setUpWords says how the paddle of a striped warp is threaded for the first pass, or what is changed in
// it before a later one; nothing where nothing is.
func (p *plain) setUpWords(pass plan.Pass) []string {
	if !p.st.Plan.Striped() {
		return nil
	}
	if pass.Number == 1 && p.st.Chain == 1 {
		return []string{"Thread it, position 1 nearest the thumb: " + threadingWords(p.st.Plan, p.st.Plan.SetUpOf(pass)) + "."}
	}
	var changes []string
	for _, c := range p.st.Plan.ChangesBefore(p.st.Current(), pass.Number) {
		changes = append(changes, fmt.Sprintf("position %d from %s to %s", c.Position, p.st.Plan.ColourText(c.From), p.st.Plan.ColourText(c.To)))
	}
	if len(changes) == 0 {
		return nil
	}
	peg := "near"
	if !pass.Direction.Far() {
		peg = "far"
	}
	return []string{fmt.Sprintf("Cut, tie in and thread at the %s end peg: %s.", peg, strings.Join(changes, "; "))}
}

// threadingWords lists the positions of each colour, in the order in which the colours come first.
func threadingWords(p *plan.Plan, set plan.SetUp) string {
	var order []int
	at := map[int]plan.Positions{}
	for i, colour := range set {
		if colour == 0 {
			continue
		}
		if at[colour] == 0 {
			order = append(order, colour)
		}
		at[colour] |= plan.FirstPositions(i + 1).Without(plan.FirstPositions(i))
	}
	var parts []string
	for _, colour := range order {
		parts = append(parts, p.ColourText(colour)+" in "+positions(at[colour]))
	}
	return strings.Join(parts, "; ")
}

// colourWords names the colour of an end of a striped warp.
func (p *plain) colourWords(end int) []string {
	colour := p.st.Plan.EndColour(end)
	if end == 0 || colour == 0 {
		return nil
	}
	return []string{"Its colour is " + p.st.Plan.ColourText(colour) + "."}
}
