/** The screens' own scheme and host: the page has a proper origin, and file:// is never used. */
export const PAGE_SCHEME = 'app';
export const PAGE_ADDRESS = 'app://swardway/';
/** Pages that are only printed. */
export const PRINT_HOST = 'print';

/** True for an address of the screens themselves; compares the parsed parts, never the beginning of the text. */
export function isOwnPage(address: string): boolean {
  try {
    const { protocol, host } = new URL(address);
    return protocol === `${PAGE_SCHEME}:` && host === 'swardway';
  } catch {
    return false;
  }
}
