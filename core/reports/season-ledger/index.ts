export { seasonLedgerSheet } from './season-ledger.ts';
