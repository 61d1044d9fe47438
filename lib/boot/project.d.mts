export declare const root: string;
export declare const ownNode: string;
export declare function shortHash(text: string, length?: number): string;
export declare function ownEnvironment(extra?: Record<string, string>): NodeJS.ProcessEnv;
