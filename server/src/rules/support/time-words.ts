/** Times in words. */

/** "32.8 s", "71.6 minutes", "49.7 days". */
export function seconds(time: number): string {
  const figure = (value: number) => String(Number(value.toPrecision(3)));
  if (time < 1) return `${figure(time * 1000)} ms`;
  if (time < 600) return `${figure(time)} s`;
  if (time < 2 * 3600) return `${figure(time / 60)} minutes`;
  return time < 2 * 86_400 ? `${figure(time / 3600)} hours` : `${figure(time / 86_400)} days`;
}
