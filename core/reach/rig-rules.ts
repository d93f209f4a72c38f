import type { CarriedMachine, Rig } from '../book/index.ts';
import type { Facts, Refusal } from './facts.ts';

/** The rig carries the machine; for a hand method, the method itself and the machine that it draws from. */
export function carriedRule(facts: Facts): Refusal | null {
  const { rig } = facts.question;
  if (rig === null) return null;
  if (facts.kind === 'machine') {
    return carried(rig, facts.machine.id) ? null : absent(`${facts.machine.name} is not on rig ${rig.name}`);
  }
  if (!rig.handMethodIds.includes(facts.hand.id)) return absent(`${facts.hand.name} is not on rig ${rig.name}`);
  const from = facts.hand.drawsFrom;
  if (from.kind !== 'machine' || carried(rig, from.machineId)) return null;
  const source = facts.source?.name ?? from.machineId;
  return absent(`${facts.hand.name} draws from ${source}, which is not on rig ${rig.name}`);
}

/** Where no trailer can go, the machine has to ride some other way. */
export function trailerRule(facts: Facts): Refusal | null {
  const { rig, property } = facts.question;
  if (rig === null || !property.noTrailer) return null;
  const machine = facts.kind === 'machine' ? facts.machine : facts.source;
  if (machine === null || carried(rig, machine.id)?.ride !== 'trailer') return null;
  const words = `no room for a trailer here, and ${machine.name} rides on one`;
  return { reason: 'no-trailer-access', words };
}

function carried(rig: Rig, machineId: string): CarriedMachine | undefined {
  return rig.machines.find((each) => each.machineId === machineId);
}

function absent(words: string): Refusal {
  return { reason: 'not-carried', words };
}
