import type { GenericSchema } from 'valibot';

/** One request a screen can make of its host: the schema of what is sent, and the type of what comes back. */
export type Channel<RequestSchema extends GenericSchema, Response> = {
  readonly request: RequestSchema;
  /** Never present: carries the response type for the compiler. */
  readonly response?: Response;
};

/** Declares a channel. Usage: `channel<AppInfo>()(v.strictObject({}))`. */
export function channel<Response>() {
  return <RequestSchema extends GenericSchema>(request: RequestSchema): Channel<RequestSchema, Response> => ({
    request,
  });
}
