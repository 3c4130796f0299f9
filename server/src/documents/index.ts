/** Papers that lsp/ and cli/ can ask for. */
export { type HookupRow, listHookup, writeHookup } from './hookup-list';
