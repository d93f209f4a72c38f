export { findHost, type HostFound, type NoHost } from './connect.ts';
