package mill

import (
	"fmt"
	"slices"
	"strings"

	"millside/counter/session"
	"millside/plan/wind"
	"millside/tui/look"
)

// step is one thing that the hands do on a pass: in one or two short phrases to be drawn large, and in words.
type step struct {
	phrases []string
	// words are the step in full, brief without the words that can be missed.
	words, brief string
	turn         rune // the sign of a turn, drawn before the first phrase
	// head and tail are the phrases of a turn taken apart for a narrow screen: what is drawn in block letters, and the
	// words that stand beside it.
	head string
	tail []string
	// loose says that the phrase may be drawn smaller than the others, since positions can be many.
	loose bool
}

// stepsOf are the steps of a pass, in the order of the hands.
func stepsOf(in session.Instruction) []step {
	lease := step{brief: fmt.Sprintf("%s %s, flick, %s %s", in.Lease[0].Peg, in.Lease[0].Opening, in.Lease[1].Peg,
		in.Lease[1].Opening),
		words: fmt.Sprintf("lease: %s over %s, flick, %s over %s", in.Lease[0].Opening, in.Lease[0].Peg,
			in.Lease[1].Opening, in.Lease[1].Peg)}
	for _, d := range in.Lease {
		lease.phrases = append(lease.phrases, d.Peg.String()+" "+openingWord(d.Opening))
	}
	cross := step{phrases: []string{fmt.Sprintf("OVER %d", in.Over), fmt.Sprintf("UNDER %d", in.Under)},
		words: fmt.Sprintf("counting cross: over %d, under %d", in.Over, in.Under),
		brief: fmt.Sprintf("over %d, under %d", in.Over, in.Under)}
	turn := step{phrases: []string{strings.ToUpper(in.Turn.String())}, turn: look.SignCounterclockwise,
		words: fmt.Sprintf("%s round the %s", in.Turn, in.TurnPeg), brief: fmt.Sprintf("%s, %s", in.Turn, in.TurnPeg)}
	if in.Turn == wind.Clockwise {
		turn.turn = look.SignClockwise
	}
	turn.head = turn.phrases[0]
	if in.Turn == wind.Counterclockwise {
		turn.head, turn.tail = counterHead, []string{strings.TrimPrefix(turn.phrases[0], counterHead)}
	}
	switch in.Round {
	case session.RoundKeep:
		turn.phrases, turn.tail, turn.brief = append(turn.phrases, "KEEP"), append(turn.tail, "KEEP"), turn.brief+
			"; keep"
	case session.RoundFlick:
		turn.phrases, turn.tail, turn.brief = append(turn.phrases, "FLICK"), append(turn.tail, "FLICK"), turn.brief+
			"; flick"
	}
	if in.Round != session.RoundNone {
		turn.words += "; " + in.Round.String()
	}
	steps := []step{lease, cross, turn}
	if !in.Pass.Direction.Far() {
		steps = []step{cross, lease, turn}
	}
	return append(carrySteps(in), steps...)
}

// counterHead is the part of "counterclockwise" that tells it from "clockwise".
const counterHead = "COUNTER"

// carrySteps say what is carried or left out on the pass.
func carrySteps(in session.Instruction) []step {
	var steps []step
	for _, item := range in.Now {
		if item.Kind != session.ItemCarry {
			continue
		}
		phrase := "carry " + in.Pass.Carried.String()
		if in.LeftOut != 0 && in.LeftOut.Count() < in.Pass.Carried.Count() {
			phrase = "leave out " + in.LeftOut.String()
		}
		steps = append(steps, step{phrases: []string{strings.ToUpper(phrase)}, words: item.Text, brief: item.Text,
			loose: true})
	}
	return steps
}

// otherItems are the items that are no steps, and don't stand at the head of the page.
func otherItems(items []session.Item) []session.Item {
	return slices.DeleteFunc(slices.Clone(items), func(item session.Item) bool {
		return item.Kind == session.ItemCarry || item.Kind == session.ItemLast
	})
}

// openingWord names the half of the group that is up.
func openingWord(o wind.Opening) string {
	if o == wind.HolesUp {
		return "HOLES"
	}
	return "SLOTS"
}

// narrow is the width below which instructions in words lose the words that can be missed.
const narrow = 56

// sized is a step at a size, without colours, and its words where they stand below it.
type sized struct {
	big   look.Drawing
	words []string
}

// stepSizes draws the steps in all sizes that find room in w cells: in words, at double width, and in block
// letters, each once with the loose steps smaller, once as tight as it goes, once with room between, and once with the
// words below.
func stepSizes(s look.Styles, steps []step, w int) [][]sized {
	words := make([][]string, len(steps))
	var plain []sized
	for i, st := range steps {
		text := st.words
		if w < narrow {
			text = st.brief
		}
		words[i] = look.Wrap(text, w)
		plain = append(plain, sized{big: look.Drawn(words[i])})
	}
	sizes := [][]sized{plain}
	for z := look.Double; ; z++ {
		var small, tight, spread, told []sized
		for i, st := range steps {
			big, ok := st.at(s, z, w)
			if !ok {
				return sizes
			}
			less := big
			if st.loose {
				less, _ = st.at(s, max(z-1, look.Double), w)
			}
			between := look.Blanks(min(len(steps)-1-i, 1))
			small, tight = append(small, sized{big: less}), append(tight, sized{big: big})
			if (z-look.Blocks)%2 == 1 { // here the letters fill their rows, elsewhere half a row below them is empty
				small[i].words = between
			}
			spread, told = append(spread, sized{big, between}), append(told, sized{big, words[i]})
		}
		if z < look.Blocks {
			sizes = append(sizes, tight)
			continue
		}
		sizes = append(sizes, small, tight, spread, told)
	}
}

