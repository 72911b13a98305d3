package drawing

import (
	"fmt"
	"math"

	"millside/cmd/millside/internal/prose"
	"millside/plan/sheet"
)

// The measures of the mill's drawing.
const (
	millLeft, millRight = 1300, 5700
	millTop             = 420
	turnHeight          = 430
	// mostTurns is how many turns are drawn one by one; of a longer warp the first and the last
	// shownTurns are drawn.
	mostTurns, shownTurns = 7, 3
)

// millSketch draws the way of a warp round a mill, seen from the side, the near end at the top. The warp
// lies straight from post to post. Turns are counted from the near end peg, which stands on a post.
type millSketch struct {
	Drawing
	mill  *sheet.MillDrawing
	posts int
	turns float64 // to draw, from the near end peg to the far one
	gap   int     // whole turns that are left out, 0 for none
}

// DrawMill draws the way of the warp on a mill with its lease, its turns and the far end peg to scale.
func DrawMill(m *sheet.MillDrawing) Drawing {
	s := &millSketch{mill: m, posts: postsOf(m)}
	beyond := float64(m.Beyond) / float64(m.Circumference)
	whole := m.Turns
	if whole > mostTurns {
		s.gap = whole - 2*shownTurns
		whole = 2*shownTurns + 1 // one in place of the gap
	}
	s.turns = float64(whole) + beyond
	s.W, s.H = drawingWidth, s.at(s.turns).y+600
	s.Title = "The way of the warp on the mill"
	s.Caption = fmt.Sprintf("The mill from the side, the near end at the top: %s. Full lines in front, broken lines "+
		"behind.", m.Where)
	s.frame()
	s.warp()
	s.pegs()
	return s.Drawing
}

// postsOf is how many posts are drawn: one for each peg step where these go into the mill's round, else
// four.
func postsOf(m *sheet.MillDrawing) int {
	posts := int(m.Circumference / m.PegStep)
	if posts < 3 || posts > 12 || m.Circumference%m.PegStep != 0 {
		return 4
	}
	return posts
}

// askew is how far the mill is turned from standing square to the eye, so that every face is seen.
const askew = math.Pi / 9

// angle is where a post stands: the first face is in front.
func (s *millSketch) angle(post float64) float64 {
	return math.Pi/2 - askew + (2*post-1)*math.Pi/float64(s.posts)
}

// postX is how far from the left a post is seen.
func (s *millSketch) postX(post int) float64 {
	widest := 0.0
	for i := range s.posts {
		widest = math.Max(widest, math.Abs(math.Cos(s.angle(float64(i)))))
	}
	const centre, radius = float64(millLeft+millRight) / 2, float64(millRight-millLeft) / 2
	return centre - radius*math.Cos(s.angle(float64(post)))/widest
}

// at is the place of a point of the warp.
func (s *millSketch) at(turn float64) point {
	post := math.Floor(turn * float64(s.posts))
	from, to := s.postX(int(post)), s.postX(int(post)+1)
	x := from + (to-from)*(turn*float64(s.posts)-post)
	return point{int(math.Round(x)), int(math.Round(millTop + 250 + turnHeight*turn))}
}

// front says whether a face of the mill, from one post to the next, is on the side that is seen.
func (s *millSketch) front(face int) bool { return math.Sin(s.angle(float64(face)+0.5)) > 0 }

// frame draws the posts of the mill and its bars.
func (s *millSketch) frame() {
	low := s.H - 180
	for i := range s.posts {
		class := "thin"
		if s.front(i) || s.front(i-1) {
			class = "wood"
		}
		x := int(math.Round(s.postX(i)))
		s.path(class, point{x, millTop - 100}, point{x, low})
	}
	for _, y := range []int{millTop - 100, low} {
		s.path("wood", point{millLeft, y}, point{millRight, y})
	}
	axle := (millLeft + millRight) / 2
	s.path("wood", point{axle, millTop - 300}, point{axle, millTop - 100})
	s.path("wood", point{axle, low}, point{axle, low + 130})
}

// warp draws the winding way face by face, in front and behind.
func (s *millSketch) warp() {
	faces := int(math.Ceil(s.turns * float64(s.posts)))
	for i := range faces {
		turn := float64(i) / float64(s.posts)
		if s.gap > 0 && turn >= shownTurns && turn < shownTurns+1 {
			continue
		}
		class := "hidden"
		if s.front(i) {
			class = "line"
		}
		s.path(class, s.at(turn), s.at(math.Min(float64(i+1)/float64(s.posts), s.turns)))
	}
	if s.gap > 0 {
		s.text("", "middle", (millLeft+millRight)/2, s.at(shownTurns+0.5).y+50,
			fmt.Sprintf("%s more", prose.Count(s.gap, "turn")))
	}
}

// pegs draws the end pegs and those of both crosses, near each other as they are.
func (s *millSketch) pegs() {
	apart := math.Min(0.28/float64(s.posts), s.turns/8)
	put := func(turn float64, name string, below int) {
		at, class := s.at(turn), "solid"
		if face := turn * float64(s.posts); !s.front(int(math.Floor(face))) && !s.front(int(math.Ceil(face))-1) {
			class = "ring"
		}
		s.circle(class, at, 60)
		s.text("", "middle", at.x, at.y+below, name)
	}
	const above, beneath = -110, 210
	put(0, "near", above)
	put(apart, "A", above)
	put(2*apart, "B", above)
	put(s.turns-2*apart, "1", beneath)
	put(s.turns-apart, "2", beneath)
	put(s.turns, "far", beneath)
	s.text("", "end", millLeft-200, s.at(0).y+50, "lease")
	far := s.at(s.turns)
	x, anchor := millLeft-200, "end"
	if far.x > (millLeft+millRight)/2 {
		x, anchor = millRight+200, "start"
	}
	s.text("", anchor, x, far.y+50, "counting")
	s.text("", anchor, x, far.y+210, "cross")
}
