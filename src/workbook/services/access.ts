/** Who may call what: the platform's authorization modes, and a count of every service call. */

/**
 * `loading`: the script is being evaluated and may touch nothing. `none`: onOpen of an add-on that is installed but not
 * enabled. `custom function`: reading only. `full`: a menu item or a call from the sidebar.
 * Source: Google Workspace add-ons guide, "Authorization modes".
 */
export type AuthMode = 'loading' | 'none' | 'custom function' | 'full';

export interface Access {
  mode(): AuthMode;
  /** Runs something in a mode, and returns to the mode before. */
  within<Result>(mode: AuthMode, run: () => Result): Result;
  /** Counts one call of a service, or refuses it. @throws Error in the platform's words when the mode forbids it */
  enter(service: string, member: string): void;
  /** Calls made since the count was last set back, such as `Range.setValues` -> 3. */
  calls(): Readonly<Record<string, number>>;
  resetCalls(): void;
}

/** What builds a menu and nothing else: all that is allowed before an add-on is enabled. */
const MENU_BUILDING = /^(?:SpreadsheetApp\.getUi|Ui\.create(?:Addon)?Menu|Menu\.\w+)$/;
const READING =
  /^(?:get|is|has|can|find|with|offset|create\w*Finder|new|flush|format|try|wait|release|build|log|info|warn|error)/;
const NEVER_IN_CELLS = /^(?:Ui|Menu|HtmlService|HtmlOutput)\./;

export function createAccess(): Access {
  const modes: AuthMode[] = ['full'];
  const counts = new Map<string, number>();
  const mode = () => modes.at(-1) ?? 'full';
  return {
    mode,
    within(inner, run) {
      modes.push(inner);
      try {
        return run();
      } finally {
        modes.pop();
      }
    },
    enter(service, member) {
      const name = `${service}.${member}`;
      if (!isAllowed(mode(), name, member)) throw new Error(refusal(mode(), name, member));
      counts.set(name, (counts.get(name) ?? 0) + 1);
    },
    calls: () => Object.fromEntries(counts),
    resetCalls: () => counts.clear(),
  };
}

function isAllowed(mode: AuthMode, name: string, member: string): boolean {
  if (mode === 'full') return true;
  if (mode === 'loading') return false;
  if (mode === 'none') return MENU_BUILDING.test(name);
  return READING.test(member) && !NEVER_IN_CELLS.test(name) && name !== 'SpreadsheetApp.getUi';
}

function refusal(mode: AuthMode, name: string, member: string): string {
  if (mode === 'loading') return `The script calls ${name} while it is loaded: that would fail in onOpen`;
  return `You do not have permission to call ${mode === 'none' ? name : member}`;
}
