/**
 * What one body of a function shows by its form, noted in one walk and kept as long as the body lives. Nothing of
 * other functions is known here: the habits join the notes.
 */
import type { ConditionalItem, Expression, Item, Place, Variable } from '../form/ast';
import { type TransmissionNote, TransmissionNotes } from './transmissions';
import { type Visitor, walkExpression, walkItems } from './walk';

type ForItem = Extract<Item, { kind: 'for' }>;
export type LoopItem = ForItem | Extract<Item, { kind: 'while' | 'do' }>;
export type BinaryExpression = Extract<Expression, { kind: 'binary' }>;

/** A name that gets a value: by assignment, by a step, by its declaration, or by a call that changes one bit. */
export interface SetNote extends Place {
  readonly name: string;
  /** The operator before `=`; `step` for `++` and `--`; `bit` for bitSet and its kin. */
  readonly operator: string;
  readonly value?: Expression;
  /** Adds one. */
  readonly counts: boolean;
  /** False where an entry or a member of the name is set. */
  readonly whole: boolean;
  /** Under a test that compares with an earlier value. */
  readonly edge: boolean;
}

export interface BodyNotes {
  /** Functions and methods called by name, with the first place. */
  readonly called: ReadonlyMap<string, Place>;
  readonly attaches: readonly (Place & { readonly handler: Expression })[];
  readonly sets: readonly SetNote[];
  /** Comparisons and differences, without those whose result is cut to a type on purpose. */
  readonly pairs: readonly BinaryExpression[];
  readonly loops: readonly LoopItem[];
  readonly variables: readonly (Variable & { readonly item: Place; readonly alone: boolean })[];
  /** Calls of address zero, and what may be assembler. */
  readonly nullCalls: readonly Place[];
  readonly assembler: readonly Place[];
  readonly reads: readonly Place[];
  readonly transmissions: readonly TransmissionNote[];
}

/** Calls that hand a function to an interrupt, by the last part of their name, with the argument that is it. */
const attaching: ReadonlyMap<string, number> = new Map([
  ['attachInterrupt', 1],
  ['attachInterruptArg', 1],
  ['attachPCINT', 1],
  ['attachPinChangeInterrupt', 1],
  ['enableInterrupt', 1],
]);
const bitCalls: ReadonlySet<string> = new Set(['bitSet', 'bitClear', 'bitWrite', 'sbi', 'cbi']);
const paired: ReadonlySet<string> = new Set(['-', '<', '>', '<=', '>=']);
const cutting = /^(?:u?int(?:8|16|32)_t|byte|word|long|int|short|signed|unsigned)\b/;

const kept = new WeakMap<readonly Item[], BodyNotes>();

/** @param branchOf decides which branch of a conditional is compiled; notes of a body that has one are not kept. */
export function notesOf(
  body: readonly Item[],
  branchOf: ((item: ConditionalItem) => number | undefined) | undefined,
): BodyNotes {
  const known = branchOf === undefined ? kept.get(body) : undefined;
  if (known !== undefined) return known;
  const notes = noted(body, branchOf);
  if (branchOf === undefined) kept.set(body, notes);
  return notes;
}

