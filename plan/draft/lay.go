package draft

import (
	"fmt"
	"strconv"
	"strings"

	"millside/plan/field"
	"millside/plan/measure"
	"millside/plan/wind"
)

// FitTo says how many ends are wanted, and how the threads come to them. Where the weaver has said how often the
// threads are laid, and not how they come to the ends, they stay so often.
func (u *Use) FitTo(ends int, ofWidth bool, laid wind.Laid, laidGiven bool) {
	u.Ends, u.OfWidth, u.Laid = ends, ofWidth, laid
	switch {
	case laidGiven:
	case u.Times > 0:
		u.Laid = wind.AsWritten
	default:
		u.Laid = wind.Repeated
	}
}

// lay repeats and cuts the threads, and puts the edges beside them.
func (u Use) lay(threads []int, w *Warp) ([]end, error) {
	l, left, right, err := u.laying(len(threads))
	if err != nil {
		return nil, err
	}
	total := l.Ends()
	if total+left+right > measure.MaxEnds {
		return nil, &measure.FieldError{Field: field.Ends.Name, Value: strconv.Itoa(total + left + right),
			Want: fmt.Sprintf("1 to %d, the added ones of both sides among them", measure.MaxEnds)}
	}
	w.Said = append(w.Said, u.laidText(l, len(threads), left, right)...)
	ends := make([]end, 0, total+left+right)
	edge := func(out, next, k int) end { // the k-th end from the threads outwards
		if k%2 == 1 {
			return end{out, next}
		}
		return end{out, out}
	}
	first, last := threads[0], threads[(total-1)%len(threads)]
	for k := left; k > 0; k-- {
		ends = append(ends, edge(first, threads[min(1, len(threads)-1)], k))
	}
	for i := range total {
		ends = append(ends, end{threads[i%len(threads)], threads[i%len(threads)]})
	}
	for k := 1; k <= right; k++ {
		ends = append(ends, edge(last, threads[(total-1+len(threads)-1)%len(threads)], k))
	}
	return ends, nil
}

// laying is how so many threads are laid, and how many ends are added on the left and on the right.
func (u Use) laying(threads int) (l wind.Laying, left, right int, err error) {
	if u.Times < 0 || u.Edge < 0 || u.Ends < 0 || u.Times > 1 && u.Ends > 0 && u.Laid != wind.AsWritten {
		return l, 0, 0, &measure.FieldError{Field: field.DraftTimes.Name, Value: strconv.Itoa(u.Times),
			Want: "1 or more, or the ends wanted in its place"}
	}
	if u.EdgeRest && u.Ends == 0 {
		return l, 0, 0, &measure.FieldError{Field: field.DraftEdge.Name, Value: RestWord,
			Want: "a number, or say how many ends are wanted or how wide the cloth is"}
	}
	if times := max(u.Times, 1); threads > measure.MaxEnds/times {
		return l, 0, 0, &measure.FieldError{Field: field.Ends.Name, Value: strconv.Itoa(threads * times),
			Want: fmt.Sprintf("1 to %d, the added ones of both sides among them", measure.MaxEnds)}
	}
	l = wind.Laying{How: u.Laid, Written: threads * max(u.Times, 1)}
	if u.Ends > 0 {
		if l.Wanted = u.Ends - 2*u.Edge; l.Wanted < 1 || u.Ends > measure.MaxEnds {
			return l, 0, 0, &measure.FieldError{Field: field.Ends.Name, Value: strconv.Itoa(u.Ends),
				Want: fmt.Sprintf("%d to %d, the added ones of both sides among them", 2*u.Edge+1, measure.MaxEnds)}
		}
	}
	if l.Ends() < 1 {
		return l, 0, 0, field.StripesLaid.Wrong(l.How.String(), fmt.Sprintf("%s or %s: the draft has %d threads, and "+
			"%d ends are wanted", wind.CutToEnds, wind.AsWritten, threads, l.Wanted))
	}
	if !u.EdgeRest {
		return l, u.Edge, u.Edge, nil
	}
	rest := max(l.Wanted-l.Ends(), 0)
	return l, rest / 2, rest - rest/2, nil
}

// RestWord asks for the ends at each side that are left of those wanted.
const RestWord = "rest"

// ParseEdge reads how many ends are added at each side, or [RestWord]. The error is a [*measure.FieldError].
func ParseEdge(text string) (n int, rest bool, err error) {
	if text = strings.TrimSpace(text); text == RestWord {
		return 0, true, nil
	}
	n, err = strconv.Atoi(text)
	if err != nil || n < 0 || n > measure.MaxEnds {
		return 0, false, &measure.FieldError{Value: text, Want: fmt.Sprintf("0 to %d, or %s: what is left of the ends "+
			"that are wanted", measure.MaxEnds, RestWord)}
	}
	return n, false, nil
}

// laidText says how so many threads make the ends, what of them is left over, and how far the warp is from what is
// wanted.
func (u Use) laidText(l wind.Laying, threads, left, right int) []string {
	var said []string
	add := func(format string, args ...any) { said = append(said, fmt.Sprintf(format, args...)) }
	total := l.Ends()
	switch times, over := total/threads, total%threads; {
	case times == 0:
		add("cut from %d threads to the %d on the left: %s", threads, total, othersText(threads-total, ""))
	case times > 1 && over == 0:
		add("%d threads %d times", threads, times)
	case over > 0:
		add("%d threads %s and %d of them once more, on the right: %s", threads,
			measure.Counted(times, "time", "times"), over, othersText(threads-over, " of the last time"))
	}
	switch {
	case left == right && left > 0:
		add("%s added at each side", measure.Counted(left, "end", "ends"))
	case right > 0 && left > 0:
		add("%s added on the left, %d on the right", measure.Counted(left, "end", "ends"), right)
	case right > 0:
		add("%s added on the right", measure.Counted(right, "end", "ends"))
	}
	switch off := total + left + right - u.Ends; {
	case u.Ends == 0:
	case off > 0:
		add("%s, %d more than the %d that are wanted", measure.Counted(u.Ends+off, "end", "ends"), off, u.Ends)
	case off < 0:
		add("%s, %d fewer than the %d that are wanted", measure.Counted(u.Ends+off, "end", "ends"), -off, u.Ends)
	}
	return said
}

// othersText says that so many others are left out.
func othersText(n int, of string) string {
	if n == 1 {
		return "the other one" + of + " is left out"
	}
	return fmt.Sprintf("the other %d%s are left out", n, of)
}
