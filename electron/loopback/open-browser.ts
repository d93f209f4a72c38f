import { spawn } from 'node:child_process';

/** The system's own command for showing an address in the user's browser. */
function opener(address: string, platform: string): readonly [string, readonly string[]] {
  if (platform === 'darwin') return ['open', [address]];
  if (platform === 'win32') return ['rundll32', ['url.dll,FileProtocolHandler', address]];
  return ['xdg-open', [address]];
}

/** Shows the address in the user's browser. Nothing happens where there is no such command; it is never waited for. */
export function openInBrowser(address: string, platform: string = process.platform): void {
  const [command, words] = opener(address, platform);
  const child = spawn(command, [...words], { stdio: 'ignore', detached: true });
  child.on('error', () => undefined);
  child.unref();
}
