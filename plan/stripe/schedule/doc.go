// Package schedule cuts a striped warp into passes: which ends each pass lays, which positions of the paddle
// carry them, and when a position gets another colour. Like package plan it opens no file and draws nothing.
//
// # The model
//
// The paddle has positions, holes and slots in turn, each empty or threaded with a colour. A pass carries
// some of them and lays as many neighbouring ends of the warp: the lowest position lays the lowest end, or
// the highest one does, as the direction, the return order and the foot position have it. The carried
// positions need not be neighbours, but holes and slots alternate among them, or the lease could not. What a
// pass doesn't carry is parked: cut off, and threaded still. Between two passes the hands work at the peg as
// the ledger of package plan has it (see plan.Plan.WorkBefore): what is no longer carried is cut off, what is
// to be carried is tied on, after it was threaded where another colour is wanted. [Sum] counts that work, and
// [Times] says how long each kind takes; a schedule is judged by [Times.Total] of its sum and by nothing else.
//
// A threaded position takes a package of its colour until it is threaded with another or emptied. To empty
// one costs nothing; it is done only where packages are short.
//
// # The search
//
// One set-up for the whole warp is bettered first, as a start (settle.go). Then a schedule is found in three
// steps. For a programme, which says what is threaded where while each end is laid, the best cut into passes is a
// shortest path (programme.go). The programme is bettered by small changes, and the path worked out again only
// where they tell (anneal.go); where the stripes repeat, that is done for a few repeats, and the rest is put in
// between (repeat.go). A second search with other lots runs beside the first (twin.go), and a long warp is searched
// in pieces side by side (pieces.go). A bound (bound.go;
// boundlong.go for long warps) says how much a better schedule could save. Small warps are also searched exactly
// (exact.go), which proves the least cost.
// [Make] does all that; its result depends on its arguments, never on the speed of the machine.
package schedule
