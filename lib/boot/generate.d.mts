export declare function generateClient(): void;
export declare function generateRouteTypes(): void;
