import { describe, expect, it } from 'vitest';
import type { Compartment, HandMethod, Head, Machine } from '../../../core/book/index.ts';
import { trimTool } from '../../../core/reach/index.ts';
import { byId, sampleBook } from './sample.ts';

const book = sampleBook();
const plain = byId(book.machines, 'heron');
const hose = byId(book.handMethods, 'reel');

const tank = (id: string): Compartment => ({ ...byId(plain.compartments, 't'), id });
const head = (purpose: Head['purpose'], compartmentIds: readonly string[], id = 'one'): Head => ({
  ...byId(plain.heads, 'boom'),
  id,
  purpose,
  compartmentIds: [...compartmentIds],
});
const machine = (heads: readonly Head[], compartments: readonly Compartment[] = plain.compartments): Machine => ({
  ...plain,
  heads: [...heads],
  compartments: [...compartments],
});
const tool = (id: string, minutesPer1000SqFt: number, drawsFrom: HandMethod['drawsFrom']) => ({
  hand: { ...hose, id, minutesPer1000SqFt, drawsFrom },
});
const ofRig = (minutes: number) =>
  tool('of the rig', minutes, { kind: 'rig', capacityGal: 50, sumpGal: 0, agitated: true });
const carried = (minutes: number) =>
  tool('carried', minutes, { kind: 'own-tank', capacityGal: 4, sumpGal: 0, agitated: false });
const bucket = (minutes: number) => tool('bucket', minutes, { kind: 'own-hopper', capacityLb: 15 });
const lance = (minutes: number, compartmentId = 't', machineId = 'heron') =>
  tool('lance', minutes, { kind: 'machine', machineId, compartmentId });

const SPRAY = head('spray', ['t']);
const SPREAD = head('spread', ['h']);
/** The tool that is taken and where from, in short. */
const taken = (rides: Machine, by: Head, tools: readonly { readonly hand: HandMethod }[]) => {
  const best = trimTool(rides, by, tools);
  return best === null ? null : `${best.tool.hand.id}: ${best.source}`;
};

describe('the tool that treats what a machine leaves', () => {
  it('is none where there is none', () => {
    expect(trimTool(machine([SPRAY]), SPRAY, [])).toBeNull();
  });

  it('is the quickest of those that are filled alike, whatever their order', () => {
    const rides = machine([SPRAY]);
    for (const tools of [
      [carried(6), { hand: { ...carried(3).hand, id: 'quick' } }],
      [{ hand: { ...carried(3).hand, id: 'quick' } }, carried(6)],
    ]) {
      expect(taken(rides, SPRAY, tools)).toBe('quick: machine');
    }
    expect(taken(rides, SPRAY, [ofRig(5), { hand: { ...ofRig(2).hand, id: 'quick' } }])).toBe('quick: rig');
  });

  it('is one filled out of the machine before a quicker one out of the rig', () => {
    const rides = machine([SPRAY]);
    for (const own of [carried(9), lance(9)]) {
      expect(taken(rides, SPRAY, [ofRig(1), own])).toBe(`${own.hand.id}: machine`);
      expect(taken(rides, SPRAY, [own, ofRig(1)])).toBe(`${own.hand.id}: machine`);
    }
  });

  it('holds what the machine has: a tank for a tank, a hopper for dry material', () => {
    expect(taken(machine([SPRAY]), SPRAY, [bucket(1)])).toBeNull();
    expect(taken(machine([SPRAY]), SPRAY, [bucket(1), carried(8)])).toBe('carried: machine');
    expect(taken(machine([SPREAD]), SPREAD, [carried(1)])).toBeNull();
    expect(taken(machine([SPREAD]), SPREAD, [carried(1), bucket(8)])).toBe('bucket: machine');
  });

  it('draws on the machine itself, and on the tank in use or one joined to it', () => {
    const two = [tank('t'), tank('u')];
    const apart = machine([SPRAY], two);
    expect(taken(apart, SPRAY, [lance(1)])).toBe('lance: machine');
    expect(taken(apart, SPRAY, [lance(1, 'u')])).toBeNull();
    expect(taken(apart, SPRAY, [lance(1, 't', 'plug')])).toBeNull();
    const both = head('spray', ['t', 'u']);
    expect(taken(machine([both], two), both, [lance(1, 'u')])).toBe('lance: machine');
    expect(taken(machine([both], two), both, [lance(1, 'no such')])).toBeNull();
  });

  it('is none after a head that draws on nothing', () => {
    for (const by of [head('aerate', []), head('spray', []), head('spray', ['h'])]) {
      expect(taken(machine([by]), by, [ofRig(1), carried(1), lance(1)])).toBeNull();
    }
  });
});
