package form

import (
	"github.com/charmbracelet/bubbles/key"

	"millside/plan/field"
	"millside/tui/keys"
)

// ListKey is the key that lists all keys: where any text is typed, a question mark belongs to it.
func (m Model) ListKey() key.Binding {
	if m.fields[m.at].Value == field.Text {
		return m.Keys.AllKeysTyping
	}
	return m.Keys.AllKeys
}

// AllKeys are the keys of the form in the words of the page that lists them.
func (m Model) AllKeys() []key.Binding {
	k := m.Keys
	list := []key.Binding{keys.As(k.Begin, "begin winding"), keys.As(k.NextField, "next field"),
		keys.As(k.PrevField, "field before"), keys.As(k.NextPage, "next page"), k.PrevPage}
	if len(m.fields[m.at].options) > 0 {
		list = append(list, keys.As(k.Right, "next word"), keys.As(k.Left, "word before"))
	}
	group := "next group"
	if !plain(m.spec) {
		group = "next way to wind"
	}
	list = append(list, keys.As(k.Choice, group), keys.As(k.How, "how it is reckoned"),
		keys.As(k.Rest, "more of the result"), keys.As(k.AtHand, "next thing at hand"),
		keys.As(k.FormKnown, "from what I know"))
	if m.inBox() {
		list = append(list, k.NewLine)
	}
	if m.section() == secStripes && m.advice() != "" {
		list = append(list, keys.As(k.Take, "write it so"))
	}
	return append(list, keys.As(k.Back, "home; plan is kept"))
}
