package plain

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"millside/counter"
	"millside/counter/session"
	"millside/plan/figure"
	"millside/plan/wind"
)

// word is a word that may be typed in place of an empty line.
type word struct {
	name, use, help string
	// bare says that nothing may stand after it.
	bare bool
	act  func(t *Talk, rest string, at time.Time) (session.Reply, error)
}

// words lists them in the order of the help. It is a function since one of them lists them all.
func words() []word {
	of := func(in session.Intent) func(*Talk, string, time.Time) (session.Reply, error) {
		return func(t *Talk, _ string, at time.Time) (session.Reply, error) { return t.do(in, at) }
	}
	bare := func(name, help string, in session.Intent) word {
		return word{name: name, use: name, help: help, bare: true, act: of(in)}
	}
	return []word{
		{"undo", "undo", "takes the last pass back, or the work at the peg, or the last finishing step; undo 12 " +
			"only if pass 12 is the last one", false, (*Talk).undo},
		bare("redo", "brings back what was taken back last", session.Redo{}),
		bare("pause", "stops for a while", session.Pause{}),
		bare("on", "goes on, as the pass key does", session.GoOn{}),
		bare("look", "says what must stand on the mill before winding goes on", session.LookAgain{}),
		{"pegs", "pegs 9 8", "9 groups counted over peg 1, 8 over peg 2: which count fits? Add outward or return " +
			"for the last group, and 3 loose for the groups after the last tie; - for what you didn't count", false,
			(*Talk).pegs},
		{"count", "count 17 why", "sets the count to 17 passes, and keeps the reason", false, (*Talk).setCount},
		{"note", "note text", "keeps a note", false, (*Talk).note},
		{"break", "break 4", figure.Signed("the end in position 4 broke, on the pass in hand. Add: pass 12, for " +
			"another pass; at 2.5 yd, or at 3 turns, from the lease; and any text"), false, mark(counter.Broken)},
		{"knot", "knot 4", "a knot in that end, noted in the same way", false, mark(counter.Knot)},
		{"missed", "missed", "a missed opening on the pass in hand, or: missed pass 12", false,
			mark(counter.MissedOpening)},
		{"wrongpeg", "wrongpeg", "a wrong peg, in the same way", false, mark(counter.WrongPeg)},
		{"package", "package 4", "another package in position 4, from the pass in hand on; package 4 pass 12 from " +
			"pass 12 on; add its weight with the tube, where you know it: package 4 250 g", false, (*Talk).newPackage},
		{"drop", "drop", "takes the last mark back; drop 7 the one with number 7", false, (*Talk).drop},
		{"turn", "turn", "after the last pass the group went the wrong way round the peg; turn 12 only if pass 12 " +
			"is the last one", false, (*Talk).turn},
		bare("righted", "the twist behind the paddle was taken out", session.Righted{}),
		bare("tie", "the count tie is made", session.TieMade{}),
		bare("notie", "the count tie that is due is not going to be made", session.TieOff{}),
		bare("tieback", "the last count tie was not made", session.TieBack{}),
		bare("yes", "answers the question about the lease", session.Answer{Says: session.Yes}),
		bare("other", "answers it the other way", session.Answer{Says: session.Other}),
		bare("later", "leaves it open", session.Answer{Says: session.Later}),
		{"foot", "foot last", "on outward passes the last position lies at the foot of the peg; foot first: the first",
			false, (*Talk).foot},
		{"done", "done", "the work at the peg, or the finishing step, is done, as the pass key says", true,
			(*Talk).done},
		{"where", "where", "what stands on the mill, what was noted, and what comes next", true, (*Talk).where},
		{"reopen", "reopen why", "opens the finished warp again, and keeps the reason", false, (*Talk).reopen},
		{"again", "again", "where the record can't be written: tries again", true, mend(session.TryAgain)},
		{"beside", "beside", "where it can't: saves all that was counted as a new record", true,
			mend(session.SaveBeside)},
		{"help", "help", "lists these words", true, (*Talk).help},
		{"leave", "leave", "pauses and ends; so does the end of the input", true,
			func(t *Talk, _ string, at time.Time) (session.Reply, error) { return t.Leave(at) }},
	}
}

