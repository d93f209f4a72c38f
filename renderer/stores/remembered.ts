/** What a window remembers over a reload: which book is open, and where the panels are. Nothing of a book's content. */
const BOOK_KEY = 'swardway.book';

export function rememberBook(token: string | null): void {
  try {
    if (token === null) window.sessionStorage.removeItem(BOOK_KEY);
    else window.sessionStorage.setItem(BOOK_KEY, token);
  } catch {
    // A browser that keeps nothing: after a reload the welcome page is shown.
  }
}

/** The token of the book that was open before the page was reloaded, or null. */
export function rememberedBook(): string | null {
  try {
    return window.sessionStorage.getItem(BOOK_KEY);
  } catch {
    return null;
  }
}
