package counter_test

import "millside/counter/internal/countertest"

// What the tests of the record share with those of its file.
var (
	testPlan   = countertest.Plan
	at         = countertest.At
	laid       = countertest.Laid
	windAll    = countertest.WindAll
	sample     = countertest.Sample
	trouble    = countertest.Trouble
	manyEvents = countertest.ManyEvents
	Fold       = countertest.Fold
	drawPlan   = countertest.DrawPlan
	same       = countertest.Same
)

// FoldError is that of the plain fold.
type FoldError = countertest.FoldError
