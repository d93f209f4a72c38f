export { loadTickets } from './load-tickets.ts';
