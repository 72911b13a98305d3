package mill

import (
	"fmt"
	"slices"
	"strings"

	"millside/counter/session"
	"millside/tui/keys"
	"millside/tui/look"
)

// View draws the page of the conversation, or what lies over it, at exactly w by h cells.
func (m Model) View(w, h int) string {
	if w < look.MinWidth || h < look.MinHeight {
		return m.viewTiny(w, h)
	}
	switch m.over {
	case overHelp:
		return m.viewHelp(w, h)
	case overPrompt:
		return m.viewPrompt(w, h)
	}
	switch m.s.Stage(m.at) {
	case session.Looking:
		return m.viewLooking(w, h)
	case session.AtPeg:
		return m.viewStop(w, h)
	case session.AtQuestion:
		return m.viewQuestion(w, h)
	case session.Finishing:
		return m.viewFinish(w, h)
	case session.Done:
		return m.viewDone(w, h)
	case session.Failed:
		return m.viewFailed(w, h)
	case session.OnlyLooking:
		return m.viewOnlyLooking(w, h)
	}
	return m.viewWinding(w, h)
}

// viewWinding is the pass in hand, from near or from far.
func (m Model) viewWinding(w, h int) string {
	if m.far {
		return m.viewFar(w, h)
	}
	return m.viewPass(w, h)
}

// viewOnlyLooking is the warp that another window winds.
func (m Model) viewOnlyLooking(w, h int) string {
	switch st := m.s.State(); {
	case st.Finished:
		return m.viewDone(w, h)
	case st.Wound():
		return m.viewFinish(w, h)
	}
	return m.viewWinding(w, h)
}

// viewFar is for a winder who stands far off: the direction, what to do, what is due and the ends, as large as the
// terminal allows, and the keys. Where the line of keys would make what matters smaller it shares its row with the
// message.
func (m Model) viewFar(w, h int) string {
	in, _ := m.s.Instruction(m.at)
	p := m.passPage(in, w)
	p.keys = look.NewPart([]string{m.farKeys(w)})
	parts := []*look.Part{p.band, p.steps, p.now, p.reminders, p.ends, p.next, p.message}
	if in.Last {
		parts = append([]*look.Part{p.header}, parts...)
	}
	wishes := []look.Wish{p.next.At(1), p.steps.At(1), p.band.At(1), p.now.At(1)}
	for i := range 9 {
		z := look.Blocks + look.Size(i)
		wishes = append(wishes, p.band.At(i+1), p.steps.At(sizeOf(z, small)), p.steps.At(sizeOf(z, bare)),
			p.steps.At(sizeOf(z, roomy)),
			p.ends.At(min(i, 2)), p.now.At(2), p.message.At(1))
	}
	look.Choose(h, parts, wishes)
	band, steps := p.band.Size(), p.steps.Size()
	with := append(parts[:len(parts):len(parts)], p.keys)
	look.Choose(h, with, wishes)
	if p.band.Size() == band && p.steps.Size() == steps {
		return look.Screenful(look.Arrange(h, with, wishes), w, h)
	}
	if m.message().Text == "" {
		p.message.Sizes = p.keys.Sizes
	}
	return look.Screenful(look.Arrange(h, parts, wishes), w, h)
}

// farKeys are the keys that work on the far view.
func (m Model) farKeys(w int) string {
	k := m.Keys
	if m.rec.ReadOnly() {
		return m.Styles.KeyLine(w, k.Refresh, keys.As(k.Far, "near"), k.Home, k.Leave)
	}
	return m.Styles.KeyLine(w, keys.As(k.Laid, "laid"), keys.As(k.Undo, "back"), k.Pause, keys.As(k.Far, "near"),
		keys.As(k.Help, ""), k.Leave)
}

// heading is what a page is about: in words, shorter to be drawn large, and shorter still for a narrow screen.
type heading struct {
	words, large string
	ground       look.Style
	narrow       string
	// wordy says that the words go before the large letters where there is no room for both.
	wordy bool
}

// first says how many of a page's wishes go before what it is about is drawn large: what has to be done comes first.
const first = 3

