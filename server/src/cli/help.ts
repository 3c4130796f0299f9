/** What `--help` prints: the whole contract of the command line, bounds and exit codes included. */
import { ASSUMED_BOARD } from '../analysis';
import {
  DEEPEST,
  DEEPEST_SOURCE_FOLDER,
  LARGEST_FILE,
  MOST_CHARACTERS,
  MOST_FOLDERS,
  MOST_SOURCE_FOLDERS,
  MOST_SOURCES,
} from '../files';

/** The text of `--help`. */
export const HELP = `wiretrue: keeps a firmware sketch true to the wires it runs on

  wiretrue check [path ...] [--format text|json]
      Checks every sketch that has a hardware.jsonc beside it. A path is a folder (searched downwards), a source
      file of a sketch or a hardware.jsonc; without one it is the current folder.
  wiretrue uses [path ...] [--board ID] [--format text|json]
      Prints what every sketch does to which pin: one line a use, grouped by pin. A path is a folder (searched
      downwards), a source file or a hardware.jsonc; no sketch needs one. The board is the named one (an id of the
      library or the path of a board file), else that of the manifest, else ${ASSUMED_BOARD}, and the output says which.
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

Exit code of uses
  0   every sketch was read
  2   something could not be read: a path that does not exist or leads to no sketch, a file that cannot be read, a
      board that does not exist. Everything else is still printed.

Text output of check
  A "fix" leaves the built thing as it is. A "fix (ask)" changes what somebody solders or what the firmware does.
  Columns count UTF-16 units from 1. Colours only on a terminal, and not when NO_COLOR is set.

JSON output of check
  One object: format, tool, findings, problems, summary. Lines and characters count from 0, characters in UTF-16
  units; files are relative to the current folder. Ordered by file, place and rule.

JSON output of uses
  One object: uses and stats. A use has sketch, call, action, pins (numbers as the core counts them, or null with
  reason), value (numbers, or null: the call takes none or, with valueReason, it is not known), modes, file, line,
  column, function, path (the calls that lead there), phase, certain (every run does it, with all of these pins) and
  how (where the number came from). stats has sketches, files, calls, arguments (exact: one pin, or several of which
  every run touches each; set: one of several; unresolved), limits (what was not followed to its end) and boards.
  Lines and columns count from 1. In the order of execution, sketch by sketch.

What is read
  Of a sketch: the .ino named like its folder, the other .ino by name, then .cpp and .c beside them and below src
  (${DEEPEST_SOURCE_FOLDER} levels, ${MOST_SOURCE_FOLDERS} folders), and the headers that any of them includes: local
  ones, as long as they lie below the folder that was named. At most ${MOST_SOURCES} files and ${MOST_CHARACTERS / 1e6} million characters;
  where more is there, that is said. A folder without an .ino but with main.cpp, also in src, is a sketch too where
  it has a hardware.jsonc or includes the core's header. For uses, several .ino in one folder that each have a
  setup(), none of them named like the folder, are a sketch each.
  Not searched: node_modules, folders that begin with a dot, symbolic links to folders, folders more than
  ${DEEPEST} levels down, anything after ${MOST_FOLDERS} folders (the last two are said when they happen).
  Files over ${LARGEST_FILE / 1024 / 1024} MB are refused. Bytes that are not UTF-8 are read as U+FFFD.
`;
