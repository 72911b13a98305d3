// Package asked reads what a command line asks for: the options of a plan and the values that they take, drafts
// and stripes, and settles them into the spec of a plan. What is wrong is refused by the option's name.
package asked
