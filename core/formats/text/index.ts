export { decodeLatin, decodeUtf8, decodeUtf16, decodeWindows1252 } from './decode.ts';
export { readDecimal } from './number.ts';
export { readPlainText } from './plain-text.ts';
