import { beforeEach, expect, test } from 'vitest';
import { foldPanel, panelLimits, sizePanel, useView } from '../../../renderer/stores/index.ts';

beforeEach(() => useView.setState(useView.getInitialState(), true));

test('panels keep within what can be read', () => {
  const [least, most] = panelLimits('left');
  sizePanel('left', 10);
  expect(useView.getState().panels.left.sizePx).toBe(least);
  sizePanel('left', 9999);
  expect(useView.getState().panels.left.sizePx).toBe(most);
});

test('a folded panel keeps its size for when it is unfolded', () => {
  sizePanel('right', 400);
  foldPanel('right', true);
  expect(useView.getState().panels.right).toEqual({ sizePx: 400, folded: true });
  foldPanel('right', false);
  expect(useView.getState().panels.right).toEqual({ sizePx: 400, folded: false });
});

test('sizing a folded panel unfolds it', () => {
  foldPanel('bottom', true);
  sizePanel('bottom', 300);
  expect(useView.getState().panels.bottom).toEqual({ sizePx: 300, folded: false });
});
