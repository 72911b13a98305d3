// Package planout writes plans, drafts and setts, as text of at most 80 columns and as JSON.
package planout
