package tui

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"github.com/charmbracelet/bubbles/key"

	"millside/counter"
	"millside/counter/halfplan"
	"millside/counter/journal"
	"millside/plan/measure"
	"millside/tui/keys"
	"millside/tui/look"
)

func (m home) view(w, h int) string {
	l := m.lay(w, h)
	return look.WithFoot(append(l.head, l.shown...), l.foot, w, h)
}

// laid is the page: what stands above the list, the list with the entry that each of its lines belongs to (-1: none),
// and what stands below; from is the line of the list that stands at the top.
type laid struct {
	head, body, foot []string
	of               []int
	from             int
	shown            []string // the part of the list that is seen, with a sign where there is more
	ofShown          []int
}

func (m home) lay(w, h int) laid {
	s := m.styles
	l := laid{head: []string{"", "  " + s.Title.Render("MILLSIDE") +
		s.Dim.Render(look.Fit("   the count at the warping mill", max(w-12, 0))), ""}}
	first, last := 0, 0
	l.body, l.of, first, last = m.body(w)
	if m.finding || m.filter != "" {
		l.head[2] = m.filterLine(w)
		l.head = append(l.head, "")
	}
	if m.naming != nil {
		l.head[2] = m.nameLine(w)
		l.head = append(l.head, "")
	}
	l.foot = append([]string{""}, s.KeyLinesAnd(w, m.keyRows(h), m.ListKey(), m.footKeys()...)...)
	if m.problem != "" {
		l.foot = append(look.Painted(look.Wrap("! "+m.problem, w-2), s.Alarm), l.foot...)
	}
	if m.ground != nil {
		l.foot = append(look.Painted(look.Wrap("  "+m.groundLine(), w-2), s.Strong), l.foot...)
	}
	if m.said != "" {
		l.foot = append(look.Wrap("  "+m.said, w-2), l.foot...)
	}
	return l.window(m, first, last, max(h-len(l.head)-len(l.foot), 1))
}

// window chooses the part of the list that is seen: the lines from first to last are. Where there is more, a line says
// so; neither a heading nor half of an entry stands above that.
func (l laid) window(m home, first, last, room int) laid {
	n, rows := len(l.body), room
	signs := n > room && room > 4
	if signs {
		rows = room - 2
	}
	l.from = max(min(m.top, first, n-rows), last-rows+1, 0)
	to := min(l.from+rows, n)
	switch {
	case !signs:
	case l.from <= 1: // the line of a sign is worth as much
		l.from, to = 0, rows+1
	case to >= n-1:
		l.from, to = n-rows-1, n
	}
	for signs && l.from > 0 && l.from < first && l.of[l.from] >= 0 && l.of[l.from] == l.of[l.from-1] {
		l.from++
	}
	for signs && to < n && to > last+1 && (l.of[to-1] < 0 || l.of[to-1] == l.of[to]) {
		to--
	}
	add := func(line string, of int) { l.shown, l.ofShown = append(l.shown, line), append(l.ofShown, of) }
	if signs && l.from > 0 {
		add(m.moreLine(l.of[:l.from], "above"), -1)
	}
	for i := l.from; i < to; i++ {
		add(l.body[i], l.of[i])
	}
	if signs && to < n {
		for len(l.shown) < room-1 {
			add("", -1)
		}
		add(m.moreLine(l.of[to:], "below"), -1)
	}
	return l
}

// moreLine says how many entries of the list stand above or below what is seen of it.
func (m home) moreLine(of []int, where string) string {
	entries := map[int]bool{}
	for _, i := range of {
		if i >= 0 {
			entries[i] = true
		}
	}
	return m.styles.More(len(entries), where)
}

// filterLine is what is looked for, and how many were found.
func (m home) filterLine(w int) string {
	const what = "  names with: "
	text, count := m.filter, fmt.Sprintf("   %d of %d", len(m.entries()), len(m.list)+len(m.halves))
	if m.finding {
		text += "_"
	}
	return look.Fit(what+look.Tail(text, w-len(what)-len(count))+count, w)
}

// keyRows is how many lines at the foot may hold keys.
func (m home) keyRows(h int) int {
	if h < look.MinHeight+4 {
		return 1
	}
	return 3
}

// footKeys are the keys that work, those first that are needed most.
func (m home) footKeys() []key.Binding {
	k := m.keys
	switch {
	case m.naming != nil && m.copying:
		return []key.Binding{keys.As(k.Keep, "copy it"), k.Back}
	case m.naming != nil:
		return []key.Binding{k.Keep, k.Back}
	}
	if m.finding {
		return []key.Binding{keys.As(k.Open, "done"), keys.As(k.Back, "all warps"), k.Up}
	}
	if m.ground != nil {
		return []key.Binding{keys.As(k.Together, "goes with it"), k.Up, k.Filter, k.Back}
	}
	if m.shelf != "" {
		line := []key.Binding{k.Up, keys.As(k.Open, "bring back"), k.Filter, keys.As(k.Shelves, "next list"),
			keys.As(k.Back, "warps"), k.Leave}
		if m.filter != "" {
			line[4] = keys.As(k.Back, "all")
		}
		return line
	}
	line := []key.Binding{k.Open, k.Filter, k.New, k.Copy, k.Leave, k.Edit, k.Rename, k.Away, k.Delete, k.Shelves,
		k.Draft, k.Known, k.Together, k.Settings, k.Practice, k.Up}
	if m.filter != "" {
		line = append([]key.Binding{keys.As(k.Back, "all warps")}, line...)
	}
	return line
}

// ListKey is the key that lists all keys.
func (m home) ListKey() key.Binding {
	if m.typing() {
		return m.keys.AllKeysTyping
	}
	return m.keys.AllKeys
}

