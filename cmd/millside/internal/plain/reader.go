package plain

import (
	"bufio"
	"io"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"
)

// Input is what was typed, with the time at which it came.
type Input struct {
	At time.Time
	// Key is a single key, by the name that the screen has for it; empty for a line.
	Key string
	// Text is a line, or a part of one that came at once; Ended says that a line end came with it.
	Text  string
	Ended bool
}

// maxTyped is the longest line that is read, in bytes; a note is far shorter.
const maxTyped = 8 << 10

// Lines reads lines from an input until it ends. Of a line that is too long only the beginning is given, which is no
// word that is known.
func Lines(in io.Reader, now func() time.Time) <-chan Input {
	lines := make(chan Input)
	go func() {
		defer close(lines)
		r := bufio.NewReaderSize(in, maxTyped)
		for {
			line, more, err := r.ReadLine()
			if err != nil {
				return
			}
			text := string(line)
			for more && err == nil {
				_, more, err = r.ReadLine()
			}
			lines <- Input{At: now(), Text: text, Ended: true}
		}
	}()
	return lines
}

// Keys reads single keys from a terminal that sends each one at once, until it ends or the key for the end of the input
// (Ctrl-D) comes. Several different letters that come in one piece were not pressed one by one: they are a line that
// was pasted, or sent by a program, and are given as one.
func Keys(in io.Reader, now func() time.Time) <-chan Input {
	out := make(chan Input)
	go func() {
		defer close(out)
		buf := make([]byte, maxTyped)
		for kept := 0; ; {
			n, err := in.Read(buf[kept:])
			if err != nil {
				return
			}
			at, piece := now(), buf[:kept+n]
			whole := len(piece) - halfRune(piece)
			inputs, end := apart(string(piece[:whole]), at)
			for _, i := range inputs {
				out <- i
			}
			if end {
				return
			}
			kept = copy(buf, piece[whole:])
		}
	}()
	return out
}

// halfRune is how many bytes at the end are the beginning of a letter that isn't whole yet.
func halfRune(b []byte) int {
	for n := 1; n < utf8.UTFMax && n <= len(b); n++ {
		if c := b[len(b)-n]; utf8.RuneStart(c) {
			if c >= utf8.RuneSelf && !utf8.FullRune(b[len(b)-n:]) {
				return n
			}
			return 0
		}
	}
	return 0
}

// apart takes apart what came in one piece. End says that the input is at its end.
func apart(piece string, at time.Time) (inputs []Input, end bool) {
	for len(piece) > 0 {
		if n := strings.IndexFunc(piece+"\x00", unicode.IsControl); n > 1 && !alike(piece[:n]) {
			in := Input{At: at, Text: piece[:n]}
			piece = piece[n:]
			if rest := strings.TrimLeft(piece, "\r\n"); len(rest) < len(piece) {
				in.Ended = true
				piece = strings.TrimPrefix(strings.TrimPrefix(piece, "\r"), "\n")
			}
			inputs = append(inputs, in)
			continue
		}
		name, n := keyName(piece)
		if name == "ctrl+d" {
			return inputs, true
		}
		inputs = append(inputs, Input{At: at, Key: name})
		piece = piece[n:]
	}
	return inputs, false
}

// alike says whether a text is one letter over and over, as of a key that is held down.
func alike(text string) bool {
	first, n := utf8.DecodeRuneInString(text)
	return strings.Count(text, string(first))*n == len(text)
}

// sequences are the keys that a terminal sends as several bytes: ECMA-48 and the usual ones beside it.
var sequences = map[string]string{
	"[A": "up", "[B": "down", "[C": "right", "[D": "left", "OA": "up", "OB": "down", "OC": "right", "OD": "left",
	"[5~": "pgup", "[6~": "pgdown", "[H": "home", "[F": "end", "[2~": "insert", "[3~": "delete",
	"OP": "f1", "OQ": "f2", "OR": "f3", "OS": "f4", "[15~": "f5", "[17~": "f6", "[18~": "f7", "[19~": "f8",
	"[20~": "f9",
	"[21~": "f10", "[23~": "f11", "[24~": "f12", "[Z": "shift+tab", "OM": "enter",
}

// keyName is the name of the key at the front of what came, and how many bytes it takes.
func keyName(piece string) (name string, n int) {
	switch piece[0] {
	case '\r', '\n':
		return "enter", 1
	case '\t':
		return "tab", 1
	case 0x7f, 0x08:
		return "backspace", 1
	case 0x04:
		return "ctrl+d", 1
	case 0x1b:
		return escaped(piece)
	}
	r, n := utf8.DecodeRuneInString(piece)
	if unicode.IsControl(r) {
		return "control", n
	}
	return string(r), n
}

// escaped is a key that begins with an escape. One that isn't known takes all that belongs to it.
func escaped(piece string) (name string, n int) {
	if len(piece) == 1 || piece[1] != '[' && piece[1] != 'O' {
		return "esc", 1
	}
	end := 2
	for end < len(piece) && (piece[end] < 0x40 || piece[end] > 0x7e) {
		end++
	}
	end = min(end+1, len(piece))
	if name, ok := sequences[piece[1:end]]; ok {
		return name, end
	}
	return "unknown", end
}
