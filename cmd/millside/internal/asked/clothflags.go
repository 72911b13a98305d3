package asked

import (
	"fmt"
	"slices"

	"github.com/spf13/pflag"

	"millside/plan"
	"millside/plan/field"
	"millside/plan/measure"
)

// settleCloth says whether the plan begins at the cloth, and refuses what doesn't go with that.
func (ask *SpecAsk) settleCloth(f *pflag.FlagSet, s *plan.Spec) []error {
	changed := func(fd *field.Field) bool { return f.Changed(fd.Flag) }
	if !changed(field.FromCloth) {
		s.Cloth.Used = changed(field.FinishedWidth) || changed(field.FinishedLength)
	}
	var errs []error
	switch {
	case s.Cloth.Used:
		for _, fd := range []*field.Field{field.Ends, field.Length} {
			if changed(fd) {
				errs = append(errs, fd.Wrong(f.Lookup(fd.Flag).Value.String(),
					fmt.Sprintf("no --%s beside a cloth, from which it follows; or --%s=false", fd.Flag,
						field.FromCloth.Flag)))
			}
		}
	case !changed(field.FromCloth):
		errs = append(errs, without(f, field.Cloth,
			"a --finished-width and a --finished-length too: it belongs to a cloth", field.SettOf, field.Face)...)
	}
	return errs
}

// without refuses the flags of a part that were given without what they belong to.
func without(f *pflag.FlagSet, part field.Part, want string, but ...*field.Field) []error {
	var errs []error
	for fd := range field.All() {
		if fd.Part == part && fd.Flag != "" && f.Changed(fd.Flag) && !slices.Contains(but, fd) {
			errs = append(errs, &measure.FieldError{Field: fd.Name, Value: f.Lookup(fd.Flag).Value.String(),
				Want: want})
		}
	}
	return errs
}