// AllKeys are the keys that work now, those of the foot in more words and those that find no room there.
func (m home) AllKeys() []key.Binding {
	k := m.keys
	if m.naming != nil {
		return m.footKeys()
	}
	move := []key.Binding{k.Up, keys.As(k.NextPage, "page down"), keys.As(k.PrevPage, "page up"), k.First, k.Last}
	if m.finding || m.ground != nil || m.shelf != "" {
		list := slices.DeleteFunc(m.footKeys(), func(b key.Binding) bool { return b.Help() == k.Up.Help() })
		return append(list, move...)
	}
	list := []key.Binding{keys.As(k.Open, "open the chosen one"), keys.As(k.Filter, "find by name"),
		keys.As(k.New, "new warp"), keys.As(k.Known, "from what I know"), keys.As(k.Draft, "from a draft"),
		keys.As(k.Practice, "practice warp"), keys.As(k.Edit, "change the plan"), keys.As(k.Copy, "copy the plan"),
		keys.As(k.Rename, "another name"), keys.As(k.Away, "put away, keep"), k.Delete,
		keys.As(k.Shelves, "put away, deleted"), keys.As(k.Together, "two warps in one"), k.Settings}
	if m.filter != "" {
		list = append(list, keys.As(k.Back, "all warps"))
	}
	return append(append(list, move...), k.Leave)
}

// body draws the list, and says which entry each line belongs to, and from which line to which the chosen one stands;
// a heading just above it counts in.
func (m home) body(w int) (lines []string, of []int, first, last int) {
	entries := m.entries()
	var count [parts]int
	for _, e := range entries {
		count[e.part()]++
	}
	for i, e := range entries {
		if i == m.chosen {
			first = len(lines)
		}
		if i == 0 || entries[i-1].part() != e.part() {
			if i > 0 {
				lines, of = append(lines, ""), append(of, -1)
			}
			heading := partNames[e.part()]
			if e.word == "" {
				heading += fmt.Sprintf(" (%d)", count[e.part()])
			}
			lines, of = append(lines, "  "+m.styles.Dim.Render(heading)), append(of, -1)
		}
		for _, l := range m.entryLines(e, i == m.chosen, w) {
			lines, of = append(lines, l), append(of, i)
		}
		if i == m.chosen {
			last = len(lines) - 1
		}
	}
	if len(entries) == 0 {
		text := "no warp has that in its name"
		if m.filter == "" {
			text = map[journal.Shelf]string{journal.PutAway: "put away: none",
				journal.Deleted: "deleted: none"}[m.shelf]
		}
		lines, of = []string{"    " + text}, []int{-1}
	}
	return lines, of, first, last
}

// nameWidth is the room for a name where more stands on its line.
func nameWidth(w int) int {
	if w < 76 {
		return 20
	}
	return 28
}

func (m home) entryLines(e entry, chosen bool, w int) []string {
	s := m.styles
	mark, style := "    ", s.Plain
	if chosen {
		mark, style = "  ▸ ", s.Strong
	}
	line := func(told string) []string {
		return []string{look.Fit(mark+style.Render(look.Pad(e.name(), nameWidth(w)))+"  "+s.Dim.Render(told), w)}
	}
	if e.half != nil {
		return line(m.halfText(*e.half))
	}
	if e.summary == nil {
		return []string{mark + style.Render(e.word)}
	}
	sum := e.summary
	far, touched := fmt.Sprintf("%d of %d passes", sum.Laid, sum.Passes), look.When(sum.Last, m.at)
	switch {
	case sum.Err != nil:
		if look.Wide(mark+sum.Name+"  "+damageText(sum.Err)) <= w {
			return []string{mark + style.Render(sum.Name) + "  " + s.Alarm.Render(damageText(sum.Err))}
		}
		told := look.Painted(look.Wrap(damageText(sum.Err), w-7), s.Alarm)
		return append([]string{look.Fit(mark+style.Render(sum.Name), w)}, look.Indent(told, 6)...)
	case sum.Finished:
		return line(fmt.Sprintf("%d ends, %s%s", sum.Ends, touched, paceText(sum.Pace)))
	case !sum.Begun:
		return line(fmt.Sprintf("%d ends, %s", sum.Ends, measure.Counted(sum.Passes, "pass", "passes")))
	case sum.Wound:
		return line(fmt.Sprintf("%d ends, %s", sum.Standing, touched))
	}
	if w >= 76 {
		far, touched = far+fmt.Sprintf(", %d of %d ends", sum.Standing, sum.Ends), "last touched "+touched
	}
	return []string{
		look.Fit(mark+style.Render(sum.Name), w),
		look.Fit("      "+s.Bar(sum.Laid, sum.Passes, 12)+"  "+far+s.Dim.Render("  "+touched), w),
	}
}

// halfText says of a half-filled plan what it is for and when it was left.
func (m home) halfText(p halfplan.Plan) string {
	what := ""
	switch {
	case p.Err != nil:
		return "left out; " + look.When(p.Kept, m.at)
	case p.Of != "":
		what = "change of a plan, "
	case m.shelf != "":
		what = "half-filled plan, "
	}
	return what + "left " + look.When(p.Kept, m.at)
}

// paceText is the pace of a finished warp; empty where it isn't known.
func paceText(p counter.PaceResult) string {
	if p.Passes == 0 {
		return ""
	}
	return fmt.Sprintf(", %s a pass", p.PerPass.Round(time.Second))
}

// damageText says in a line what is wrong with a record, and what can be done.
func damageText(err error) string {
	var d *journal.DamageError
	if errors.As(err, &d) {
		return fmt.Sprintf("damaged at line %d: millside salvage saves what is sound", d.Line)
	}
	return strings.TrimSpace(measure.Clean(err.Error()))
}
