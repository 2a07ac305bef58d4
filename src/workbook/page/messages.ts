/** What passes between the sidebar's frame and the page around it. */
export type FromFrame =
  | { readonly kind: 'call'; readonly call: number; readonly functionName: string; readonly args: readonly unknown[] }
  | { readonly kind: 'close' }
  | { readonly kind: 'focus' };

/** The answer to a call: a result, or the message of the error. */
export interface ToFrame {
  readonly kind: 'answer';
  readonly call: number;
  readonly result?: unknown;
  readonly error?: string;
}
