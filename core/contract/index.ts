export type * from './board-types.ts';
export {
  CHANNEL_NAMES,
  type ChannelName,
  type Channels,
  type CheckedRequestOf,
  channels,
  isChannelName,
  type RequestOf,
  type ResponseOf,
} from './channels.ts';
export { connectHost } from './client.ts';
export type * from './ground-types.ts';
export { EVENT_NAMES, type EventName, type Host, type HostEvents, isEventName } from './host.ts';
export { NOTICES_FILE, type Notices, noticesSchema } from './notices.ts';
export type * from './reading-types.ts';
export type * from './road-types.ts';
export { DEFAULT_SETTINGS, type Settings, settingsChangeSchema, settingsSchema } from './settings.ts';
export type * from './types.ts';
export {
  IPC_CALL,
  IPC_EVENT,
  OPENING_KEY,
  OPENING_PATH,
  TOKEN_KEY,
  TOKEN_PREFIX,
  WIRE_PATH,
  WIRE_PROTOCOL,
  type Wire,
  type WireEvent,
  type WireReply,
  wireRequestSchema,
} from './wire.ts';
