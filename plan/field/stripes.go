package field

// The stripes and how they are wound.
var (
	StripesOf = add(Stripes, Field{Name: "stripes", Label: "stripes", Flag: "stripes", Value: Text, Optional: true,
		Help: `the colours from end 1 to the last, such as "8 white, 21 times (4 red, 14 white), 20 red"; ` +
			`none: a plain warp`})
	StripesFrom = add(Stripes, Field{Name: "stripes are written from", Label: "written from", Flag: "stripes-from",
		Value: Word, Words: []string{"end 1", "left", "right"},
		Help: "where the order that you write begins; in print that is mostly on the right"})
	StripesLaid = add(Stripes, Field{Name: "stripes laid", Label: "laid", Flag: "stripes-laid", Value: Word,
		Words: []string{"as written", "repeated", "whole repeats", "cut"},
		Help: "how the stripes, or the threads of a draft, come to the ends that a cloth's width takes, or that are " +
			"given; a draft is repeated where nothing is said"})
	FinishAtLease = add(Stripes, Field{Name: "finish", Label: "finish at lease", Flag: "finish-at-lease", Value: YesNo,
		Words: []string{"no", "yes"}, Help: "an even number of passes only"})
	PackagesOf = add(Stripes, Field{Name: "packages", Label: "packages of", Flag: "packages-of", Value: List,
		Optional: true, Help: `packages of each colour at hand, such as "red 2, white 4"; of others there are enough`})
	GroupSizes = add(Stripes, Field{Name: "group sizes", Label: "group sizes", Flag: "group-sizes", Value: "numbers",
		Optional: true, Help: `the ends that a pass may carry, such as "10, 12"; any, where none are given`})
	MostHalts = add(Stripes, Field{Name: "most halts", Label: "most halts", Flag: "most-halts", Value: Number,
		Optional: true, Help: "the most halts that you put up with; any number, where it isn't given"})
	Effort = add(Stripes, Field{Name: "effort", Label: "effort", Flag: "effort", Value: Number, Low: 1, High: 100,
		Count: 1, Help: "how long to search, as a multiple of the usual"})
	Way = add(Stripes, Field{Name: "way", Label: "way to wind", Flag: "way", Value: "way",
		Words: []string{"searched", "cheapest", "side-by-side", "swapped", "one-repeat", "chain-each-colour"},
		Help:  "the way to wind the stripes; the plan says how long each takes"})
)

// The draft and how it is used.
var (
	Draft = add(Stripes, Field{Name: "draft", Flag: "draft", Value: "file",
		Help: "a draft in the format WIF that gives the warp; - is the standard input"})
	Thread1 = add(Stripes, Field{Name: "side of thread 1", Flag: "thread-1", Value: Word,
		Words: []string{"right", "left"},
		Help:  "the side that the draft's thread 1 is on, seen by the weaver at the loom"})
	NotThreaded = add(Stripes, Field{Name: "threads without a shaft", Flag: "not-threaded", Value: Word,
		Words: []string{"keep", "leave-out"}, Help: "what to do with threads that the draft puts through no shaft"})
	DraftThreads = add(Stripes, Field{Name: "threads of the draft", Flag: "draft-threads", Value: "range",
		Help: "the threads of the draft that are taken, such as 1-96"})
	DraftTimes = add(Stripes, Field{Name: "times", Flag: "draft-times", Value: Number,
		Help: "how often they are laid side by side; --ends repeats and cuts them instead"})
	DraftEdge = add(Stripes, Field{Name: "edge of the draft", Flag: "draft-edge", Value: Number,
		Help: "ends added at each side, of the outermost colour; or rest, what is left of the ends that are wanted"})
	NameColour = add(Stripes, Field{Name: "name of a colour", Flag: "name-colour", Value: "number=name", Repeated: true,
		Help: "what you call a colour of the draft, such as 3=navy; once for each"})
)
