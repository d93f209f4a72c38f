import type { Result } from '../../../core/base/index.ts';
import type { Host, JobDone, JobFailed } from '../../../core/contract/index.ts';

/** A lawn as a file holds it, for the reader's thread. Invented. */
const LAWN =
  '{"type":"Feature","properties":{"name":"Dry run"},"geometry":{"type":"Polygon","coordinates":[[[-93,45],[-93,45.001],[-92.999,45.001],[-93,45]]]}}';

/**
 * Does with a running program what needs every part of it: its page and licences, the driver (a sample), the thread of roads (the sample has
 * an extract), the thread of readers, and the thread of plans. Throws at the first thing that does not work.
 *
 * @returns a line for each thing done
 */
export async function driveProgram(host: Host, address: string): Promise<readonly string[]> {
  const page = await (await fetch(address)).text();
  const script = /src="\.\/(assets\/[^"]+)"/.exec(page)?.[1] ?? '';
  const [code, licences] = await Promise.all([script, 'licences.json'].map((name) => fetch(new URL(name, address))));
  if (script === '' || code?.ok !== true || licences?.ok !== true) throw new Error('the page is not whole');

  const { session, book } = must(await host.call('book.openSample', { sampleId: 'creek-town' }));
  const picked = must(await host.call('file.upload', { purpose: 'ground', name: 'a.geojson', base64: btoa(LAWN) }));
  const source = must(await host.call('ground.read', { token: picked.token }));
  const roundId = book.rounds[0]?.id ?? '';
  const ended = planEnds(host);
  must(await host.call('job.startPlan', { session, roundId, seed: 1, iterations: 50 }));
  const { plan } = await ended;
  const stops = plan.days.reduce((sum, day) => sum + day.stops.length, 0);
  if (stops === 0) throw new Error('the plan has no stop');
  return [
    `page: ${(page.length / 1000).toFixed(1)} kB, its script and its licences`,
    `sample: ${book.name}, ${book.properties.length} lawns`,
    `reader: a file as ${source.formatId}`,
    `plan: ${stops} stops`,
  ];
}

function planEnds(host: Host): Promise<JobDone> {
  return new Promise((done, fail) => {
    host.on('job.done', done);
    host.on('job.failed', ({ error }: JobFailed) => fail(new Error(`${error.code}: ${error.detail}`)));
  });
}

function must<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(`${result.error.code}: ${result.error.detail}`);
  return result.value;
}
