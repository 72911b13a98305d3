package planout

import (
	"millside/plan"
	"millside/plan/athand"
	"millside/plan/measure"
	"millside/plan/start"
)

// startFormat names the structure below.
const startFormat = "millside-start-1"

type startJSON struct {
	Format   string        `json:"format"` // startFormat
	Found    start.Find    `json:"found" about:"length, ends, width, pieces or yarn"`
	Answer   string        `json:"answer" about:"what was found, with its unit"`
	Steps    []measure.Row `json:"steps" about:"how it was found, line by line"`
	Packages []useJSON     `json:"packages"`
	Short    bool          `json:"short" about:"the yarn on hand doesn't suffice"`
	Notes    []string      `json:"notes"`
	Command  string        `json:"command,omitempty" about:"what plans the warp, once ends and length are known"`
	Spec     plan.Spec     `json:"spec" about:"the warp, as a plan goes on from it"`
	Assumed  []assumedJSON `json:"assumed,omitempty" about:"what is taken because there is only one of it at hand"`
}

type useJSON struct {
	Number   int            `json:"number" about:"its place among those on hand; 0 where there need only be one"`
	Colour   string         `json:"colour,omitempty"`
	Passes   int            `json:"passes"`
	Ties     int            `json:"ties" about:"how often it is tied on"`
	Holds    measure.Length `json:"holds"`
	Used     measure.Length `json:"used"`
	Left     measure.Length `json:"left"`
	Short    measure.Length `json:"short"`
	UsedMass measure.Mass   `json:"used_weight" about:"0 where the yarn's size isn't known"`
	LeftMass measure.Mass   `json:"left_weight"`
}

const aboutStart = `One object with "format": "millside-start-1": found (length, ends, width, pieces or
yarn), answer, steps (name, value and how of each line), packages (number, colour, passes,
ties, holds, used, left, short, used_weight, left_weight), short (the yarn on hand doesn't
suffice), notes, spec (the warp, as a plan goes on from it) and, where ends and length are
known, command: what plans it.`

// StartToJSON is what was found, for a program to read. The command is "" where there is none.
func StartToJSON(r *start.Result, command string, assumed []athand.Assumed) startJSON {
	out := startJSON{Format: startFormat, Found: r.Find, Answer: r.Answer.Plain(), Steps: r.Lines,
		Packages: []useJSON{}, Short: r.Short, Notes: append([]string{}, r.Notes...), Command: command, Spec: r.Spec,
		Assumed: AssumedToJSON(r.Spec, assumed)}
	for _, u := range r.Packages {
		out.Packages = append(out.Packages, useJSON{u.Number, u.Package.Colour, u.Passes, u.Ties, u.Holds, u.Used,
			u.Left, u.Short, u.UsedMass, u.LeftMass})
	}
	return out
}
