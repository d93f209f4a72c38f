import { beforeEach, describe, expect, test } from 'vitest';
import { ok } from '../../../core/base/index.ts';
import { PLAN_WRITERS } from '../../../core/formats/index.ts';
import { COMMANDS } from '../../../renderer/commands/index.ts';
import {
  EXCHANGE_ID,
  exportPlan,
  showBook,
  useBook,
  useHost,
  useNotices,
  useSelection,
  useView,
} from '../../../renderer/stores/index.ts';
import { fixtureBook, fixturePlan } from '../../core/reports/fixture.ts';
import { installFakeHost, openBookOf } from '../fake-host.ts';

beforeEach(() => {
  useBook.setState(useBook.getInitialState(), true);
  useHost.setState(useHost.getInitialState(), true);
  useNotices.setState(useNotices.getInitialState(), true);
  useSelection.setState(useSelection.getInitialState(), true);
  useView.setState(useView.getInitialState(), true);
});

describe('writing days of a plan', () => {
  test.each(PLAN_WRITERS)('as $id hands the text to the host under a name that tells what it is', async (writer) => {
    const host = installFakeHost();
    host.answer('file.saveText', () => ok({ kind: 'saved', name: 'written file' }));
    showBook(openBookOf(fixtureBook()));
    const plan = { ...fixturePlan(), roundName: 'Spring: north/south?' };
    await exportPlan(writer, plan, plan.days);
    const asked = host.asked.find((each) => each.name === 'file.saveText') ?? { request: {} };
    const { suggestedName, text } = asked.request as { readonly suggestedName: string; readonly text: string };
    const day = writer.isWhole ? '' : ' 2031-04-01 Rig North';
    const table = writer.id.endsWith('-csv') ? ` ${writer.id.replace('-csv', '')}` : '';
    expect(suggestedName).toBe(
      `Spring north south ${day}${table}.${writer.extension}`.replaceAll(/ +/g, ' ').replace(' .', '.'),
    );
    expect(text).toMatch(writer.begins);
    expect(useNotices.getState().notice).toMatchObject({ kind: 'news', text: 'written file is written' });
  });

  test('has one place, to which a command leads', () => {
    const command = COMMANDS.find((each) => each.id === 'plan.files');
    expect(command?.whyNot()).toBe('No book is open');
    showBook(openBookOf(fixtureBook()));
    expect(command?.whyNot()).toBe(null);
    command?.run();
    expect([useSelection.getState().sheetId, useView.getState().room]).toEqual([EXCHANGE_ID, 'paper']);
  });
});
