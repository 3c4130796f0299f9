/**
 * Makes what follows from the rules: a page a rule, the index, the table in README.md and the list of ids that
 * completes the manifest's `severity`. Pure: returns texts by path.
 */
/** Pages and index by path relative to the repository. */
export declare function makePages(): Promise<Map<string, string>>;
/** The table of rules, with links below `prefix`. */
export declare function ruleTable(prefix: string): string;
/** README.md with its table of rules renewed between the marks. @throws Error where a mark is missing. */
export declare function renewReadme(text: string): string;
