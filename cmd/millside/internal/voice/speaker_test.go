package voice

import (
	"context"
	"errors"
	"slices"
	"strings"
	"testing"
	"time"

	"millside/plan/measure"
)

func TestSplitCommand(t *testing.T) {
	for _, tt := range []struct {
		line string
		want []string // nil is refused
	}{
		{"speak", []string{"speak"}},
		{"  speak \t --slowly  ", []string{"speak", "--slowly"}},
		{`speak 'to me' "and you"`, []string{"speak", "to me", "and you"}},
		{`/opt/my' 'speech/speak -v"low voice"`, []string{"/opt/my speech/speak", "-vlow voice"}},
		{`speak "it's" 'a "word"'`, []string{"speak", "it's", `a "word"`}},
		{`speak '' ""`, []string{"speak", "", ""}},
		{`C:\speech\speak.exe $HOME * ; rm`, []string{`C:\speech\speak.exe`, "$HOME", "*", ";", "rm"}},
		{"", nil},
		{"   ", nil},
		{"''", nil},
		{"speak 'to me", nil},
		{`speak "to me`, nil},
	} {
		got, err := splitCommand(tt.line)
		if (err == nil) != (tt.want != nil) || !slices.Equal(got, tt.want) {
			t.Errorf("%q: %q, %v; want %q", tt.line, got, err, tt.want)
		}
	}
}

// Whatever is typed, the splitter comes to an end; and words that are quoted come back as they were.
func FuzzSplitCommand(f *testing.F) {
	f.Add("speak --slowly 'to me'", "it's")
	f.Add("\"", "")
	f.Fuzz(func(t *testing.T, line, word string) {
		if got, err := splitCommand(line); err == nil && (len(got) == 0 || got[0] == "") {
			t.Fatalf("%q: no program in %q", line, got)
		}
		word = strings.ToValidUTF8(word, "")
		quote := "'"
		if strings.Contains(word, quote) {
			quote = `"`
		}
		if strings.Contains(word, quote) {
			return
		}
		got, err := splitCommand("speak " + quote + word + quote)
		if err != nil || len(got) != 2 || got[1] != word {
			t.Fatalf("%q: %q, %v", word, got, err)
		}
	})
}

// sayStage is a speaker whose command and time the test plays.
type sayStage struct {
	*Speaker
	started chan string         // texts whose command starts
	finish  chan error          // ends the command that runs
	ended   chan string         // texts whose command was told to end
	waits   chan chan time.Time // a wait that begins
	asked   chan time.Duration  // and its length
}

func newSayStage() *sayStage {
	s := &sayStage{started: make(chan string), finish: make(chan error), ended: make(chan string, 9),
		waits: make(chan chan time.Time, 9), asked: make(chan time.Duration, 9)}
	s.Speaker = begin(func(ctx context.Context, text string) error {
		s.started <- text
		select {
		case err := <-s.finish:
			return err
		case <-ctx.Done():
			s.ended <- text
			return ctx.Err()
		}
	}, func(d time.Duration) <-chan time.Time {
		c := make(chan time.Time, 1)
		s.asked <- d
		s.waits <- c
		return c
	})
	return s
}

// A newer text ends the command of an older one; one runs at a time, a little apart, the newest first and none twice.
func TestSpeaker(t *testing.T) {
	s := newSayStage()
	s.Say("one")
	if got := <-s.started; got != "one" {
		t.Fatal(got)
	}
	s.Say("two")
	if got := <-s.ended; got != "one" {
		t.Fatalf("%q was ended", got)
	}
	s.Say("three\x1b[31m")
	s.Say("")
	select {
	case got := <-s.started:
		t.Fatalf("%q at once", got)
	case d := <-s.asked:
		if d != apart {
			t.Fatalf("waits %v", d)
		}
	}
	(<-s.waits) <- time.Time{}
	if got := <-s.started; got != "three[31m" {
		t.Fatalf("%q, want the newest, cleaned", got)
	}
	s.finish <- nil
	<-s.asked
	(<-s.waits) <- time.Time{}
	s.Say("four")
	if got := <-s.started; got != "four" {
		t.Fatal(got)
	}
	s.finish <- nil
	(<-s.waits) <- time.Time{}
	s.Close()
	s.Say("late")
	<-s.done
	if err := s.Problem(); err != nil {
		t.Errorf("a command that was ended for a newer text is a failure: %v", err)
	}
}

// The last text is still said when the end comes; a command that hangs is ended and holds nothing up.
func TestSpeakerCloses(t *testing.T) {
	s := newSayStage()
	s.Say("last")
	<-s.started
	<-s.asked
	<-s.waits
	closed := make(chan struct{})
	go func() { s.Close(); close(closed) }()
	if d := <-s.asked; d != finish {
		t.Fatalf("the end waits %v", d)
	}
	select {
	case got := <-s.ended:
		t.Fatalf("%q was ended at once", got)
	default:
	}
	(<-s.waits) <- time.Time{} // it hangs
	if got := <-s.ended; got != "last" {
		t.Fatal(got)
	}
	<-closed
	<-s.done
}

// A failure is told once, however often it comes.
func TestSpeakerFails(t *testing.T) {
	s := newSayStage()
	for i, text := range []string{"one", "two"} {
		s.Say(text)
		<-s.started
		s.finish <- errors.New("no voice")
		(<-s.waits) <- time.Time{}
		if i == 0 {
			s.Say("between") // the failure of the first is noted when the next one starts
			<-s.started
			if err := s.Problem(); err == nil || err.Error() != "no voice" {
				t.Fatalf("%v", err)
			}
			s.finish <- nil
			(<-s.waits) <- time.Time{}
		}
	}
	s.Close()
	<-s.done
	if err := s.Problem(); err != nil {
		t.Errorf("told twice: %v", err)
	}
	var none *Speaker
	none.Say("nobody hears it")
	none.Close()
	if none.Problem() != nil {
		t.Error("no speaker has a problem")
	}
}

func TestSpeakerOfNoProgram(t *testing.T) {
	for _, line := range []string{"", "'", "no-such-program-anywhere --slowly"} {
		_, err := New(line)
		var fe *measure.FieldError
		if !errors.As(err, &fe) || fe.Field != "--say" {
			t.Errorf("%q: %v", line, err)
		}
	}
}