// coloured are the rows of sized steps in a style, the words below them as they are.
func coloured(steps []sized, style look.Style) []string {
	var out []string
	for _, st := range steps {
		out = append(append(out, look.Painted(st.big.Draw(), style)...), st.words...)
	}
	return out
}

func rowsOf(steps []sized) int {
	n := 0
	for _, st := range steps {
		n += st.big.Rows + len(st.words)
	}
	return n
}

// How much stands below a step.
const (
	small  = iota // as much room as the size needs, and the loose steps are a size smaller
	bare          // nothing
	roomy         // an empty row
	worded        // the step in words
)

// sizeOf is the place of a size among those of stepSizes.
func sizeOf(z look.Size, below int) int {
	if z < look.Blocks {
		return int(z)
	}
	return int(look.Blocks) + 4*int(z-look.Blocks) + below
}

// at is a step at a size: its phrases side by side where they find room, else one below the other; false where one
// is too wide. The sign of a turn is drawn only in block letters.
func (st step) at(s look.Styles, z look.Size, w int) (look.Drawing, bool) {
	if st.loose {
		for smaller := z; smaller > look.AsItIs; smaller-- {
			if d, ok := phrasesAt(s, st.phrases, smaller, w); ok {
				return d, true
			}
		}
		return look.Drawn(look.Wrap(st.words, w)), true
	}
	if st.turn == 0 || z < look.Blocks {
		return phrasesAt(s, st.phrases, z, w)
	}
	for _, apart := range []bool{false, true} { // the whole of it smaller rather than a part of it large
		for word := z; word >= look.Blocks; word-- {
			if d, ok := st.turnAt(s, z, word, apart, w); ok {
				return d, true
			}
		}
	}
	return st.turnAt(s, z, look.Double, false, w)
}

// turnAt is a turn with its sign at one size and its words at another: the phrases beside one another, or apart, the
// part that tells the turns from one another large and the rest beside it.
func (st step) turnAt(s look.Styles, z, word look.Size, apart bool, w int) (look.Drawing, bool) {
	left := s.Width(string(st.turn), z) + 2
	beside, ok := phrasesAt(s, st.phrases, word, w-left)
	if apart {
		beside, ok = st.apartAt(s, word, w-left)
	}
	if !ok || beside.Rows > s.Rows(z) {
		return look.Drawing{}, false
	}
	return look.Drawing{Rows: s.Rows(z), Draw: func() []string {
		return look.Beside(s.Big(string(st.turn), z), middle(beside.Draw(), s.Rows(z)), left-2, 2)
	}}, true
}

// apartAt is the head of a turn in block letters with its tail beside it, as wide as it goes.
func (st step) apartAt(s look.Styles, z look.Size, w int) (look.Drawing, bool) {
	left := s.Width(st.head, z) + 2
	for tail := look.Double; tail >= look.AsItIs; tail-- {
		wide := 0
		for _, t := range st.tail {
			wide = max(wide, s.Width(t, tail))
		}
		if left+wide > w || len(st.tail) > s.Rows(z) {
			continue
		}
		return look.Drawing{Rows: s.Rows(z), Draw: func() []string {
			return look.Beside(s.Big(st.head, z), middle(stackedRows(s, st.tail, tail, wide), s.Rows(z)), left-2, 2)
		}}, true
	}
	return look.Drawing{}, false
}

// phrasesAt sets phrases side by side at a size where they find room, else one below the other.
func phrasesAt(s look.Styles, phrases []string, z look.Size, w int) (look.Drawing, bool) {
	for _, p := range phrases {
		if z >= look.Blocks && !look.Known(p) {
			return look.Drawing{}, false
		}
	}
	gap := 4 * max(int(z-look.Blocks)+1, 1)
	joined, widest := -gap, 0
	for _, p := range phrases {
		joined, widest = joined+gap+s.Width(p, z), max(widest, s.Width(p, z))
	}
	switch {
	case joined <= w:
		return look.Drawing{Rows: s.Rows(z), Draw: func() []string { return joinedRows(s, phrases, z, gap) }}, true
	case widest <= w:
		return look.Drawing{Rows: s.Rows(z) * len(phrases),
			Draw: func() []string { return stackedRows(s, phrases, z, widest) }}, true
	}
	return look.Drawing{}, false
}

func joinedRows(s look.Styles, phrases []string, z look.Size, gap int) []string {
	rows := s.Big(phrases[0], z)
	for _, p := range phrases[1:] {
		rows = look.Beside(rows, s.Big(p, z), look.Wide(rows[0]), gap)
	}
	return rows
}

func stackedRows(s look.Styles, phrases []string, z look.Size, wide int) []string {
	var rows []string
	for _, p := range phrases {
		for _, l := range s.Big(p, z) {
			rows = append(rows, look.Pad(l, wide))
		}
	}
	return rows
}

// middle sets rows in the middle of a height.
func middle(rows []string, h int) []string {
	return append(look.Blanks(max((h-len(rows))/2, 0)), rows...)
}
