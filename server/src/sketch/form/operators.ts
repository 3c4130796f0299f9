/** Operators of C++ by how tightly they bind, and the words of plain types: for reading short texts. */

export const precedence: Readonly<Record<string, number>> = {
  '*': 10,
  '/': 10,
  '%': 10,
  '+': 9,
  '-': 9,
  '<<': 8,
  '>>': 8,
  '<': 7,
  '<=': 7,
  '>': 7,
  '>=': 7,
  '==': 6,
  '!=': 6,
  '&': 5,
  '^': 4,
  '|': 3,
  '&&': 2,
  '||': 1,
};
export const assignments = new Set(['=', '+=', '-=', '*=', '/=', '%=', '&=', '|=', '^=', '<<=', '>>=']);
export const typeWord =
  /^(const|volatile|unsigned|signed|int|long|short|char|bool|boolean|float|double|byte|word|void|\w+_t)$/;
