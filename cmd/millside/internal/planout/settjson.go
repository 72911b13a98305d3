package planout

import (
	"millside/plan/cloth"
	"millside/plan/measure"
)

// settFormat names the structure below, as sheetFormat does.
const settFormat = "millside-sett-1"

type settJSON struct {
	Format string           `json:"format"` // settFormat
	Yarn   measure.YarnSize `json:"yarn"`
	Weave  weaveJSON        `json:"weave"`
	Factor int              `json:"factor_hundredths"`
	// Face is what shows in the cloth; but for a balanced one the weave doesn't count, and Weft does.
	Face   cloth.Face       `json:"face" about:"what shows; but for a balanced cloth the weave doesn't count"`
	Weft   measure.YarnSize `json:"weft,omitzero" about:"where one yarn shows; the warp's where it is left out"`
	Rows   []measure.Row    `json:"rows"`
	Note   string           `json:"note"`
	Others []otherSettJSON  `json:"others"`
	// ReedSetts is there where reeds are at hand.
	ReedSetts []reedSettsJSON `json:"reed_setts,omitempty" about:"what each reed gives near the sett to start at"`
}

type weaveJSON struct {
	Name          string `json:"name"`
	Ends          int    `json:"ends"`
	Intersections int    `json:"intersections"`
}

type otherSettJSON struct {
	For    string       `json:"for"`
	Source string       `json:"source"`
	Factor int          `json:"factor_hundredths"`
	Start  measure.Sett `json:"start"`
}

// SettToJSON is the same for a program to read.
func SettToJSON(ask SettAsk, help *measure.SettHelp, others []otherSett) settJSON {
	out := settJSON{Format: settFormat, Yarn: ask.Yarn, Weave: weaveJSON(ask.Weave), Factor: ask.Factor.Hundredths,
		Face: ask.Face, Weft: ask.Weft,
		Rows: help.Rows, Note: help.Note, Others: []otherSettJSON{}}
	out.ReedSetts = reedSettsToJSON(ask.reedSetts(help))
	for _, o := range others {
		out.Others = append(out.Others, otherSettJSON{o.factor.For, o.factor.Source, o.factor.Hundredths, o.start})
	}
	return out
}
