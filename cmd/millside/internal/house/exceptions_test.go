package house

// The exceptions that still stand. They only shrink: mend the room, and take its line away.

// crowded names folders with more source files.
var crowded = map[string]int{}

// talkative names packages with more exported names.
var talkative = map[string]int{}

// large names folders, with all below them, in which some files or lines are still too long.
var large = []string{"cmd/millside", "counter", "plan/draft", "plan/stripe", "tui"}
