import type { Result } from '../../core/base/index.ts';
import type { AppInfo, Cancelled, EventName, HostEvents, RequestOf, UploadInstead } from '../../core/contract/index.ts';

/** What only the shell around the services can do: dialogs and printing. Each host has its own. */
export type HostPort = {
  readonly host: AppInfo['host'];
  readonly filePicking: AppInfo['filePicking'];
  readonly makesPdf: boolean;
  /** Asks the user for a file to read. */
  readonly pickFile: (client: Client, purpose: FilePurpose) => Promise<ChosenPath | Cancelled | UploadInstead>;
  /** Asks the user where to write; 'download' where the page takes the file itself. */
  readonly chooseTarget: (
    client: Client,
    suggestedName: string,
  ) => Promise<ChosenPath | Cancelled | { readonly kind: 'download' }>;
  /** Prints a whole page to a PDF. Fails with 'not-available' where the host cannot. */
  readonly printPdf: (html: string) => Promise<Result<Uint8Array>>;
};

/** A file that the user chose, by its path. */
export type ChosenPath = { readonly kind: 'path'; readonly file: string };
/** What a file is picked for. */
export type FilePurpose = RequestOf<'file.pick'>['purpose'];

/** One screen at the other end. */
export type Client = {
  readonly id: string;
  readonly send: <Name extends EventName>(name: Name, payload: HostEvents[Name]) => void;
};
