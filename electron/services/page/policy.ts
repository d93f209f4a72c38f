/**
 * The content security policy of the screens: scripts only from the program itself; styles also inline, because the component
 * library sets some; nothing from any other place.
 *
 * @param connect where the page may open connections to, beside its own origin
 */
export function contentSecurityPolicy(connect: readonly string[] = []): string {
  return [
    "default-src 'none'",
    "script-src 'self'",
    "style-src 'self' 'unsafe-inline'",
    "img-src 'self' data: blob:",
    "font-src 'self'",
    ["connect-src 'self'", ...connect].join(' '),
    "worker-src 'self'",
    "frame-src 'self'",
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'none'",
    "frame-ancestors 'none'",
  ].join('; ');
}

/** Headers of a tile or picture: the page may keep it for a while, and no other page may use it. */
export function pictureHeaders(mediaType: string, isThere: boolean): Readonly<Record<string, string>> {
  const policy = "default-src 'none'";
  return {
    ...pageHeaders(mediaType, policy),
    'Cache-Control': isThere ? 'private, max-age=600' : 'no-store',
  };
}

/** Headers of every answer that carries a part of the screens. */
export function pageHeaders(mediaType: string, policy: string): Readonly<Record<string, string>> {
  return {
    'Content-Type': mediaType,
    'Content-Security-Policy': policy,
    'X-Content-Type-Options': 'nosniff',
    'Cross-Origin-Opener-Policy': 'same-origin',
    'Cross-Origin-Resource-Policy': 'same-origin',
    'Referrer-Policy': 'no-referrer',
    'Cache-Control': 'no-cache',
  };
}
