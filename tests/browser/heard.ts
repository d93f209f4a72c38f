import type { Page } from 'playwright-core';

/**
 * What the live regions of the page hold now, as the browser hands it to assistive technology: texts under nodes of the accessibility
 * tree that are told when they change (WCAG 2.2, 4.1.3). What is hidden, also by an open dialog, is not in that tree.
 */
export async function heard(page: Page): Promise<readonly string[]> {
  const session = await page.context().newCDPSession(page);
  const { nodes } = await session.send('Accessibility.getFullAXTree');
  await session.detach();
  const byId = new Map(nodes.map((node) => [node.nodeId, node]));
  const textOf = (id: string): string => {
    const node = byId.get(id);
    if (node === undefined) return '';
    if (node.role?.value === 'StaticText') return String(node.name?.value ?? '');
    return (node.childIds ?? []).map(textOf).join(' ');
  };
  const isLive = (node: (typeof nodes)[number]) =>
    !node.ignored && /^(status|alert)$/.test(String(node.role?.value)) && node.properties?.some(isToldOnChange);
  return nodes
    .filter(isLive)
    .map(({ nodeId }) => textOf(nodeId).replace(/\s+/g, ' ').trim())
    .filter((text) => text !== '');
}

const isToldOnChange = ({ name, value }: { readonly name: string; readonly value: { readonly value?: unknown } }) =>
  name === 'live' && (value.value === 'polite' || value.value === 'assertive');
