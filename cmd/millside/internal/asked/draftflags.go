package asked

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"millside/plan"
	"millside/plan/draft"
	"millside/plan/entry"
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

// DraftFlags adds the flags that say how a draft is used, and of a plan those that say how many ends are wanted.
func DraftFlags(cmd *cobra.Command, plan *SpecAsk) *DraftAsk {
	a := &DraftAsk{}
	plan.given = given{texts: map[*field.Field]string{}, begin: entry.NewSpec(plan.Units)}
	plan.given.begin.Ends = 0
	for _, f := range draftFields {
		addFlag(cmd, f, a.value(f))
	}
	for _, f := range draft.FitFields() {
		if e, ok := entry.Of(f); ok {
			addFlag(cmd, f, &entryValue{e, &plan.given, false})
		}
	}
	cmd.Flags().VisitAll(func(flag *pflag.Flag) { flag.Annotations = nil }) // the command has few flags, and no parts
	return a
}

// FitDraft settles how many ends the plan's flags want of a draft, and how its threads come to them. The error names
// flags.
func FitDraft(cmd *cobra.Command, d *DraftFile, plan *SpecAsk) error {
	s := plan.begin()
	var errs []error
	for _, f := range draft.FitFields() {
		if e, ok := entry.Of(f); ok && plan.given.texts[f] != "" {
			errs = append(errs, e.Take(&s, plan.given.texts[f]))
		}
	}
	if err := errors.Join(errs...); err != nil {
		return NamedFlags(cmd, err)
	}
	changed := func(f *field.Field) bool { return cmd.Flags().Changed(f.Flag) }
	s.Cloth.Used = changed(field.FinishedWidth)
	if changed(field.Ends) && s.Cloth.Used {
		return NamedFlags(cmd,
			field.Ends.Wrong(strconv.Itoa(s.Ends), "no --ends beside a cloth, from which they follow"))
	}
	for _, f := range draft.FitFields() {
		if changed(f) && !s.Cloth.Used && f != field.Ends && f != field.StripesLaid && f != field.Units {
			return NamedFlags(cmd, f.Wrong(plan.given.texts[f], "a --finished-width too: it belongs to a cloth"))
		}
	}
	if changed(field.StripesLaid) && !s.Cloth.Used && !changed(field.Ends) {
		return Usage(cmd, laidNeeds())
	}
	return fitDraft(cmd, d, s)
}

// laidNeeds says what a way to lay stripes or threads needs.
func laidNeeds() error {
	return fmt.Errorf("--%s needs the ends that are wanted: --ends, or --finished-width with --sett",
		field.StripesLaid.Flag)
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
		return edgeValue{&a.use}
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

// edgeValue is how many ends are added at each side.
type edgeValue struct{ use *draft.Use }

func (v edgeValue) String() string {
	switch {
	case v.use == nil || v.use.Edge == 0 && !v.use.EdgeRest:
		return ""
	case v.use.EdgeRest:
		return draft.RestWord
	}
	return strconv.Itoa(v.use.Edge)
}
func (v edgeValue) Type() string { return field.Number }
func (v edgeValue) Set(s string) (err error) {
	v.use.Edge, v.use.EdgeRest, err = draft.ParseEdge(s)
	return err
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

// InDraftFlags names the flag in what a draft refused; what lies with the draft itself stays as it is. Too many ends
// come of laying it too often, where nobody has asked for so many.
func InDraftFlags(cmd *cobra.Command, err error) error {
	for _, fe := range measure.FieldErrors(err) {
		switch field.Named(fe.Field) {
		case field.Ends:
			named := *fe
			if named.Field = field.DraftTimes.Name; cmd.Flags().Changed(field.Ends.Flag) {
				named.Field = field.Ends.Name
			}
			return NamedFlags(cmd, &named)
		case field.DraftThreads, field.DraftTimes, field.DraftEdge, field.StripesLaid:
			return NamedFlags(cmd, err)
		}
	}
	return err
}

// fitDraft says how many ends are wanted of the draft, if the spec says it: by their number, or by the width of the
// cloth.
func fitDraft(cmd *cobra.Command, d *DraftFile, spec plan.Spec) error {
	changed := cmd.Flags().Changed
	ends := spec.Ends
	switch {
	case spec.Cloth.Used:
		var err error
		if ends, _, err = project.EndsOf(spec); err != nil {
			return NamedFlags(cmd, err)
		}
		d.Wanted = project.WidthText(spec, ends)
	case !changed(field.Ends.Flag):
		return nil
	}
	d.Use.FitTo(ends, spec.Cloth.Used, spec.Asked.Laid.How, changed(field.StripesLaid.Flag))
	return nil
}
