import { storesWords } from '../texts/stores/index.ts';
import { askHost } from './host.ts';
import { showError, showNews } from './notices.ts';

/** Puts the host's diagnostics on the clipboard. */
export async function copyDiagnostics(): Promise<void> {
  const answer = await askHost('app.diagnostics', {});
  if (answer === null) return;
  try {
    await navigator.clipboard.writeText(answer.text);
    showNews(storesWords.diagnostics.copied);
  } catch {
    showError({
      code: 'not-available',
      where: storesWords.diagnostics.clipboard,
      detail: storesWords.diagnostics.notCopied,
      hint: storesWords.diagnostics.notCopiedAdvice,
    });
  }
}
