package athand

import (
	"fmt"
	"slices"
	"strings"

	"millside/plan"
	"millside/plan/frame"
	"millside/plan/loom"
	"millside/plan/measure"
)

// AtHand is what a weaver has in the studio, kept once so that plans can name it. [Parse] reads it
// from the weaver's own file, [AtHand.String] writes it.
type AtHand struct {
	Mills   []NamedMill   `json:"mills,omitempty"`
	Boards  []NamedBoard  `json:"boards,omitempty"`
	Paddles []NamedPaddle `json:"paddles,omitempty"`
	Reeds   []NamedReed   `json:"reeds,omitempty"`
	Raddles []NamedRaddle `json:"raddles,omitempty"`
	Looms   []NamedLoom   `json:"looms,omitempty"`
	Yarns   []NamedYarn   `json:"yarns,omitempty"`
}

// NamedMill is a mill with the room on its pegs.
type NamedMill struct {
	Name string     `json:"name"`
	Mill frame.Mill `json:"mill"`
	Pegs plan.Pegs  `json:"pegs,omitzero"`
}

// NamedBoard is a warping board.
type NamedBoard struct {
	Name  string      `json:"name"`
	Board frame.Board `json:"board"`
}

// NamedPaddle is a paddle with 1 to [measure.MaxPositions] positions.
type NamedPaddle struct {
	Name      string `json:"name"`
	Positions int    `json:"positions"`
}

// NamedReed is a reed.
type NamedReed struct {
	Name string    `json:"name"`
	Reed loom.Reed `json:"reed"`
}

// NamedRaddle is a raddle.
type NamedRaddle struct {
	Name   string      `json:"name"`
	Raddle loom.Raddle `json:"raddle"`
}

// NamedLoom is a loom with the heddles on each shaft, shaft 1 first.
type NamedLoom struct {
	Name    string `json:"name"`
	Heddles []int  `json:"heddles"`
}

// NamedYarn is a yarn with its cones.
type NamedYarn struct {
	Name string        `json:"name"`
	Yarn plan.WarpYarn `json:"yarn"`
}

func (n NamedMill) called() string   { return n.Name }
func (n NamedBoard) called() string  { return n.Name }
func (n NamedPaddle) called() string { return n.Name }
func (n NamedReed) called() string   { return n.Name }
func (n NamedRaddle) called() string { return n.Name }
func (n NamedLoom) called() string   { return n.Name }
func (n NamedYarn) called() string   { return n.Name }

// The names of the kinds of thing, as the file and the errors say them.
const (
	kindMill   = "mill"
	kindBoard  = "board"
	kindPaddle = "paddle"
	kindReed   = "reed"
	kindRaddle = "raddle"
	kindLoom   = "loom"
	kindYarn   = "yarn"
)

// FindMill finds a mill by its name, in small or capital letters. The error is a [*measure.FieldError] that lists
// the names that there are; so it is with the other kinds.
func (h AtHand) FindMill(name string) (NamedMill, error) { return named(h.Mills, kindMill, name) }

// FindBoard finds a board by its name.
func (h AtHand) FindBoard(name string) (NamedBoard, error) { return named(h.Boards, kindBoard, name) }

// FindPaddle finds a paddle by its name.
func (h AtHand) FindPaddle(name string) (NamedPaddle, error) {
	return named(h.Paddles, kindPaddle, name)
}

// FindReed finds a reed by its name.
func (h AtHand) FindReed(name string) (NamedReed, error) { return named(h.Reeds, kindReed, name) }

// FindRaddle finds a raddle by its name.
func (h AtHand) FindRaddle(name string) (NamedRaddle, error) {
	return named(h.Raddles, kindRaddle, name)
}

// FindLoom finds a loom by its name.
func (h AtHand) FindLoom(name string) (NamedLoom, error) { return named(h.Looms, kindLoom, name) }

// FindYarn finds a yarn by its name.
func (h AtHand) FindYarn(name string) (NamedYarn, error) { return named(h.Yarns, kindYarn, name) }

func named[T interface{ called() string }](list []T, kind, name string) (T, error) {
	i := slices.IndexFunc(list, func(t T) bool { return sameName(t.called(), name) })
	if i >= 0 {
		return list[i], nil
	}
	want := fmt.Sprintf("the name of a %s at hand; there is none yet", kind)
	if len(list) > 0 {
		var names []string
		for _, t := range list {
			names = append(names, t.called())
		}
		want = fmt.Sprintf("the name of a %s at hand: %s", kind, strings.Join(names, ", "))
	}
	var none T
	return none, &measure.FieldError{Field: kind, Value: name, Want: want}
}

// sameName compares names as a weaver does: capital letters and further spaces make no difference.
func sameName(a, b string) bool {
	return strings.EqualFold(strings.Join(strings.Fields(a), " "), strings.Join(strings.Fields(b), " "))
}

// IsEmpty says that nothing is at hand.
func (h AtHand) IsEmpty() bool { return h.things() == 0 }

func (h AtHand) things() int {
	return len(h.Mills) + len(h.Boards) + len(h.Paddles) + len(h.Reeds) + len(h.Raddles) + len(h.Looms) + len(h.Yarns)
}

// PaddleNames names the paddles by their positions: of several with as many the first.
func (h AtHand) PaddleNames() map[int]string {
	names := map[int]string{}
	for _, p := range h.Paddles {
		if names[p.Positions] == "" {
			names[p.Positions] = p.Name
		}
	}
	return names
}