// older are words that were used before, and what they are called now.
var older = map[string]string{"withdraw": "drop"}

// wordOf finds a word.
func wordOf(name string) (word, bool) {
	if now, ok := older[name]; ok {
		name = now
	}
	for _, w := range words() {
		if w.name == name {
			return w, true
		}
	}
	return word{}, false
}

func names() []string {
	var all []string
	for _, w := range words() {
		all = append(all, w.name)
	}
	return all
}

func (t *Talk) help(string, time.Time) (session.Reply, error) {
	said := []string{"An empty line is the pass key: the pass is laid, or what the page asks for is done."}
	for _, w := range words() {
		said = append(said, w.use+": "+w.help+".")
	}
	r := told(said...)
	r.Short = "The words are " + strings.Join(names(), ", ") + "."
	return r, nil
}

// undo takes back. A number names the pass that is meant, so that none is taken back by mistake.
func (t *Talk) undo(rest string, at time.Time) (session.Reply, error) {
	if why := t.meansLast(rest, "undo"); why != "" {
		return refused(why), nil
	}
	return t.do(session.TakeBack{}, at)
}

func (t *Talk) turn(rest string, at time.Time) (session.Reply, error) {
	if why := t.meansLast(rest, "turn"); why != "" {
		return refused(why), nil
	}
	return t.do(session.WrongTurn{}, at)
}

// meansLast says why a number after a word won't do: it must be that of the last pass laid.
func (t *Talk) meansLast(rest, name string) string {
	if rest == "" {
		return ""
	}
	laid := t.s.State().Laid()
	if n, err := strconv.Atoi(rest); err != nil || n != laid {
		return fmt.Sprintf("Nothing was done: %s is about the last pass, which is %d, and %q stood there.", name, laid,
			shorten(rest))
	}
	return ""
}

// setCount is a recount.
func (t *Talk) setCount(rest string, at time.Time) (session.Reply, error) {
	in, wrong := t.s.ReadRecount(rest)
	return t.take(in, wrong, at)
}

// pegs works out which number of passes fits what lies on the counting cross. It changes nothing.
func (t *Talk) pegs(rest string, _ time.Time) (session.Reply, error) {
	seen, wrong := t.s.ReadPegs(rest)
	if wrong != "" {
		return refused(wrong), nil
	}
	return told(t.s.Pegs(seen)...), nil
}

func (t *Talk) note(rest string, at time.Time) (session.Reply, error) {
	if rest == "" {
		return refused("Type note and a few words."), nil
	}
	return t.do(session.Note{Text: rest}, at)
}

// drop takes a mark back: the one of that number, or the last one.
func (t *Talk) drop(rest string, at time.Time) (session.Reply, error) {
	in, wrong := t.s.ReadDrop(rest)
	return t.take(in, wrong, at)
}

func (t *Talk) foot(rest string, at time.Time) (session.Reply, error) {
	var foot wind.FootPosition
	if err := foot.UnmarshalText([]byte(strings.ToLower(rest))); err != nil {
		return refused("Which position lies at the foot of the peg on outward passes? Type foot first or foot last."),
			nil
	}
	return t.do(session.Foot{Position: foot}, at)
}

// done is the pass key where that counts no pass, and nothing else.
func (t *Talk) done(_ string, at time.Time) (session.Reply, error) {
	if t.s.Stage(at) == session.AtPeg {
		return t.do(session.WorkDone{}, at)
	}
	return t.do(session.StepDone{}, at)
}

func (t *Talk) where(_ string, at time.Time) (session.Reply, error) {
	r := told(t.s.Where(at)...)
	r.Short = t.s.Speak(at)
	return r, nil
}

func (t *Talk) reopen(rest string, at time.Time) (session.Reply, error) {
	return t.do(session.Reopen{Reason: rest}, at)
}
