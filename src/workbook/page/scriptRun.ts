/**
 * Inside the sidebar's frame: google.script.run and google.script.host as the platform gives them to a page. Calls go
 * to the page around the frame, which the frame itself cannot reach in any other way.
 */
import type { FromFrame, ToFrame } from './messages';

interface Handlers {
  readonly success?: (result: unknown, userObject?: unknown) => void;
  readonly failure?: (error: Error, userObject?: unknown) => void;
  readonly userObject?: unknown;
}

const waiting = new Map<number, Handlers>();
let lastCall = 0;

const post = (message: FromFrame) => window.parent.postMessage(message, '*');

/** A runner with some handlers set; any other name on it is a function of the script. */
function runner(handlers: Handlers): unknown {
  const withHandlers: Record<string, (value: never) => unknown> = {
    withSuccessHandler: (success: Handlers['success']) => runner({ ...handlers, success }),
    withFailureHandler: (failure: Handlers['failure']) => runner({ ...handlers, failure }),
    withUserObject: (userObject: unknown) => runner({ ...handlers, userObject }),
  };
  return new Proxy(withHandlers, {
    get(target, name) {
      if (typeof name === 'symbol') return undefined;
      return target[name] ?? ((...args: unknown[]) => callScript(name, args, handlers));
    },
  });
}

function callScript(functionName: string, args: readonly unknown[], handlers: Handlers): void {
  const call = ++lastCall;
  waiting.set(call, handlers);
  try {
    post({ kind: 'call', call, functionName, args: args.map(formValues) });
  } catch (error) {
    // What cannot even be copied, a function or an element, fails at once as it does on the platform.
    waiting.delete(call);
    throw new TypeError(`google.script.run.${functionName}: ${(error as Error).message}`);
  }
}

/** A form, the one element that may be passed, arrives as its named values. */
function formValues(value: unknown): unknown {
  if (!(value instanceof HTMLFormElement)) return value;
  return Object.fromEntries([...new FormData(value)].map(([name, field]) => [name, String(field)]));
}

window.addEventListener('message', ({ source, data }: MessageEvent<ToFrame>) => {
  if (source !== window.parent || data.kind !== 'answer') return;
  const handlers = waiting.get(data.call);
  waiting.delete(data.call);
  if (data.error !== undefined) {
    const error = new Error(data.error);
    if (handlers?.failure) handlers.failure(error, handlers.userObject);
    else console.error(error);
    return;
  }
  handlers?.success?.(data.result, handlers.userObject);
});

Object.assign(window, {
  google: {
    script: {
      run: runner({}),
      host: {
        close: () => post({ kind: 'close' }),
        setHeight: () => {},
        setWidth: () => {},
        editor: { focus: () => post({ kind: 'focus' }) },
      },
    },
  },
});
