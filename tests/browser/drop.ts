import type { Page } from 'playwright-core';

/** Drops a file on the window, as from a folder of the desktop. */
export async function dropFile(page: Page, name: string, text: string): Promise<void> {
  await page.evaluate(
    ([fileName, content]) => {
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(new File([content], fileName));
      window.dispatchEvent(new DragEvent('dragover', { dataTransfer, cancelable: true }));
      window.dispatchEvent(new DragEvent('drop', { dataTransfer, cancelable: true }));
    },
    [name, text] as const,
  );
}
