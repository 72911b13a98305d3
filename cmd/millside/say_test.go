package main

import (
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

// stage is a speaker whose command and time the test plays.
type sayStage struct {
	*speaker
	started chan string         // texts whose command starts
	finish  chan error          // ends the command that runs
	waits   chan chan time.Time // a wait that begins
	asked   chan time.Duration  // and its length
}

func newSayStage() *sayStage {
	s := &sayStage{started: make(chan string), finish: make(chan error), waits: make(chan chan time.Time, 9), asked: make(chan time.Duration, 9)}
	s.speaker = startSpeaker(func(text string) error {
		s.started <- text
		return <-s.finish
	}, func(d time.Duration) <-chan time.Time {
		c := make(chan time.Time, 1)
		s.asked <- d
		s.waits <- c
		return c
	})
	return s
}

// One command at a time, a second apart, the newest text first and none twice.
func TestSpeaker(t *testing.T) {
	s := newSayStage()
	s.say("one")
	if got := <-s.started; got != "one" {
		t.Fatal(got)
	}
	s.say("two")
	s.say("three\x1b[31m")
	s.say("")
	select {
	case got := <-s.started:
		t.Fatalf("%q while another runs", got)
	default:
	}
	s.finish <- nil
	select {
	case got := <-s.started:
		t.Fatalf("%q before a second has gone", got)
	case d := <-s.asked:
		if d != time.Second {
			t.Fatalf("waits %v", d)
		}
	}
	select {
	case got := <-s.started:
		t.Fatalf("%q before a second has gone", got)
	default:
	}
	(<-s.waits) <- time.Time{}
	if got := <-s.started; got != "three[31m" {
		t.Fatalf("%q, want the newest, cleaned", got)
	}
	s.say("four")
	s.finish <- nil
	(<-s.waits) <- time.Time{}
	if got := <-s.started; got != "four" {
		t.Fatal(got)
	}
	s.finish <- nil
	(<-s.waits) <- time.Time{}
	s.close()
	s.say("late")
	<-s.done
}

// The last text is still said when the end comes; a command that hangs holds nothing up.
func TestSpeakerCloses(t *testing.T) {
	s := newSayStage()
	s.say("one")
	<-s.started
	s.say("last")
	closed := make(chan struct{})
	go func() { s.close(); close(closed) }()
	<-s.asked
	second := <-s.waits
	if d := <-s.asked; d != 2*time.Second {
		t.Fatalf("the end waits %v", d)
	}
	patience := <-s.waits
	s.finish <- nil
	second <- time.Time{}
	if got := <-s.started; got != "last" {
		t.Fatal(got)
	}
	patience <- time.Time{} // it hangs
	<-closed
	s.finish <- nil
	<-s.done
}

// A failure is told once, however often it comes.
func TestSpeakerFails(t *testing.T) {
	s := newSayStage()
	for i, text := range []string{"one", "two"} {
		s.say(text)
		<-s.started
		s.finish <- errors.New("no voice")
		(<-s.waits) <- time.Time{}
		if i == 0 {
			s.say("between") // the failure of the first is noted when the next one starts
			<-s.started
			if err := s.problem(); err == nil || err.Error() != "no voice" {
				t.Fatalf("%v", err)
			}
			s.finish <- nil
			(<-s.waits) <- time.Time{}
		}
	}
	s.close()
	<-s.done
	if err := s.problem(); err != nil {
		t.Errorf("told twice: %v", err)
	}
	var none *speaker
	none.say("nobody hears it")
	none.close()
	if none.problem() != nil {
		t.Error("no speaker has a problem")
	}
}

func TestSpeakerOfNoProgram(t *testing.T) {
	for _, line := range []string{"", "'", "no-such-program-anywhere --slowly"} {
		_, err := newSpeaker(line)
		var fe *measure.FieldError
		if !errors.As(err, &fe) || fe.Field != "--say" {
			t.Errorf("%q: %v", line, err)
		}
	}
}
