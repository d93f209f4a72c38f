export declare const staleReason: (root: string, stamp: string) => Promise<string | null>;
export declare const withLock: <T>(lock: string, work: () => Promise<T>) => Promise<T>;
