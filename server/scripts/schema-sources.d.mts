/** Types for the tests that compare the generated sources. */
export function makeSchemaSources(root: string): Promise<Map<string, string>>;
