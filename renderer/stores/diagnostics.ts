import { askHost } from './host.ts';
import { showError, showNews } from './notices.ts';

/** Puts the host's diagnostics on the clipboard. */
export async function copyDiagnostics(): Promise<void> {
  const answer = await askHost('app.diagnostics', {});
  if (answer === null) return;
  try {
    await navigator.clipboard.writeText(answer.text);
    showNews('The diagnostics are on the clipboard');
  } catch {
    showError({
      code: 'not-available',
      where: 'the clipboard',
      detail: 'The diagnostics could not be copied: the clipboard is not open to this window.',
      hint: 'They stand in the log file in the folder of the program as well.',
    });
  }
}
