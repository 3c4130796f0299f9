/** What `--help` prints: the whole contract of the command line, bounds and exit codes included. */
import { DEEPEST, LARGEST_FILE, MOST_FOLDERS } from '../files';

/** The text of `--help`. */
export const HELP = `wiretrue: keeps a firmware sketch true to the wires it runs on

  wiretrue check [path ...] [--format text|json]
      Checks every sketch that has a hardware.jsonc beside it. A path is a folder (searched downwards), a source
      file of a sketch or a hardware.jsonc; without one it is the current folder.
  wiretrue hookup [path]
      Prints the hookup list of one build as Markdown: a row for every wire, with header positions to count along.
  wiretrue explain [rule]
      Says what a rule looks for, why, and where that comes from. Without a rule: lists all of them.
  wiretrue serve --stdio
      Runs the language server over standard input and output.
  wiretrue --help
  wiretrue --version

Exit code of check
  0   nothing was found, or only information and hints (they are printed all the same)
  1   at least one error or warning was found
  2   something could not be checked: a path that does not exist or has no hardware.jsonc, a file or folder that
      cannot be read, a wrong argument. Everything else is still checked and printed.

Text output
  A "fix" leaves the built thing as it is. A "fix (ask)" changes what somebody solders or what the firmware does.
  Columns count UTF-16 units from 1. Colours only on a terminal, and not when NO_COLOR is set.

JSON output
  One object: format, tool, findings, problems, summary. Lines and characters count from 0, characters in UTF-16
  units; files are relative to the current folder. Ordered by file, place and rule.

What is read
  Of a folder with a hardware.jsonc: the .ino named like the folder, the other .ino, then .cpp, .c, .h and .hpp.
  Not searched: node_modules, folders that begin with a dot, symbolic links to folders, folders more than
  ${DEEPEST} levels down, anything after ${MOST_FOLDERS} folders (the last two are said when they happen).
  Files over ${LARGEST_FILE / 1024 / 1024} MB are refused. Bytes that are not UTF-8 are read as U+FFFD.
`;
