package house

var crowded = map[string]int{}
var talkative = map[string]int{}
var tall = map[string]int{}
var wide = map[string]int{}
