// Package loom is what the warp is handed over to: the raddle and its sections ([Raddle.Fill]), the reed
// and its dents ([Reed.Order], [Reed.Sley]), and which of several reeds suits a sett ([RankReeds]).
package loom
