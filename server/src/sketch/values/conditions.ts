/** Decides the conditions of `#if`: whole numbers, macros and `defined`, as a preprocessor reckons them. */
import type { Platform } from '../../base/platform';
import type { Expression } from '../form/ast';
import { bodyOf, conditionOf, type Macros } from './macros';
import type { Site } from './model';
import { compare } from './number-types';

const deepest = 60;
const mostSteps = 5000;

export class Conditions {
  private steps = 0;

  constructor(
    private readonly macros: Macros,
    private readonly platform: Platform,
  ) {}

  /** True or false; undefined where it cannot be decided. */
  decide(text: string, site: Site, offset: number): boolean | undefined {
    const expression = conditionOf(text);
    if (expression === undefined) return undefined;
    this.steps = 0;
    const value = this.value(expression, { ...site, fixedOffset: offset }, []);
    return value === undefined ? undefined : value !== 0;
  }

  private isDefined(name: string, site: Site): boolean | undefined {
    const found = this.macros.find(name, site, 0);
    if (found.length > 0) return found.every((one) => one !== undefined) ? true : undefined;
    if (this.macros.has(name)) return false;
    return Object.hasOwn(this.platform.names, name) && !this.isVariable(name);
  }

  /** In the core of the AVR chips these are variables (pins_arduino.h), which a preprocessor does not see. */
  private isVariable(name: string): boolean {
    return Object.hasOwn(this.platform.macros, '__AVR__') && /^(A\d+|SS|MOSI|MISO|SCK|SDA|SCL)$/.test(name);
  }

  private value(expression: Expression, site: Site, expanding: readonly string[]): number | undefined {
    this.steps += 1;
    if (expanding.length > deepest || this.steps > mostSteps) return undefined;
    const sub = (part: Expression) => this.value(part, site, expanding);
    switch (expression.kind) {
      case 'number':
        return expression.value;
      case 'name':
        return this.nameValue(expression.name, site, expanding);
      case 'call': {
        const { callee } = expression;
        const [first] = expression.arguments;
        if (callee.kind !== 'name' || callee.name !== 'defined' || first?.kind !== 'name') return undefined;
        const answer = this.isDefined(first.name, site);
        return answer === undefined ? undefined : Number(answer);
      }
      case 'unary': {
        const value = sub(expression.operand);
        if (value === undefined) return undefined;
        if (expression.operator === '!') return value === 0 ? 1 : 0;
        if (expression.operator === '-') return -value;
        if (expression.operator === '~') return ~value;
        return expression.operator === '+' ? value : undefined;
      }
      case 'choice': {
        const test = sub(expression.test);
        return test === undefined ? undefined : sub(test !== 0 ? expression.yes : expression.no);
      }
      case 'binary':
        return this.binaryValue(expression.operator, sub(expression.left), () => sub(expression.right));
      default:
        return undefined;
    }
  }

  private binaryValue(
    operator: string,
    left: number | undefined,
    readRight: () => number | undefined,
  ): number | undefined {
    if (operator === '&&' && left === 0) return 0;
    if (operator === '||' && left !== undefined && left !== 0) return 1;
    const right = readRight();
    if (operator === '&&' && right === 0) return 0;
    if (operator === '||' && right !== undefined && right !== 0) return 1;
    if (left === undefined || right === undefined) return undefined;
    const truth = compare(operator, left, right);
    if (truth !== undefined) return Number(truth);
    switch (operator) {
      case '&&':
        return Number(left !== 0 && right !== 0);
      case '||':
        return Number(left !== 0 || right !== 0);
      case '+':
        return left + right;
      case '-':
        return left - right;
      case '*':
        return left * right;
      case '/':
        return right === 0 ? undefined : Math.trunc(left / right);
      case '%':
        return right === 0 ? undefined : left % right;
      case '&':
        return left & right;
      case '|':
        return left | right;
      case '^':
        return left ^ right;
      case '<<':
        return left * 2 ** right;
      case '>>':
        return Math.floor(left / 2 ** right);
      default:
        return undefined;
    }
  }

  private nameValue(name: string, site: Site, expanding: readonly string[]): number | undefined {
    if (expanding.includes(name)) return 0;
    const [macro, other] = this.macros.find(name, site, 0);
    if (macro !== undefined) {
      if (other !== undefined || macro.parameters !== undefined) return undefined;
      const { expression } = bodyOf(macro);
      return expression === undefined ? undefined : this.value(expression, site, [...expanding, name]);
    }
    // A name that is no macro counts as zero here; one that only the board has may be a macro of its core.
    return Object.hasOwn(this.platform.names, name) ? this.platform.names[name] : 0;
  }
}
