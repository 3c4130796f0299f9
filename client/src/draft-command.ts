/** Drafts a manifest from the sketch in front: the server makes it, the user is asked for the board where it must be. */
import * as vscode from 'vscode';
import type { ServerClient } from './server-client';

interface Board {
  readonly id: string;
  readonly title: string;
}

type Answer =
  | {
      readonly ok: true;
      readonly edit?: unknown;
      readonly manifest: string;
      readonly board: string;
      readonly added: number;
      readonly left: readonly { readonly pins: readonly string[]; readonly why: string }[];
    }
  | { readonly ok: false; readonly why: string; readonly boards: readonly Board[] };

export function activateDraft(context: vscode.ExtensionContext, client: ServerClient): void {
  const run = (uri?: unknown) => draft(client, typeof uri === 'string' ? uri : undefined);
  context.subscriptions.push(vscode.commands.registerCommand('wiretrue.draftManifest', run));
}

async function draft(client: ServerClient, given: string | undefined): Promise<void> {
  const uri = given ?? vscode.window.activeTextEditor?.document.uri.toString();
  if (uri === undefined) {
    void vscode.window.showInformationMessage('Open a sketch first: its manifest is drafted beside it.');
    return;
  }
  let answer = await client.request<Answer>('wiretrue/draft', { uri });
  if (answer?.ok === false && answer.boards.length > 0) {
    const picked = await vscode.window.showQuickPick(
      answer.boards.map(({ id, title }) => ({ label: title, description: id })),
      {
        title: 'Draft hardware.jsonc',
        placeHolder: 'Which board does the sketch run on? The likeliest come first.',
      },
    );
    if (picked === undefined) return;
    answer = await client.request<Answer>('wiretrue/draft', { uri, board: picked.description });
  }
  if (answer === undefined) return;
  if (!answer.ok) {
    void vscode.window.showWarningMessage(answer.why);
    return;
  }
  if (answer.edit === undefined) {
    void vscode.window.showInformationMessage('Every pin of the sketch is in the manifest already.');
    return;
  }
  const edit = await client.toEdit(answer.edit);
  if (edit === undefined || !(await vscode.workspace.applyEdit(edit))) {
    void vscode.window.showWarningMessage('The draft could not be written.');
    return;
  }
  await vscode.window.showTextDocument(vscode.Uri.parse(answer.manifest));
  const left = answer.left.map(({ why }) => why).join(' ');
  const parts = answer.added === 1 ? '1 part is' : `${answer.added} parts are`;
  void vscode.window.showInformationMessage(
    `${parts} guessed; confirm or change each by its light bulb. ${left}`.trim(),
  );
}
