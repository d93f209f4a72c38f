/** Words with commas between them. */
export function tagText(tags: readonly string[] | undefined): string {
  return (tags ?? []).join(', ');
}

/** Words between commas, each once. A word has 200 characters at most. */
export function tagsFrom(text: string): readonly string[] {
  const words = text.split(',').map((each) => each.trim().slice(0, 200));
  return [...new Set(words.filter((each) => each !== ''))];
}
