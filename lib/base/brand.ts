/** A number or string that can't be mixed with another of the same shape. The mark exists for the compiler alone. */
declare const mark: unique symbol;
export type Brand<T, Name extends string> = T & { readonly [mark]: Name };
