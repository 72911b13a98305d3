// Package plan is the engine of Millside: it knows how a warp is wound on a warping mill with a
// paddle, and nothing else. It has no clock, opens no file and draws nothing; every function is pure.
//
// Start with [Spec], which is what the weaver decides (ends, group, length, mill, hand, return
// order). [New] checks a Spec and returns a [Plan]: one or more chains, each with its list of passes
// ([wind.Pass]). A pass says which way the group goes, which opening of the paddle goes first over which
// lease peg, how it lies at the counting cross, and which way it turns afterwards.
// [Plan.WorkBefore] is the ledger: what the hands cut off, thread and tie on at an end peg before each pass.
// [Plan.Before] and [Plan.After] put that and the rest into words, [Plan.Time] says how long it takes,
// [finishing.Steps] what follows the last one, [project.Choices] ranks the ways to reach the same number of ends.
//
// # Around the winding
//
// A weaver starts from a cloth. [cloth.Width] gives the ends and [cloth.Length] the length, each
// allowance as a line of its own; [measure.YarnSize] and [measure.Sett] say how fine and how close;
// [measure.HelpSett] offers a starting sett for a sample. [ChainAsk.Split] parts a wide warp,
// [frame.Mill.Room] and [frame.Board.Path] say whether it fits. [Plan.Yarn] follows each cone, [cloth.Weft]
// estimates the weft. For the loom there are [loom.Raddle.Fill], [loom.Reed.Order], [loom.Reed.Sley] and
// [loom.RankReeds]. [sheet.New] puts it all on one [sheet.Sheet]; [project.New] works out all of this from one [Spec].
// [athand.Parse] reads the mills, paddles, reeds and yarns that a weaver has. Results carry their formulas
// ([measure.How]) and are ready to be shown ([measure.Row]).
//
// # The model in short
//
// Winding starts at the lease (the near end). Odd passes are outward, to the counting cross at the
// far end; even passes return. Ends are numbered from 1 in the order in which they lie in the lease.
// Odd positions of the paddle are holes, even positions are slots. "Over peg A" means that an end was
// up when the paddle's opening was dropped over lease peg A; it is then down at peg B. The lease is
// right when no two neighbouring ends of the warp lie over the same peg.
//
// Lengths are whole nanometres ([measure.Length]), so that inches, yards and metres are all exact and can't
// be mixed by accident.
package plan
