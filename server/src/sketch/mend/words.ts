/** What can be told of a line without its grammar: whether it starts a function, a declaration, a call. */

/** Words that begin a statement and never go on with an expression. */
export const statementWords: ReadonlySet<string> = new Set(
  'if for while do switch case default return break continue else goto try'.split(' '),
);

/** Words that a type may still follow: a line of nothing else may go on below. */
const qualifiers: ReadonlySet<string> = new Set(
  'static const constexpr volatile inline extern unsigned signed long short virtual mutable register'.split(
    ' ',
  ),
);

export const isQualifier = (word: string): boolean => qualifiers.has(word);

/** Words that an operand has to follow. */
const openWords: ReadonlySet<string> = new Set(
  'return throw goto new delete sizeof not and or case else do try using'.split(' '),
);

export const isOpenWord = (word: string): boolean => openWords.has(word);

/** Words that say nothing by themselves: alone on a line they are not whole. */
const definingWords: ReadonlySet<string> = new Set(
  'struct class enum union using namespace typedef template typename friend operator'.split(' '),
);

export const isDefiningWord = (word: string): boolean => definingWords.has(word);

const typeWords =
  /(?:void|bool|char|int|long|short|float|double|unsigned|signed|byte|word|boolean|const|static|auto|volatile|struct|class|enum|union|typedef|template|namespace|constexpr|inline|extern)\b(?!\s*[({])/y;
const twoWords =
  /(?!(?:return|else|new|delete|throw|goto|case|not|and|or|sizeof)\b)[A-Za-z_]\w*(?:::\w+)*(?:<[^;(){}\n]{0,80}>)?(?:[ \t]+[*&]{0,2}|[*&]{1,2}[ \t]*)[A-Za-z_]\w*[ \t]*(?:[=;,([{]|\r?\n)/y;
const call = /[A-Za-z_]\w*[ \t]*(?:\(|\.|->|\[|::)/y;

function matches(pattern: RegExp, text: string, at: number): boolean {
  pattern.lastIndex = at;
  return pattern.test(text);
}

/** A type word, or two words in a row: it declares something. */
export function isDeclaration(text: string, at: number): boolean {
  return matches(typeWords, text, at) || matches(twoWords, text, at);
}

/** A name with a bracket, a member or an index behind it. */
export function isCallOrMember(text: string, at: number): boolean {
  return matches(call, text, at);
}

const headStart =
  /(?!(?:else|return|new|delete|throw|goto|case|using|typedef|if|for|while|switch|do)\b)(?:[A-Za-z_][\w:<>,*& \t]{0,160}[*& \t>][A-Za-z_~][\w:~]*|[A-Za-z_]\w*::~?\w+|ISR|SIGNAL)[ \t]*\(/y;
const headEnd =
  /(?:\s|\/\/[^\n]*|\/\*(?:[^*]|\*(?!\/))*\*\/|const\b|noexcept\b|override\b|final\b|[A-Z_]{4,}\b)*(?:\{|:(?!:))/y;
const longestHead = 600;

/** The head of a function definition, up to its brace. */
export function isHead(text: string, at: number): boolean {
  if (!matches(headStart, text, at)) return false;
  let depth = 1;
  let here = headStart.lastIndex;
  for (const last = here + longestHead; depth > 0; here += 1) {
    const char = text[here];
    if (char === undefined || here > last || char === ';' || char === '{' || char === '}') return false;
    if (char === '(') depth += 1;
    else if (char === ')') depth -= 1;
  }
  return matches(headEnd, text, here);
}

/** Whether the line from `at` on is a statement of its own, seen from inside an open bracket. */
export function isStatementLine(text: string, at: number): boolean {
  const end = text.indexOf('\n', at);
  const line = text.slice(at, end < 0 ? text.length : end);
  const word = /^[A-Za-z_]\w*/.exec(line)?.[0];
  if (word !== undefined && statementWords.has(word)) return true;
  return /^\}|[;{}]\s*$/.test(line.replace(/\/\/.*$|\/\*.*?\*\//g, ''));
}

const followingWhile = /(?:\s|\/\/[^\n]*\n|\/\*(?:[^*]|\*(?!\/))*\*\/)*while\b/y;

export function isWhileNext(text: string, at: number): boolean {
  return matches(followingWhile, text, at);
}

/** Names in a text that a round bracket follows, words of the language left out. */
export function calledNames(text: string): string[] {
  const names: string[] = [];
  for (const [, name] of text.matchAll(/([A-Za-z_]\w*)\s*\(/g)) {
    if (name !== undefined && !/^(?:if|for|while|switch|return|sizeof|__\w+)$/.test(name)) names.push(name);
  }
  return names;
}
