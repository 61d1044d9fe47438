export declare function whatIsMissing(folder?: string): string | undefined;
export declare function install(): Promise<void>;
