package times

import (
	"bytes"
	"encoding/json"
	"math/big"
	"strconv"
	"strings"
	"time"

	"millside/plan/field"
	"millside/plan/figure"
	"millside/plan/internal/ratio"
	"millside/plan/measure"
)

// HandTimes are the weaver's weights: how long each kind of work takes. All are 0 to [LongestHandTime].
type HandTimes struct {
	// Handling is what a pass takes at its two ends, Turn what each turn of the mill takes.
	Handling, Turn time.Duration
	// Halt is what it takes to stop at a peg and to go on again; Cut and Tie are for each end, Thread for
	// each package.
	Halt, Cut, Tie, Thread time.Duration
	// Far is what it takes more where a chain stops at the counting cross.
	Far time.Duration
	// Pass, where it is above 0, stands for the whole pass in place of Handling and Turn.
	Pass time.Duration
}

// LongestHandTime is the most that any of the [HandTimes] may be.
const LongestHandTime = time.Hour

// longestPassTime bounds what a pass may take, so that no sum over a warp runs over.
const longestPassTime = 12 * time.Hour

// DefaultHandTimes are the times to begin with, until the weaver's own are known. With three and a half
// turns a pass takes 0.55 min, so that 40 passes take 22 min: a practised hand needs 20 to 25 (common
// practice, no source). What each kind of work takes is from memory.
func DefaultHandTimes() HandTimes {
	const hundredth = time.Minute / 100
	return HandTimes{
		Handling: 27 * hundredth, Turn: 8 * hundredth, Halt: 50 * hundredth, Cut: 20 * hundredth,
		Tie: 30 * hundredth, Thread: 100 * hundredth, Far: 90 * hundredth,
	}
}

// PassTime is how long one pass takes with so many turns of the mill, rounded to the nearest nanosecond and
// held to half a day. Nil, or a number below nothing, stands for no turns.
func (t HandTimes) PassTime(turns *big.Rat) time.Duration {
	if t.Pass > 0 {
		return t.Pass
	}
	if turns == nil || turns.Sign() <= 0 {
		return t.Handling
	}
	return roundedPass(new(big.Rat).Add(ratio.Of(t.Handling), ratio.Mul(turns, ratio.Of(t.Turn))))
}

// roundedPass rounds the nanoseconds of a pass to the nearest, and holds them to longestPassTime.
func roundedPass(ns *big.Rat) time.Duration {
	n, ok := ratio.Nearest.Whole(ns)
	if !ok {
		return longestPassTime
	}
	return min(time.Duration(n), longestPassTime)
}

// Total is how long the work takes with so many turns of the mill in each pass.
func (t HandTimes) Total(s WorkSum, turns *big.Rat) time.Duration {
	return timesOver(s.Passes, t.PassTime(turns)) + t.AtPegs(s)
}

// AtPegs is how long the work at the pegs takes, the passes themselves left out.
func (t HandTimes) AtPegs(s WorkSum) time.Duration {
	return timesOver(s.Halts, t.Halt) + timesOver(s.Cuts, t.Cut) + timesOver(s.Ties, t.Tie) +
		timesOver(s.Threads, t.Thread) + timesOver(s.FarFinishes, t.Far)
}

func timesOver(n int, d time.Duration) time.Duration { return time.Duration(n) * d }

// handTime is one of the weights with its name in a plan file and in a message.
type handTime struct {
	key   string
	field *field.Field
	at    func(*HandTimes) *time.Duration
}

var handTimeFields = []handTime{
	{"pass", field.MinutesPass, func(t *HandTimes) *time.Duration { return &t.Pass }},
	{"handling", field.MinutesHandling, func(t *HandTimes) *time.Duration { return &t.Handling }},
	{"turn", field.MinutesTurn, func(t *HandTimes) *time.Duration { return &t.Turn }},
	{"halt", field.MinutesHalt, func(t *HandTimes) *time.Duration { return &t.Halt }},
	{"cut", field.MinutesCut, func(t *HandTimes) *time.Duration { return &t.Cut }},
	{"tie", field.MinutesTie, func(t *HandTimes) *time.Duration { return &t.Tie }},
	{"thread", field.MinutesThread, func(t *HandTimes) *time.Duration { return &t.Thread }},
	{"far", field.MinutesFar, func(t *HandTimes) *time.Duration { return &t.Far }},
}

// MarshalJSON writes the times that aren't 0, such as "16.2s", in a fixed order.
func (t HandTimes) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('{')
	for _, f := range handTimeFields {
		if d := *f.at(&t); d != 0 {
			if b.Len() > 1 {
				b.WriteByte(',')
			}
			b.WriteString(strconv.Quote(f.key) + ":" + strconv.Quote(d.String()))
		}
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}

// UnmarshalJSON reads what MarshalJSON wrote. A name that it doesn't know is an error.
func (t *HandTimes) UnmarshalJSON(b []byte) error {
	var texts map[string]string
	if err := json.Unmarshal(b, &texts); err != nil {
		return &measure.FieldError{Field: "hand times", Value: string(b),
			Want: "times by their names, such as {\"halt\":\"30s\"}"}
	}
	var got HandTimes
	for _, f := range handTimeFields {
		text, ok := texts[f.key]
		if !ok {
			continue
		}
		d, err := time.ParseDuration(text)
		if err != nil {
			return f.field.Wrong(text, "a time such as 30s")
		}
		*f.at(&got) = d
		delete(texts, f.key)
	}
	for name := range texts {
		return &measure.FieldError{Field: "hand times", Value: name,
			Want: "pass, handling, turn, halt, cut, tie, thread or far"}
	}
	*t = got
	return nil
}

// Check reports the times that are out of their range.
func (t HandTimes) Check() []error {
	var errs []error
	for _, f := range handTimeFields {
		if d := *f.at(&t); d < 0 || d > LongestHandTime {
			errs = append(errs, f.field.Wrong(figure.Signed(d.String()), "0 to "+LongestHandTime.String()))
		}
	}
	return errs
}

const (
	minutesWants = "minutes from 0 to 60 with at most four decimals, such as 0.6"
	// inMinute is the parts that a minute is divided into: four decimals, so that no time is rounded.
	inMinute = 10_000
)

// ParseMinutes reads a time in minutes as a weaver's guess is written: "0.6" is 36 seconds. The error is a
// [*FieldError] without a field name.
func ParseMinutes(s string) (time.Duration, error) {
	wrong := &measure.FieldError{Value: s, Want: figure.Signed(minutesWants)}
	text := strings.Replace(strings.TrimSpace(s), ",", ".", 1)
	whole, part, _ := strings.Cut(text, ".")
	if whole+part == "" || len(whole) > 2 || len(part) > 4 || strings.Trim(whole+part, "0123456789") != "" {
		return 0, wrong
	}
	n, err := strconv.Atoi(whole + part + strings.Repeat("0", 4-len(part)))
	if err != nil || n > 60*inMinute {
		return 0, wrong
	}
	return time.Duration(n) * (time.Minute / inMinute), nil
}

// MinutesText writes a time in minutes with up to four decimals, which is exact for what ParseMinutes
// reads, and rounded to the nearest for another.
func MinutesText(d time.Duration) string {
	return figure.Signed(ratio.Decimal(ratio.Quo(ratio.Of(d), ratio.Of(time.Minute)), 4))
}