function noted(
  body: readonly Item[],
  branchOf: ((item: ConditionalItem) => number | undefined) | undefined,
): BodyNotes {
  const called = new Map<string, Place>();
  const attaches: (Place & { readonly handler: Expression })[] = [];
  const sets: SetNote[] = [];
  const pairs: BinaryExpression[] = [];
  const loops: LoopItem[] = [];
  const variables: (Variable & { readonly item: Place; readonly alone: boolean })[] = [];
  const nullCalls: Place[] = [];
  const assembler: Place[] = [];
  const reads: Place[] = [];
  const transmissions = new TransmissionNotes();
  const cut = new Set<Expression>();

  const call = (expression: Extract<Expression, { kind: 'call' }>, above: readonly Item[]) => {
    const { callee, arguments: given } = expression;
    const name = callee.kind === 'name' || callee.kind === 'member' ? callee.name : '';
    if (name !== '' && !called.has(name)) called.set(name, expression);
    if (callee.kind === 'member') transmissions.meet(callee, expression, above);
    if (isNull(callee)) nullCalls.push(expression);
    if (name === 'digitalRead') reads.push(expression);
    if (cutting.test(name) && given[0] !== undefined) cut.add(given[0]);
    const at = attaching.get(name);
    // A timer's object takes the function alone.
    const handler =
      at === undefined ? undefined : callee.kind === 'member' && given.length < 2 ? given[0] : given[at];
    if (handler !== undefined) attaches.push({ start: expression.start, end: expression.end, handler });
    const [first] = given;
    if (bitCalls.has(name) && first?.kind === 'name')
      sets.push({
        ...placeOf(expression),
        name: first.name,
        operator: 'bit',
        counts: false,
        whole: true,
        edge: false,
      });
  };

  const visitor: Visitor = {
    item(item, above) {
      if (item.kind === 'while' || item.kind === 'do' || item.kind === 'for') loops.push(item);
      if (item.kind !== 'conditional' || branchOf === undefined) return undefined;
      const chosen = branchOf(item);
      if (chosen === undefined) return undefined;
      walkItems(item.branches[chosen]?.items ?? [], visitor, [...above]);
      return true;
    },
    variable(variable, above) {
      const item = above.at(-1);
      const alone = item?.kind === 'variables' && item.variables.length === 1;
      variables.push({ ...variable, item: item ?? variable, alone });
      const { name, value } = variable;
      if (value !== undefined)
        sets.push({
          ...placeOf(variable),
          name,
          operator: '',
          value,
          counts: false,
          whole: true,
          edge: false,
        });
    },
    expression(expression, above) {
      switch (expression.kind) {
        case 'call':
          call(expression, above);
          break;
        case 'assign':
        case 'step': {
          const target = expression.kind === 'assign' ? expression.target : expression.operand;
          const name = rootOf(target);
          if (name === undefined) break;
          const counts = doesCount(expression, name);
          sets.push({
            ...placeOf(expression),
            name,
            operator: expression.kind === 'assign' ? expression.operator : 'step',
            ...(expression.kind === 'assign' && { value: expression.value }),
            counts,
            whole: target.kind === 'name',
            edge: counts && above.some((item) => item.kind === 'if' && comparesPast(item.test)),
          });
          break;
        }
        case 'binary':
          if (paired.has(expression.operator) && !cut.has(expression)) pairs.push(expression);
          break;
        case 'cast':
          cut.add(expression.operand);
          break;
        case 'opaque':
          if (expression.parts.some((part) => part.kind === 'text')) assembler.push(placeOf(expression));
          break;
        default:
          break;
      }
      return undefined;
    },
  };
  walkItems(body, visitor);
  return {
    called,
    attaches,
    sets,
    pairs,
    loops,
    variables,
    nullCalls,
    assembler,
    reads,
    transmissions: transmissions.found,
  };
}

function placeOf({ start, end }: Place): Place {
  return { start, end };
}

/** The variable that an assignment changes. */
function rootOf(expression: Expression): string | undefined {
  let at = expression;
  while (at.kind === 'index' || at.kind === 'member') at = at.base;
  return at.kind === 'name' ? at.name : undefined;
}

function doesCount(expression: Extract<Expression, { kind: 'assign' | 'step' }>, name: string): boolean {
  if (expression.kind === 'step') return expression.by === 1 && expression.operand.kind === 'name';
  const { operator, target, value } = expression;
  if (target.kind !== 'name') return false;
  const isOwn = (one: Expression) => one.kind === 'name' && one.name === name;
  const isOne = (one: Expression) => one.kind === 'number' && one.value === 1;
  if (operator === '+') return isOne(value);
  if (operator !== '') return false;
  if (value.kind !== 'binary' || value.operator !== '+') return false;
  return (isOwn(value.left) && isOne(value.right)) || (isOne(value.left) && isOwn(value.right));
}

/** Whether a test looks for a change: `now != before`, or two levels at once. */
function comparesPast(test: Expression): boolean {
  let found = false;
  walkExpression(test, {
    expression(expression) {
      if (expression.kind !== 'binary') return undefined;
      const { operator, left, right } = expression;
      if (operator === '!=' && isLevel(left) && isLevel(right)) found = true;
      if (operator === '&&' && isComparison(left) && isComparison(right)) found = true;
      return undefined;
    },
  });
  return found;
}

function isLevel(expression: Expression): boolean {
  return (
    (expression.kind === 'name' && !/^[A-Z0-9_]+$/.test(expression.name)) ||
    (expression.kind === 'call' &&
      expression.callee.kind === 'name' &&
      expression.callee.name === 'digitalRead')
  );
}

function isComparison(expression: Expression): boolean {
  if (expression.kind === 'name') return true;
  if (expression.kind === 'unary') return expression.operator === '!' && expression.operand.kind === 'name';
  return expression.kind === 'binary' && expression.operator === '==';
}

/** Whether address zero is called: `((void (*)())0)()`. */
function isNull(callee: Expression): boolean {
  const at = callee.kind === 'unary' && callee.operator === '*' ? callee.operand : callee;
  return at.kind === 'cast' && at.operand.kind === 'number' && at.operand.value === 0;
}
