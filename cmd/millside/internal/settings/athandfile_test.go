package settings

import (
	"regexp"
	"testing"

	"millside/plan/athand"
)

// The examples in the file that --write makes are read as they stand, once the # is away.
func TestAtHandTemplate(t *testing.T) {
	h, err := athand.Parse(AtHandTemplate)
	if err != nil || !h.IsEmpty() {
		t.Errorf("as it is: %+v, %v", h, err)
	}
	kinds := regexp.MustCompile(`(?m)^# ((?:mill|board|paddle|reed|raddle|loom|yarn) [a-z ]+:)`)
	text := kinds.ReplaceAllString(AtHandTemplate, "$1")
	h, err = athand.Parse(text)
	if err != nil || len(h.Mills) != 2 || len(h.Boards) != 1 || len(h.Paddles) != 1 || len(h.Reeds) != 2 ||
		len(h.Raddles) != 1 || len(h.Looms) != 2 || len(h.Yarns) != 2 {
		t.Errorf("with its examples: %+v, %v", h, err)
	}
}
