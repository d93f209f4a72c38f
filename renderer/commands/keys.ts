import { useEffect } from 'react';
import { useHost, useView } from '../stores/index.ts';
import { commandForKey, IS_MAC, isCharacterKey, keyName } from './command.ts';
import { COMMANDS } from './registry.ts';
import { runCommand } from './use-command.ts';

/** Keys that may be held down. */
const REPEATS = /Shift\+Arrow|^Backspace$|^Mod\+[ZY]$/;
/** Keys that move about in a text or change it. */
const BELONGS_TO_TEXT = /^((Alt\+)?Shift\+)?(Arrow\w+|Backspace|Delete|Escape|Enter|Home|End)$/;
/** Keys that belong to a text as long as something has been typed into it. */
const TEXT_KEYS = new Set(['Mod+Z', 'Mod+Y', 'Mod+Shift+Z']);

/** Listens for the keys of every command, on the whole window. */
export function useCommandKeys(): void {
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      const name = keyName(event, IS_MAC);
      if (event.defaultPrevented || (event.repeat && !REPEATS.test(name))) return;
      if (!isMeantForUs(event.target, name)) return;
      const command = commandForKey(COMMANDS, name);
      if (command === null) return;
      const reason = command.whyNot();
      // Esc with nothing to leave belongs to whatever else closes on it.
      if (name === 'Escape' && reason !== null) return;
      event.preventDefault();
      if (reason === null) takeTypedText(event.target);
      runCommand(command);
    };
    window.addEventListener('keydown', onKeyDown);
    return () => window.removeEventListener('keydown', onKeyDown);
  }, []);
}

/** What was typed and not taken yet is taken before a command leads away from it, as it is when the field is left. */
function takeTypedText(target: EventTarget | null): void {
  if (target instanceof HTMLElement && target.dataset.draft === 'true') {
    target.dispatchEvent(new FocusEvent('focusout', { bubbles: true }));
  }
}

function isMeantForUs(target: EventTarget | null, name: string): boolean {
  if (useView.getState().overlay !== null) return false;
  if (isCharacterKey(name) && !useHost.getState().settings.letterKeys) return false;
  if (!(target instanceof HTMLElement)) return true;
  // Letters typed in a menu look for one of its lines.
  if (target.closest('[role="menu"]') !== null) return false;
  const inText = target.matches('input:not([type="checkbox"]), textarea, select');
  if (!inText) return true;
  if (isCharacterKey(name) || BELONGS_TO_TEXT.test(name)) return false;
  return !(TEXT_KEYS.has(name) && target.dataset.draft === 'true');
}
