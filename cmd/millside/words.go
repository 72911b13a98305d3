package main

import (
	"time"

	"millside/cmd/millside/internal/asked"
	"millside/cmd/millside/internal/prose"
	"millside/cmd/millside/internal/recordout"
	"millside/counter"
	"millside/plan"

	"github.com/spf13/cobra"
)

// The words that winding line by line shares with what is printed.

func clean(s string) string                       { return prose.Clean(s) }
func count(n int, noun string) string             { return prose.Count(n, noun) }
func positions(set plan.Positions) string         { return prose.Positions(set) }
func when(t time.Time) string                     { return prose.When(t) }
func seenOnMill(s counter.State) recordout.OnMill { return recordout.SeenOnMill(s) }
func wayText(p plan.Pass) string                  { return recordout.WayText(p) }
func helpDamaged(err error, path string) error    { return recordout.HelpDamaged(err, path) }
func usage(cmd *cobra.Command, err error) error   { return asked.Usage(cmd, err) }
