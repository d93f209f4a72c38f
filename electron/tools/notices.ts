import { readdirSync, readFileSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import path from 'node:path';
import { NOTICES_FILE, type Notices } from '../../core/contract/index.ts';
import { type Licensed, type LockFile, licencesOf } from './licence-list.ts';

/** Names under which packages keep their licence, and what has to be passed on with it. */
const LICENCE_FILE = /^(licen[cs]e|copying|notice|unlicense)/i;

/** Licences that are another one's words under a name of their own. */
const SAME_WORDS: Readonly<Record<string, string>> = { '(EDL-1.0 OR EPL-1.0)': 'BSD-3-Clause' };

/** The words of a package's licence files, joined; null where it has none. */
export function licenceWords(folder: string): string | null {
  const files = readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isFile() && LICENCE_FILE.test(entry.name))
    .map(({ name }) => readFileSync(path.join(folder, name), 'utf8').replaceAll('\r\n', '\n').trim())
    .sort();
  return files.length === 0 ? null : files.join('\n\n');
}

/**
 * Licences and their words for every package that comes with the program, from the lock file and the installed packages.
 * A package without a licence file is given the words of the first one under the same licence.
 *
 * @param root the project's root, with its packages installed; throws where a licence has no words anywhere
 */
export function gatherNotices(lock: LockFile, root: string): Notices {
  const all = licencesOf(lock);
  const own = new Map(all.map((each) => [each, licenceWords(path.join(root, each.place))]));
  const texts = [...new Set([...own.values()].filter((words) => words !== null))];
  const standIn = (licence: string): Licensed => {
    const found = all.find((each) => each.licence === (SAME_WORDS[licence] ?? licence) && own.get(each) !== null);
    if (found === undefined) throw new Error(`no package has the words of the licence ${licence}`);
    return found;
  };
  const packages = all.map((each) => {
    const { name, version, licence } = each;
    const holder = own.get(each) === null ? standIn(licence) : each;
    const text = texts.indexOf(own.get(holder) ?? '');
    return { name, version, licence, text, wordsOf: holder === each ? null : holder.name };
  });
  return { own: readFileSync(path.join(root, 'LICENSE'), 'utf8'), packages, texts };
}

/** The same as plain text, for people who look into the folder of an installed program. */
export function noticesText({ packages, texts }: Notices): string {
  const rule = '-'.repeat(72);
  const parts = texts.map((text, index) => {
    const heads = packages
      .filter((each) => each.text === index)
      .map(({ name, version, licence, wordsOf }) => {
        const note = wordsOf === null ? '' : `; it has no licence file, so these are the words of ${wordsOf}`;
        return `${name} ${version} (${licence}${note})`;
      });
    return `${heads.join('\n')}\n\n${text}`;
  });
  return `What comes with Swardway, and under which licences\n\n${parts.join(`\n\n${rule}\n`)}\n`;
}

/** Writes the licences beside the built screens, and as text beside their folder. */
export async function writeNotices(root: string): Promise<void> {
  const lock = JSON.parse(readFileSync(path.join(root, 'package-lock.json'), 'utf8')) as LockFile;
  const notices = gatherNotices(lock, root);
  await writeFile(path.join(root, 'dist/renderer', NOTICES_FILE), JSON.stringify(notices));
  await writeFile(path.join(root, 'dist/third-party-licences.txt'), noticesText(notices));
}
