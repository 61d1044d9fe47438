export declare function step<T>(title: string, deed: () => Promise<T>): Promise<T>;
