/** What the server knows of the sketch in front, in two places: the pins as a tree, the build as one line of the status bar. */
import * as vscode from 'vscode';
import type { ServerClient } from './server-client';

interface Pin {
  readonly pin: string;
  readonly use: string;
  readonly parts: readonly string[];
  readonly current: string;
  readonly can: string;
  readonly location?: {
    readonly uri: string;
    readonly range: { readonly start: Place; readonly end: Place };
  };
}

interface Place {
  readonly line: number;
  readonly character: number;
}

interface Pins {
  readonly board: string;
  readonly counts: Readonly<Record<'error' | 'warning' | 'information' | 'hint', number>>;
  readonly pins: readonly Pin[];
}

/** After the last finding or change of editor so long nothing is asked, milliseconds. */
const rest = 300;

export function activatePins(context: vscode.ExtensionContext, client: ServerClient): void {
  const status = vscode.window.createStatusBarItem('wiretrue.build', vscode.StatusBarAlignment.Right, 90);
  status.name = 'Wiretrue';
  status.command = 'wiretrue.pins.focus';
  const tree = new PinTree();
  let waiting: NodeJS.Timeout | undefined;
  const refresh = () => {
    clearTimeout(waiting);
    waiting = setTimeout(() => void look(client, tree, status), rest);
  };
  context.subscriptions.push(
    status,
    vscode.window.registerTreeDataProvider('wiretrue.pins', tree),
    vscode.window.onDidChangeActiveTextEditor(refresh),
    vscode.languages.onDidChangeDiagnostics(refresh),
    { dispose: () => clearTimeout(waiting) },
  );
  refresh();
}

async function look(client: ServerClient, tree: PinTree, status: vscode.StatusBarItem): Promise<void> {
  const document = vscode.window.activeTextEditor?.document;
  const ours = document !== undefined && /\.(ino|cpp|c|h|hpp)$|hardware\.jsonc$/.test(document.uri.path);
  const pins = ours
    ? await client.request<Pins | null>('wiretrue/pins', { uri: document.uri.toString() })
    : undefined;
  if (pins === undefined || pins === null) {
    // The last sketch's pins stay while another file is looked at; the line belongs to the file in front.
    status.hide();
    return;
  }
  tree.show(pins.pins);
  const { error, warning } = pins.counts;
  const worst = worstOf(pins.pins);
  status.text = `$(circuit-board) ${pins.board}${worst} $(error) ${error} $(warning) ${warning}`;
  status.tooltip = `Wiretrue: ${pins.board}; ${error} errors, ${warning} warnings. Shows the pins.`;
  status.show();
}

/** The pin that carries most: figures have a unit each, so they are brought to one. */
function worstOf(pins: readonly Pin[]): string {
  const scale: Readonly<Record<string, number>> = { A: 1, mA: 1e-3, µA: 1e-6 };
  const amps = ({ current }: Pin) => {
    const match = /^([\d.]+)\s*(\S+)$/.exec(current);
    return Number(match?.[1] ?? 0) * (scale[match?.[2] ?? ''] ?? 0);
  };
  const [most] = [...pins].filter(({ current }) => current !== '').sort((a, b) => amps(b) - amps(a));
  return most ? ` · ${most.pin} ${most.current}` : '';
}

class PinTree implements vscode.TreeDataProvider<Pin> {
  private readonly changed = new vscode.EventEmitter<void>();
  readonly onDidChangeTreeData = this.changed.event;
  private pins: readonly Pin[] = [];

  show(pins: readonly Pin[]): void {
    this.pins = pins;
    this.changed.fire();
  }

  getChildren(parent?: Pin): Pin[] {
    return parent === undefined ? [...this.pins] : [];
  }

  getTreeItem({ pin, use, parts, current, can, location }: Pin): vscode.TreeItem {
    const item = new vscode.TreeItem(pin);
    const free = use === '' && parts.length === 0;
    item.description = free ? `free · ${can}` : [parts.join(', '), current].filter(Boolean).join(' · ');
    item.tooltip = [use, parts.join(', '), current, can].filter(Boolean).join('\n');
    item.iconPath = new vscode.ThemeIcon(
      free ? 'circle-outline' : parts.length > 0 ? 'circle-filled' : 'circle-slash',
    );
    if (location !== undefined) {
      const { start, end } = location.range;
      const selection = new vscode.Range(start.line, start.character, end.line, end.character);
      const target = [vscode.Uri.parse(location.uri), { selection }];
      item.command = { command: 'vscode.open', title: 'Go to the pin', arguments: target };
    }
    return item;
  }
}
