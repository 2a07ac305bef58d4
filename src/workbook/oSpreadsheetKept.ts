/**
 * A place in the engine's workbook for what the platform keeps and the engine has no room for (marks of tabs, properties,
 * notes), so that it is saved, undone and shared between windows with the cells.
 */
import type { SpreadsheetLibrary, SpreadsheetModel } from './oSpreadsheetCopy';

const KEEP = 'PLANK_LEDGER_KEEP';

/** Texts by name, as they stand in the saved workbook under `plankLedger`. */
export type KeptTexts = Readonly<Record<string, string>>;

interface KeepCommand {
  readonly type: string;
  readonly name: string;
  readonly text: string | undefined;
}

/** Teaches the library the command. Once a process or page; before the first workbook is made. */
export function installKept(library: SpreadsheetLibrary): void {
  const { corePluginRegistry, inverseCommandRegistry } = library.registries;
  if (corePluginRegistry.contains(KEEP)) return;
  class Kept extends library.CorePlugin {
    static override readonly getters = ['plankLedgerTexts'] as never;
    private readonly texts: Record<string, string | undefined> = {};
    override handle(command: unknown): void {
      const { type, name, text } = command as KeepCommand;
      if (type === KEEP) (this.history.update as (...path: unknown[]) => void)('texts', name, text);
    }
    plankLedgerTexts(): KeptTexts {
      return this.texts as KeptTexts;
    }
    override import(data: object): void {
      Object.assign(this.texts, (data as { readonly plankLedger?: KeptTexts }).plankLedger);
    }
    override export(data: object): void {
      Object.assign(data, { plankLedger: { ...this.texts } });
    }
  }
  corePluginRegistry.add(KEEP, Kept as never);
  library.coreTypes.add(KEEP as never);
  inverseCommandRegistry.add(KEEP, ((command: unknown) => [command]) as never);
}

export function keptTexts(model: SpreadsheetModel): KeptTexts {
  return (model.getters as unknown as { plankLedgerTexts(): KeptTexts }).plankLedgerTexts();
}

/** @param text undefined forgets it */
export function keepText(model: SpreadsheetModel, name: string, text: string | undefined): void {
  model.dispatch(KEEP as never, { name, text } as never);
}
