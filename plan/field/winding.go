package field

import (
	"time"

	"millside/plan/measure"
)

// Winding.
var (
	TieEvery = add(Winding, Field{Name: "count tie every", Label: "count tie every", Flag: "tie-every", Value: Number,
		Low: 1, High: measure.MaxEnds, Zero: "for none", Count: 100, Help: "ends from one count tie to the next"})
	Guard = add(Winding, Field{Name: "guard", Label: "guard, seconds", Flag: "guard", Value: "time",
		Time:    2 * time.Second,
		Longest: time.Minute,
		Help:    "presses sooner than this after the last pass are not counted; 0 turns it off"})
	Rest = add(Winding, Field{Name: "rest every", Label: "rest, minutes", Flag: "rest", Value: Number, Low: 1,
		High: 240,
		Zero: "for none", Help: "minutes of winding before a reminder to rest the hands"})
	MinutesPass = add(Winding, Field{Name: "minutes a pass", Label: "minutes a pass", Flag: "minutes-pass",
		Value: Minutes, Optional: true,
		Help: "minutes that a whole pass takes, whatever the turns; goes before handling, turn and your own pace"})
	MinutesHandling = add(Winding, Field{Name: "minutes of handling", Label: "handling, min", Flag: "minutes-handling",
		Value: Minutes, Help: "minutes that a pass takes at its two ends"})
	MinutesTurn = add(Winding, Field{Name: "minutes a turn", Label: "a turn, min", Flag: "minutes-turn", Value: Minutes,
		Help: "minutes that a turn of the mill takes"})
	MinutesHalt = add(Winding, Field{Name: "minutes a halt", Label: "a halt, min", Flag: "minutes-halt", Value: Minutes,
		Help: "minutes to halt at a peg, however much is done there"})
	MinutesCut = add(Winding, Field{Name: "minutes to cut off an end", Label: "cut off, min", Flag: "minutes-cut",
		Value: Minutes, Help: "minutes to cut off an end"})
	MinutesTie = add(Winding, Field{Name: "minutes to tie on an end", Label: "tie on, min", Flag: "minutes-tie",
		Value: Minutes, Help: "minutes to tie on an end"})
	MinutesThread = add(Winding, Field{Name: "minutes to thread a package", Label: "thread, min",
		Flag:  "minutes-thread",
		Value: Minutes, Help: "minutes to thread a package"})
	MinutesFar = add(Winding, Field{Name: "minutes more to finish at the far end", Label: "far finish, min",
		Flag: "minutes-far", Value: Minutes, Help: "minutes more to finish a chain at the counting cross"})
)
