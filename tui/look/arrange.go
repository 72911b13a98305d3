package look

// Drawing is some rows of a page that are drawn only if they are shown.
type Drawing struct {
	// Rows is how many rows Draw gives.
	Rows int
	Draw func() []string
}

// Drawn are rows that are drawn already.
func Drawn(rows []string) Drawing { return Drawing{len(rows), func() []string { return rows }} }

// Part is a piece of a page that can be drawn in several sizes.
type Part struct {
	// Sizes are its drawings, from the smallest to the largest; the first may be empty.
	Sizes []Drawing
	// Tight says that no empty row is wanted below it.
	Tight bool
	at    int
}

// Shown is the size that Arrange has chosen.
func (p *Part) Shown() []string { return p.Sizes[p.at].Draw() }

func (p *Part) rows() int { return p.Sizes[p.at].Rows }

// NewPart is a part with rows that are drawn already, from the smallest to the largest.
func NewPart(sizes ...[]string) *Part {
	p := &Part{}
	for _, rows := range sizes {
		p.Sizes = append(p.Sizes, Drawn(rows))
	}
	return p
}

// Size is the number of that size.
func (p *Part) Size() int { return p.at }

// Wish asks for a part to be drawn at a size; sizes beyond its largest mean that one.
type Wish struct {
	Part *Part
	Size int
}

// At is the wish for a part at a size.
func (p *Part) At(size int) Wish { return Wish{Part: p, Size: size} }

// Choose chooses a size for each part, so that all of them find room in h rows: every part is there in its
// smallest size, and wishes are granted in their order while there is room. It gives the rows that are left over,
// fewer than none where not even the smallest sizes find room.
func Choose(h int, parts []*Part, wishes []Wish) int {
	used := 0
	for _, p := range parts {
		p.at = 0
		used += p.rows()
	}
	for _, w := range wishes {
		size := min(w.Size, len(w.Part.Sizes)-1)
		more := w.Part.Sizes[size].Rows - w.Part.rows()
		if size > w.Part.at && used+more <= h {
			w.Part.at, used = size, used+more
		}
	}
	return h - used
}

// Arrange draws the parts in the sizes that [Choose] gives them. What is left over becomes empty rows between the
// parts. The rows are exactly h, or more where not even the smallest sizes find room.
func Arrange(h int, parts []*Part, wishes []Wish) []string {
	gaps := shareGaps(parts, Choose(h, parts, wishes))
	var rows []string
	for i, p := range parts {
		rows = append(rows, p.Shown()...)
		rows = append(rows, Blanks(gaps[i])...)
	}
	return rows
}

// shareGaps shares empty rows out below the parts that want some; what nobody wants stands below the last but one,
// so that the last part stays at the foot.
func shareGaps(parts []*Part, left int) []int {
	gaps := make([]int, len(parts))
	for given := true; left > 0 && given; {
		given = false
		for i, p := range parts[:max(len(parts)-1, 0)] {
			if left > 0 && !p.Tight && p.rows() > 0 {
				gaps[i], left, given = gaps[i]+1, left-1, true
			}
		}
	}
	if n := len(parts); left > 0 && n > 0 {
		gaps[max(n-2, 0)] += left
	}
	return gaps
}
