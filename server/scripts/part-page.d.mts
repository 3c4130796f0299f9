/** Types for the test that compares the page. */
export function makePartPage(root: string): Promise<Map<string, string>>;
