/**
 * A text without what other programs stumble over: control characters but tabs and ends of lines are left out, and halves of
 * characters, which UTF-8 cannot hold, become U+FFFD.
 */
export function cleanText(text: string): string {
  return text.replace(/\p{Cc}/gu, (sign) => (/[\t\n\r\u0085]/.test(sign) ? sign : '')).replace(/\p{Cs}/gu, '\ufffd');
}