// titled is a page with a heading as large as it finds room, and a line of keys. The body's first size has its rows
// before the heading grows. Where the heading is drawn in block letters, its words stand in the header.
func (m Model) titled(title heading, keyLine string, body []*look.Part, wishes []look.Wish, w, h int) string {
	head := look.NewPart(m.titleSizes(title, w)...)
	top := tight(&look.Part{Sizes: []look.Drawing{look.Drawn(nil), {Rows: 1, Draw: func() []string {
		if head.Size() > 1 {
			return []string{m.header(title.words, w)}
		}
		return []string{m.header("", w)}
	}}}})
	message := tight(look.NewPart(m.messageSizes(w)...))
	foot := look.NewPart(nil, []string{keyLine})
	parts := append(append([]*look.Part{top, head}, body...), message, foot)
	n := min(first, len(wishes))
	all := append([]look.Wish{foot.At(1), message.At(1)}, wishes[:n]...)
	if title.wordy {
		all = append(all, top.At(1))
	}
	all = append(all, head.At(2), top.At(1), head.At(1))
	for i, wish := range wishes[n:] {
		all = append(all, wish, head.At(3+i/2))
	}
	return look.Screenful(look.Arrange(h, parts, all), w, h)
}

// titleSizes draws a heading on its ground: as a line, with room around it, and in block letters.
func (m Model) titleSizes(title heading, w int) [][]string {
	ground := title.ground
	blank := ground.Render(look.Pad("", w))
	words := title.words
	if look.Wide(words) > w-4 {
		words = title.large
	}
	plain := look.Filled(look.Indent(look.Wrap(words, w-4), 2), ground, w)
	sizes := [][]string{plain, slices.Concat([]string{blank}, plain, []string{blank})}
	text := title.large
	if title.narrow != "" && m.Styles.Width(text, look.Blocks) > w-4 {
		text = title.narrow
	}
	for z := look.Blocks; z < look.Blocks+4; z++ {
		rows := m.Styles.Wrapped(text, z, w-4)
		if rows == nil || len(rows) > m.Styles.Rows(z) {
			break
		}
		sizes = append(sizes, look.Filled(look.Indent(rows, 2), ground, w))
	}
	return sizes
}

// textPart is a part of words only.
func textPart(text string, style look.Style, w int) *look.Part {
	return look.NewPart(look.Indent(look.Painted(look.Wrap(text, w-4), style), 2))
}

// mayGo is a part that is left out where there is no room for it.
func mayGo(rows []string) *look.Part { return look.NewPart(nil, rows) }

// viewFailed says loudly that nothing was counted.
func (m Model) viewFailed(w, h int) string {
	why := ""
	if err := m.s.Err(); err != nil {
		why = err.Error()
	}
	body := []*look.Part{textPart(why, m.Styles.Plain, w),
		mayGo(look.Indent(look.Painted(look.Wrap(strings.Join(m.s.Trouble(), " "), w-4), m.Styles.Strong), 2)),
		mayGo(m.sentences(m.s.Announce(m.at)[:1], w))}
	return m.titled(heading{words: "NOT SAVED", large: "NOT SAVED", ground: m.Styles.Alarm},
		m.Styles.KeyLine(w, m.Keys.Retry, m.Keys.Beside, m.Keys.Leave), body, []look.Wish{body[1].At(1), body[2].At(1)},
		w, h)
}

func (m Model) sentences(said []string, w int) []string {
	return look.Indent(look.Wrap(strings.Join(said, " "), w-4), 2)
}

// viewTiny is for a terminal too small for anything but the count.
func (m Model) viewTiny(w, h int) string {
	in, ok := m.s.Instruction(m.at)
	if stage := m.s.Stage(m.at); !ok || m.over != overNothing || stage != session.Winding &&
		stage != session.OnlyLooking {
		lines := []string{"this window is too small for this page",
			fmt.Sprintf("make it at least %d by %d", look.MinWidth, look.MinHeight)}
		return look.Screenful(append(lines, look.Wrap(m.s.Speak(m.at), w)...), w, h)
	}
	lines := []string{
		m.Styles.Way(in.Pass.Direction).Render(strings.ToUpper(in.Pass.Direction.String())),
		fmt.Sprintf("pass %d of %d", in.Pass.Number, in.Of),
		fmt.Sprintf("%d ends", in.Standing),
	}
	lines = append(lines, look.Wrap(m.message().Text, w)...)
	return look.Screenful(append(lines, look.Wrap(m.s.Speak(m.at), w)...), w, h)
}
