export type AddOnFiles = Record<'Code.js' | 'Sidebar.html' | 'Check.html' | 'appsscript.json', string>;

/** The texts of the four files, by name. */
export function addOnFiles(): Promise<AddOnFiles>;

/** Code.js with no fields shortened but these. */
export function codeShortening(names: readonly string[]): Promise<string>;

/** Sidebar.html with no fields shortened but these, and no other step that only a page goes through. */
export function pageShortening(names: readonly string[]): Promise<string>;

/** The sources that the page is made of, from the folder of this project. */
export function pageSources(): Promise<readonly string[]>;

/** Bytes of a file by the source folder they come from, the heaviest first. */
export type FolderWeights = Readonly<Record<string, number>>;

/** Writes the four files into `folder`. */
export function buildAddOn(folder: string): Promise<{
  readonly files: AddOnFiles;
  readonly weights: Readonly<Record<'Code.js' | 'Sidebar.html' | 'Check.html', FolderWeights>>;
}>;

/** The folder of this project. */
export const projectFolder: string;
