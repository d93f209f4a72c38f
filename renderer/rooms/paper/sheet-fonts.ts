import regular from '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-400-normal.woff2?url';
import semiBold from '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-600-normal.woff2?url';
import bold from '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-700-normal.woff2?url';

const FACES = [
  { weight: 400, address: regular },
  { weight: 600, address: semiBold },
  { weight: 700, address: bold },
] as const;

const FAMILY = 'Atkinson Hyperlegible Next';

/** The sheet with the program's own type face, from the program's own address: for showing it in a frame. */
export function withFonts(html: string): string {
  return withFaces(
    html,
    FACES.map(({ weight, address }) => ({ weight, address: new URL(address, window.location.href).href })),
  );
}

/** The same with the type face inside the page, for a printer that has no connection to the program. */
export async function withFontsInside(html: string): Promise<string> {
  const faces = await Promise.all(
    FACES.map(async ({ weight, address }) => ({ weight, address: await asDataAddress(address) })),
  );
  return withFaces(html, faces);
}

type Face = { readonly weight: number; readonly address: string };

function withFaces(html: string, faces: readonly Face[]): string {
  const rules = faces.map(
    ({ weight, address }) =>
      `@font-face{font-family:"${FAMILY}";font-weight:${weight};src:url("${address}") format("woff2")}`,
  );
  return html.replace('<style>', `<style>${rules.join('')}`);
}

async function asDataAddress(address: string): Promise<string> {
  const answer = await fetch(address);
  const bytes = new Uint8Array(await answer.arrayBuffer());
  const text = Array.from(bytes, (byte) => String.fromCharCode(byte)).join('');
  return `data:font/woff2;base64,${btoa(text)}`;
}
