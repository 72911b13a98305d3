package asked

import (
	"strconv"
	"strings"

	"millside/plan"
	"millside/plan/draft"
	"millside/plan/field"
	"millside/plan/measure"
	"millside/plan/project"
	"millside/plan/stripe"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// DraftAsk is what the flags say of how a draft is used.
type DraftAsk struct {
	use                         draft.Use
	sideGiven, notThreadedGiven bool
}

// draftFields lists the fields that say how a draft is used.
var draftFields = []*field.Field{field.Thread1, field.DraftThreads, field.NotThreaded, field.DraftTimes,
	field.DraftEdge,
	field.NameColour}

// DraftFlags adds the flags that say how a draft is used.
func DraftFlags(cmd *cobra.Command) *DraftAsk {
	a := &DraftAsk{}
	for _, f := range draftFields {
		addFlag(cmd, f, a.value(f))
		cmd.Flags().Lookup(f.Flag).Annotations = nil // the command has no other flags
	}
	return a
}

// value is the flag's value; nil for a field that says nothing of a draft.
func (a *DraftAsk) value(f *field.Field) pflag.Value {
	switch f {
	case field.Thread1:
		return sideValue{&a.use.Side, &a.sideGiven}
	case field.NotThreaded:
		return notThreadedValue{a}
	case field.DraftThreads:
		return threadsValue{&a.use}
	case field.DraftTimes:
		return unset(countValue{&a.use.Times})
	case field.DraftEdge:
		return unset(countValue{&a.use.Edge})
	case field.NameColour:
		return coloursValue{&a.use}
	}
	return nil
}

// Of says of a draft what the flags say. The error is about a colour's name that the draft doesn't use.
func (a *DraftAsk) Of(d *DraftFile) error {
	d.Use, d.SideGiven, d.NotThreadedGiven = a.use, a.sideGiven, a.notThreadedGiven
	used := map[int]bool{}
	for _, c := range d.Colours {
		used[c] = true
	}
	for _, p := range d.Weft {
		used[p.Colour] = true
	}
	for index, name := range a.use.Names {
		if !used[index] {
			return &measure.FieldError{Field: "--" + field.NameColour.Flag, Value: strconv.Itoa(index) + "=" + name,
				Want: "the number of a colour that the draft uses; 'millside draft' lists them"}
		}
	}
	return nil
}

// notThreadedValue says whether threads without a shaft are wound.
type notThreadedValue struct{ a *DraftAsk }

func (v notThreadedValue) String() string {
	if v.a == nil || !v.a.notThreadedGiven {
		return ""
	}
	if v.a.use.LeaveOut {
		return "leave-out"
	}
	return "keep"
}
func (v notThreadedValue) Type() string { return "word" }
func (v notThreadedValue) Set(s string) error {
	if s != "keep" && s != "leave-out" {
		return &measure.FieldError{Value: s, Want: "one of keep, leave-out"}
	}
	v.a.use.LeaveOut, v.a.notThreadedGiven = s == "leave-out", true
	return nil
}

// threadsValue is the first and the last thread of a draft that are taken: "1-96".
type threadsValue struct{ use *draft.Use }

func (v threadsValue) String() string {
	if v.use == nil || v.use.Last == 0 {
		return ""
	}
	return strconv.Itoa(v.use.First) + "-" + strconv.Itoa(v.use.Last)
}
func (v threadsValue) Type() string { return "range" }
func (v threadsValue) Set(s string) error {
	first, last, err := draft.ParseThreads(s)
	if err != nil {
		return err
	}
	v.use.First, v.use.Last = first, last
	return nil
}

// coloursValue gives a colour of a draft a name: "3=navy".
type coloursValue struct{ use *draft.Use }

func (v coloursValue) String() string { return "" }
func (v coloursValue) Type() string   { return "number=name" }
func (v coloursValue) Set(s string) error {
	number, name, ok := strings.Cut(s, "=")
	index, err := strconv.Atoi(strings.TrimSpace(number))
	name = strings.Join(strings.Fields(strings.Trim(strings.TrimSpace(name), `"`)), " ")
	if !ok || err != nil || index < 0 || index > 999_999_999 {
		return &measure.FieldError{Value: s, Want: "the number of a colour and its name, such as 3=navy"}
	}
	if err := stripe.CheckName(name); err != nil {
		return &measure.FieldError{Value: s,
			Want: "the number of a colour and its name, such as 3=navy: " + measure.FieldErrors(err)[0].Want}
	}
	if v.use.Names == nil {
		v.use.Names = map[int]string{}
	}
	v.use.Names[index] = name
	return nil
}

// inDraftFlags names the flag in what a draft refused; what lies with the draft itself stays as it is. Too many ends
// come of laying it too often.
func inDraftFlags(cmd *cobra.Command, err error) error {
	for _, fe := range measure.FieldErrors(err) {
		switch field.Named(fe.Field) {
		case field.Ends:
			named := *fe
			named.Field = field.DraftTimes.Name
			return NamedFlags(cmd, &named)
		case field.DraftThreads, field.DraftTimes:
			return NamedFlags(cmd, err)
		}
	}
	return err
}

// fitDraft says how many ends the draft is to make: those that were asked for, or those that the width of
// the cloth takes. Where it is told how often the draft is laid, that counts.
func fitDraft(cmd *cobra.Command, d *DraftFile, spec plan.Spec) error {
	changed := cmd.Flags().Changed
	switch {
	case changed("ends"):
		d.Use.Ends = spec.Ends
	case spec.Cloth.Used && !changed("draft-times"):
		fitted, err := project.FromCloth(spec)
		if err != nil {
			return NamedFlags(cmd, err)
		}
		d.Use.Ends = fitted.Ends
	}
	return nil
}
