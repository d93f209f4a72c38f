/**
 * Chromium aborts requests of schemes it does not know before they can be answered, so a page of SCHEME://HOST/ is shown under
 * http://HOST.SCHEME.localhost/: a secure context, and an origin of its own. The program sees only its own addresses.
 */
export function toChromium(address: string, schemes: readonly string[]): string {
  const url = new URL(address);
  const scheme = url.protocol.slice(0, -1);
  if (!schemes.includes(scheme)) return address;
  return `http://${url.host}.${scheme}.localhost${url.pathname}${url.search}${url.hash}`;
}

/** The program's address of what Chromium shows; addresses of other places stay as they are. */
export function toProgram(address: string, schemes: readonly string[]): string {
  if (!URL.canParse(address)) return address;
  const url = new URL(address);
  const [, host, scheme] = /^(.+)\.([^.]+)\.localhost$/.exec(url.hostname) ?? [];
  if (host === undefined || scheme === undefined || !schemes.includes(scheme)) return address;
  return `${scheme}://${host}${url.pathname}${url.search}${url.hash}`;
}
