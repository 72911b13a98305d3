package start

import (
	"testing"

	"millside/plan"
	"millside/plan/cloth"
	"millside/plan/entry"
	"millside/plan/measure"
	"millside/plan/project"
	"millside/plan/times"
)

// bare is a spec without allowances and without yarn beside the length, as printed examples reckon.
func bare() plan.Spec {
	s := plan.DefaultSpec()
	s.Yarn.Extras.Given = true
	return s
}

func solved(t interface {
	Helper()
	Fatal(...any)
}, k Known) *Result {
	t.Helper()
	r, err := Solve(testContext, k)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func sett(t *testing.T, text string) measure.Sett {
	t.Helper()
	got, err := measure.ParseSett(text)
	if err != nil {
		t.Fatal(err)
	}
	return got
}

func yarnOf(t *testing.T, text string) measure.YarnSize {
	t.Helper()
	got, err := measure.ParseYarn(text)
	if err != nil {
		t.Fatal(err)
	}
	return got
}

func onHand(t *testing.T, text string) []Package {
	t.Helper()
	got, err := ParseOnHand(text)
	if err != nil {
		t.Fatal(err)
	}
	return got
}

// line is the value of a step.
func line(t *testing.T, r *Result, name string) string {
	t.Helper()
	for _, l := range r.Lines {
		if l.Name == name {
			return l.Value.Plain()
		}
	}
	t.Fatalf("no step %q in %v", name, names(r))
	return ""
}

func names(r *Result) []string {
	var list []string
	for _, l := range r.Lines {
		list = append(list, l.Name)
	}
	return list
}

// planned is the plan of a result.
func planned(t interface {
	Helper()
	Fatal(...any)
}, r *Result) *project.Project {
	t.Helper()
	p, err := project.New(r.Spec, times.PublishedPace())
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// lossless gives the allowances of a cloth that were said to be nothing.
func lossless(s plan.Spec) plan.Spec {
	s.Cloth = plan.Cloth{Width: cloth.Width{}, Length: cloth.Length{}}
	return s
}

// fromFibre assumes the allowances.
func fromFibre(f cloth.Fibre) plan.Spec {
	s := entry.NewSpec(measure.Imperial)
	s.Cloth.Width.Fibre, s.Cloth.Length.Fibre = f, f
	return s
}
