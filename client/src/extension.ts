/**
 * The extension's entry: it starts the language server, and the commands, the tree and the status line
 * that ask it. Everything about sketches and hardware
 * is the server's; nothing is analysed here.
 */
import * as vscode from 'vscode';
import { activateDraft } from './draft-command';
import { activatePins } from './pins';
import { ServerClient } from './server-client';

let server: ServerClient | undefined;

export async function activate(context: vscode.ExtensionContext): Promise<void> {
  const client = new ServerClient(context);
  server = client;
  context.subscriptions.push(
    vscode.commands.registerCommand('wiretrue.restartServer', () => client.restart()),
    vscode.commands.registerCommand('wiretrue.showLog', () => client.showLog()),
  );
  activateDraft(context, client);
  await client.start();
  activatePins(context, client);
}

export async function deactivate(): Promise<void> {
  await server?.stop();
}
