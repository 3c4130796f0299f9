/** Directives: lines that are not whole are blanked, and so is a condition that nothing ends. */
import type { Conditional, MendState } from './state';

const line = /^[ \t]*#[ \t]*(if|ifdef|ifndef|else|elif|endif)\b/gm;

/** Reads the directive under the lexer. */
export function readDirective(state: MendState): void {
  const { lexer, text, conditionals } = state;
  const { start, end } = lexer;
  const [, name = '', rest = ''] = /^#[ \t]*(\w*)\s*([\s\S]*)/.exec(text.slice(start, end)) ?? [];
  const blank = () => state.blank(start, end);
  switch (name) {
    case '':
      blank();
      return;
    case 'include':
      if (!/^(?:<[^>\n]*>|"[^"\n]*"|[A-Za-z_]\w*)/.test(rest)) blank();
      return;
    case 'define':
      if (!/^[A-Za-z_]\w*(?:\([^()]*\)|(?![\w(]))/.test(rest)) blank();
      return;
    case 'if':
    case 'ifdef':
    case 'ifndef': {
      const { statement } = state;
      conditionals.push({
        start,
        end,
        stack: [...state.stack],
        statement: statement && { ...statement },
        others: [],
        bare: rest === '',
      });
      if (/^0\s*(?:$|\/)/.test(rest)) skipDead(state);
      return;
    }
    case 'else':
    case 'elif':
    case 'elifdef':
    case 'elifndef': {
      const open = conditionals.pop();
      if (open === undefined) {
        state.isUnfit = true;
        blank();
        return;
      }
      conditionals.push({ ...open, others: [...open.others, { start, end }] });
      state.stack = [...open.stack];
      state.statement = open.statement && { ...open.statement };
      return;
    }
    case 'endif': {
      const at = matching(state);
      if (at < 0) {
        state.isUnfit = true;
        blank();
      }
      for (const open of conditionals.splice(Math.max(at + 1, 0))) dropConditional(state, open);
      const closed = conditionals.pop();
      if (closed?.bare !== true) return;
      dropConditional(state, closed);
      blank();
    }
  }
}

/** The one that an `#endif` at this depth of brackets ends; -1 for none. */
function matching({ conditionals, stack, byDepth }: MendState): number {
  if (!byDepth) return conditionals.length - 1;
  const depth = stack.length;
  const same = conditionals.findLastIndex((open) => open.stack.length === depth);
  return same < 0 ? conditionals.length - 1 : same;
}

/** Blanks a condition's lines: what stands between them is read. */
export function dropConditional(state: MendState, open: Conditional): void {
  state.blank(open.start, open.end);
  for (const { start, end } of open.others) state.blank(start, end);
}

/** Passes over text that is never compiled: it may be prose. */
function skipDead({ lexer, text }: MendState): void {
  let depth = 0;
  line.lastIndex = lexer.end;
  for (let match = line.exec(text); match !== null; match = line.exec(text)) {
    const [, name = ''] = match;
    if (name.startsWith('if')) depth += 1;
    else if (depth === 0) {
      lexer.rewind(match.index, true);
      return;
    } else if (name === 'endif') depth -= 1;
  }
}
