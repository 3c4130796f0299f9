/**
 * The `#include` lines of a text. The files of a sketch have to be known before anything is parsed, so this looks at
 * the text alone: comments and strings are passed over, conditions are not weighed.
 */

/** What one text asks for. */
export interface Includes {
  readonly paths: readonly {
    /** As written between the quotes or brackets. */
    readonly path: string;
    /** True for `<…>`. */
    readonly system: boolean;
  }[];
  /** A line names its file by a macro: which one is not known here. */
  readonly computed: boolean;
}

// Comments, strings and character literals are matched so that nothing inside them is. One without an end is matched as
// far as it goes, else a text full of beginnings would be read once for each.
const TOKENS =
  /\/\*(?:[\s\S]*?\*\/|[\s\S]*)|\/\/[^\r\n]*|^[ \t]*#[ \t]*include\b[ \t]*(?:"([^"\r\n]+)"|<([^>\r\n]+)>|([A-Za-z_]\w*))?|"(?:\\[\s\S]|[^"\\\n])*"?|'(?:\\[\s\S]|[^'\\\n])*'?/gm;

/** Include lines beyond this many are not followed. */
const MOST_INCLUDES = 200;

/** Files whose include lines are kept at most. */
const MOST_REMEMBERED = 1000;

/** Finds the include lines of a text, in their order. */
export function scanIncludes(text: string): Includes {
  const paths: { path: string; system: boolean }[] = [];
  let computed = false;
  if (text.includes('include')) {
    for (const [, quoted, bracketed, macro] of text.matchAll(TOKENS)) {
      const path = quoted ?? bracketed;
      if (path !== undefined) {
        paths.push({ path: path.trim(), system: quoted === undefined });
      }
      computed ||= macro !== undefined;
      if (paths.length >= MOST_INCLUDES) {
        break;
      }
    }
  }
  return { paths, computed };
}

// Good enough to tell a whole sketch from a tab of one; what the function does is the sketch layer's to say.
const SETUP = /^[ \t]*void[ \t\r\n]+setup[ \t]*\(/m;

/** True where the text defines (or declares) the function that every sketch begins with. */
export function hasSetup(text: string): boolean {
  return SETUP.test(text);
}

/** Keeps what was found in each file for as long as its text is the same: an editor asks at every key. */
export function rememberIncludes(): (text: string, file: string) => Includes {
  const known = new Map<string, { readonly text: string; readonly includes: Includes }>();
  return (text, file) => {
    const before = known.get(file);
    if (before?.text === text) {
      return before.includes;
    }
    const includes = scanIncludes(text);
    if (known.size > MOST_REMEMBERED) {
      known.clear();
    }
    known.set(file, { text, includes });
    return includes;
  };
}
