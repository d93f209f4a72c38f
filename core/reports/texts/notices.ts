/** Words around the user's own texts; the texts themselves are the user's. */
export const NOTICES = {
  title: { notice: 'Notices to customers', posting: 'Signs to post' },
  none: {
    notice: 'The book has no text for a notice yet. Write one in the Paper room; the program has none of its own.',
    posting: 'The book has no text for a sign yet. Write one in the Paper room; the program has none of its own.',
  },
  mind: {
    title: 'Before you hand these out',
    local:
      'Words, size, place, days ahead and days afterwards are set by your own state and town, and by the label. The program does not know them: read the rules first.',
    unknown: (template: string, field: string, known: string) =>
      `"${template}" has the field {${field}}, which does not exist; it stands as it was typed. There are ${known}.`,
    missing: (field: string, count: number) =>
      `{${field}} is not known for ${count === 1 ? '1 lawn' : `${count} lawns`}, and the text says so there.`,
  },
  missing: (field: string) => `[${field} is missing]`,
  noStops: 'The day has no stops, so nobody has to be told.',
} as const;
