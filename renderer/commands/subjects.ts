/** Things of the screen that have a menu of their own: `data-subject` on their row or block says which. */
export type Subject = 'lawn' | 'part' | 'corner' | 'outline' | 'stop' | 'rig' | 'loads' | 'record' | 'sheet';

/** The commands of such a menu by their ids, with a line between the lists. They are about what is selected, so the thing is selected first. */
export const SUBJECT_MENUS: Readonly<Record<Subject, readonly (readonly string[])[]>> = {
  lawn: [
    ['view.selection', 'go.paper-measure-sheet'],
    ['draw.zone', 'edit.add-zone', 'draw.corners', 'draw.building', 'draw.gate', 'draw.parking'],
    ['edit.remove-lawn'],
  ],
  part: [
    ['draw.corners', 'draw.square', 'draw.offset'],
    ['draw.hole', 'draw.cut', 'draw.split', 'draw.merge', 'draw.hose-stand'],
    ['draw.move', 'draw.copy', 'draw.delete'],
  ],
  corner: [
    ['draw.delete', 'draw.remove-last'],
    ['draw.finish', 'edit.undo'],
  ],
  outline: [
    ['draw.finish', 'draw.remove-last', 'draw.square', 'edit.undo'],
    ['draw.aside', 'draw.throw-away'],
  ],
  stop: [
    ['day.move', 'day.take-out', 'day.pin'],
    ['day.done', 'day.left-out', 'day.unmark'],
    ['view.selection', 'day.previous-stop', 'day.next-stop'],
  ],
  rig: [
    ['day.pin-day', 'day.out', 'day.improve'],
    ['day.plan-rest', 'day.show-rest'],
    ['go.paper-run-sheet', 'go.paper-load-tickets', 'go.paper-truck-list'],
  ],
  loads: [['go.paper-load-tickets', 'go.paper-truck-list'], ['day.table']],
  record: [['shed.add', 'shed.duplicate'], ['shed.remove']],
  sheet: [['paper.print', 'paper.pdf']],
};

/** What a press of the other button, or of the key for menus, is about: the thing, and the element that stands for it; null for nothing. */
export function subjectAt(target: EventTarget | null): { readonly subject: Subject; readonly element: Element } | null {
  if (!(target instanceof Element)) return null;
  // A text has the menu of the system, to paste and to spell.
  if (target.closest('input, textarea, select') !== null) return null;
  // A list that holds the focus names its active row.
  const active = target.getAttribute('aria-activedescendant');
  const row = active === null ? target : (document.getElementById(active) ?? target);
  // What is being drawn lies over the lawns.
  const drawn = row.closest('[data-subject="corner"], [data-subject="outline"]');
  const own = drawn ?? row.closest('[data-subject]');
  // Rows of some lists hold their thing inside.
  const element = own ?? (row.getAttribute('role') === 'option' ? row.querySelector('[data-subject]') : null);
  const subject = element?.getAttribute('data-subject') ?? null;
  return element !== null && isSubject(subject) ? { subject, element } : null;
}

function isSubject(text: string | null): text is Subject {
  return text !== null && text in SUBJECT_MENUS;
}
