package asked

import (
	"strconv"
	"strings"

	"millside/plan"
	"millside/plan/draft"
	"millside/plan/measure"
	"millside/plan/project"
	"millside/plan/stripe"

	"github.com/spf13/cobra"
)

// DraftAsk is what the flags say of how a draft is used.
type DraftAsk struct {
	use                         draft.Use
	sideGiven, notThreadedGiven bool
}

// draftFlagNames lists the flags of [DraftFlags].
var draftFlagNames = []string{"thread-1", "draft-threads", "not-threaded", "draft-times", "draft-edge", "name-colour"}

// DraftFlags adds the flags that say how a draft is used.
func DraftFlags(cmd *cobra.Command) *DraftAsk {
	a := &DraftAsk{}
	f := cmd.Flags()
	f.Var(sideValue{&a.use.Side, &a.sideGiven}, "thread-1",
		"the side that the draft's thread 1 is on, seen by the weaver at the loom: right or left")
	f.Var(notThreadedValue{a}, "not-threaded",
		"what to do with threads that the draft puts through no shaft: keep or leave-out")
	f.Var(threadsValue{&a.use}, "draft-threads", "the threads of the draft that are taken, such as 1-96")
	f.Var(unset(countValue{&a.use.Times}), "draft-times",
		"how often they are laid side by side; --ends repeats and cuts them instead")
	f.Var(unset(countValue{&a.use.Edge}), "draft-edge", "ends added at each side, of the outermost colour")
	f.Var(coloursValue{&a.use}, "name-colour", "what you call a colour of the draft, such as 3=navy; once for each")
	// The errors would say that there is no such flag, or that it is completed already.
	_ = cmd.RegisterFlagCompletionFunc("thread-1",
		cobra.FixedCompletions([]string{"right", "left"}, cobra.ShellCompDirectiveNoFileComp))
	_ = cmd.RegisterFlagCompletionFunc("not-threaded",
		cobra.FixedCompletions([]string{"keep", "leave-out"}, cobra.ShellCompDirectiveNoFileComp))
	return a
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
			return &measure.FieldError{Field: "--name-colour", Value: strconv.Itoa(index) + "=" + name,
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
	from, to, ok := strings.Cut(s, "-")
	first, err1 := strconv.Atoi(strings.TrimSpace(from))
	last, err2 := strconv.Atoi(strings.TrimSpace(to))
	if !ok || err1 != nil || err2 != nil || first < 1 || last < first {
		return &measure.FieldError{Value: s, Want: "the first and the last thread, such as 1-96"}
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

// draftFlagOf names the flag of each field that a draft may refuse.
var draftFlagOf = map[string]string{"threads of the draft": "draft-threads", "times": "draft-times",
	"ends": "draft-times"}

// inDraftFlags names the flag in what a draft refused; what lies with the draft itself stays as it is.
func inDraftFlags(cmd *cobra.Command, err error) error {
	for _, fe := range measure.FieldErrors(err) {
		if draftFlagOf[fe.Field] != "" {
			return NamedFlags(cmd, err, draftFlagOf)
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
			return NamedFlags(cmd, err, FlagOf)
		}
		d.Use.Ends = fitted.Ends
	}
	return nil
}
