package main

import (
	"bytes"
	"fmt"
	"strings"

	"millside/cmd/millside/internal/asked"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// manPage is the page of a command in the marks of man pages (man 7 man), with what all commands share.
func manPage(cmd *cobra.Command) []byte {
	var b bytes.Buffer
	name := strings.ReplaceAll(cmd.CommandPath(), " ", "-")
	fmt.Fprintf(&b, ".TH %s 1 %q Millside Millside\n", strings.ToUpper(name), manDate.Format("Jan 2006"))
	fmt.Fprintf(&b, ".SH NAME\n%s \\- %s\n.SH SYNOPSIS\n.B %s\n", roff(name), roff(cmd.Short), roff(cmd.UseLine()))
	if cmd.Long != "" {
		fmt.Fprintf(&b, ".SH DESCRIPTION\n%s", roffText(cmd.Long))
	}
	cmd.InitDefaultHelpFlag()
	if local := cmd.NonInheritedFlags(); local.HasAvailableFlags() {
		fmt.Fprint(&b, ".SH OPTIONS\n")
		roffFlags(&b, local)
	}
	if inherited := cmd.InheritedFlags(); inherited.HasAvailableFlags() {
		fmt.Fprint(&b, ".SH OPTIONS OF EVERY COMMAND\n")
		roffFlags(&b, inherited)
	}
	if cmd.Example != "" {
		fmt.Fprintf(&b, ".SH EXAMPLES\n.nf\n%s\n.fi\n", roff(cmd.Example))
	}
	b.WriteString(manShared)
	if also := manAlso(cmd); also != "" {
		fmt.Fprintf(&b, ".SH SEE ALSO\n%s\n", also)
	}
	return b.Bytes()
}

// manAlso lists the pages of the command above and of those below.
func manAlso(cmd *cobra.Command) string {
	var pages []string
	page := func(c *cobra.Command) {
		pages = append(pages, `\fB`+roff(strings.ReplaceAll(c.CommandPath(), " ", "-"))+`\fP(1)`)
	}
	if cmd.HasParent() {
		page(cmd.Parent())
	}
	for _, below := range cmd.Commands() {
		if below.IsAvailableCommand() {
			page(below)
		}
	}
	return strings.Join(pages, ", ")
}

// roffFlags lists options with what they take, under the headings that the help has too. A default is told
// where the option has one.
func roffFlags(b *bytes.Buffer, flags *pflag.FlagSet) {
	heading := ""
	flags.SortFlags = false
	flags.VisitAll(func(f *pflag.Flag) {
		if f.Hidden {
			return
		}
		if h := asked.HeadingOf(f); h != heading && h != "" {
			heading = h
			fmt.Fprintf(b, ".SS %s\n", roff(h))
		}
		takes, usage := pflag.UnquoteUsage(f)
		name := "--" + f.Name
		if f.Shorthand != "" {
			name = "-" + f.Shorthand + ", " + name
		}
		fmt.Fprintf(b, ".TP\n\\fB%s\\fP", roff(name))
		if takes != "" {
			fmt.Fprintf(b, " \\fI%s\\fP", roff(takes))
		}
		if !noDefault(f) {
			usage += fmt.Sprintf(" (default %s)", f.DefValue)
		}
		fmt.Fprintf(b, "\n%s\n", roff(usage))
	})
}

// noDefault says whether an option does nothing unless it is given: what stands for nothing is no default.
func noDefault(f *pflag.Flag) bool {
	switch f.DefValue {
	case "", "0", "false", "0s", "0 m":
		return true
	}
	return false
}

// roffText writes paragraphs; lines that stand in keep their form.
func roffText(text string) string {
	var b strings.Builder
	kept := false
	for line := range strings.SplitSeq(strings.Trim(text, "\n"), "\n") {
		if in := strings.HasPrefix(line, "  "); in != kept {
			kept = in
			if in {
				b.WriteString(".nf\n")
			} else {
				b.WriteString(".fi\n")
			}
		}
		if line == "" {
			b.WriteString(".PP\n")
			continue
		}
		b.WriteString(roff(line) + "\n")
	}
	if kept {
		b.WriteString(".fi\n")
	}
	return b.String()
}

// roff escapes what man pages take for marks.
func roff(text string) string {
	text = strings.NewReplacer(`\`, `\e`, "-", `\-`).Replace(text)
	lines := strings.Split(text, "\n")
	for i, line := range lines {
		if strings.HasPrefix(line, ".") || strings.HasPrefix(line, "'") {
			lines[i] = `\&` + line
		}
	}
	return strings.Join(lines, "\n")
}

// manShared is what the pages of all commands tell, in the marks of man pages (man 7 man).
const manShared = `.SH EXIT STATUS
.TP
.B 0
It went well.
.TP
.B 1
It could not be done; the message says why.
.TP
.B 2
The command line is wrong: an unknown command or option, or a value that won't do.
.TP
.B 130
Stopped by Ctrl-C.
.TP
.B 129, 131, 143
Stopped by the system: hang-up, quit, end. What was counted is kept.
.SH ENVIRONMENT
.TP
.B MILLSIDE_RECORDS
The folder of the records, unless --records names one.
.TP
.B MILLSIDE_AT_HAND
The file of things at hand, unless --at-hand names one.
.TP
.B XDG_DATA_HOME, XDG_CONFIG_HOME
Where records and settings are where the two above are not set; relative values are passed over.
.TP
.B LC_ALL, LC_MEASUREMENT, LC_NUMERIC, LANG
The units that a new warp begins with and the decimal sign that numbers are shown with, unless the settings say them:
yards and inches for the United States and without a locale, else metres. What programs read has a decimal point.
.TP
.B NO_COLOR
If it is set and not empty, the screen is drawn without colour.
.TP
.B TERM
If it is dumb, the full screen can't be drawn; --plain goes line by line.
.TP
.B SOURCE_DATE_EPOCH
The day that stands on a sheet, in seconds since 1970, in place of today.
.SH FILES
.TP
.I ~/.local/share/millside/*.millside
The records: one plain-text file a warp.
.TP
.I ~/.config/millside/at-hand.txt
The things at hand.
.TP
.I ~/.config/millside/settings.txt
The settings: keys, sounds, units, decimal sign.
.PP
On Windows both folders are %AppData%\\millside.
`
