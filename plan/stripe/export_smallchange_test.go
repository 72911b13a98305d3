package stripe

// SmallChanges is the changes of an order that are tried, the order that each makes by its words.
func SmallChanges(o Order) map[string]string {
	made := map[string]string{}
	for _, w := range widenings(o) {
		made[w.words(o)] = Order{Colours: o.Colours, Parts: w.parts(o.Parts)}.String()
	}
	return made
}
