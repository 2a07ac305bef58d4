export interface NamedTexts {
  readonly code: string;
  readonly packages: readonly string[];
  readonly kept: readonly string[];
  readonly declarations: readonly string[];
}

/** Names of fields in a bundle that nothing outside its own core can meet. */
export function shortenableNames(texts: NamedTexts): string[];

/** Of the language, and of the platform's services or of a browser. */
export function knownDeclarations(projectFolder: string, where?: 'platform' | 'browser'): Promise<string[]>;

/** The text of an interface that is exported by a source. @throws Error when it is not there */
export function interfaceOf(source: string, name: string): string;

/** What an element's attributes may be called. */
export function attributeNames(declarations: readonly string[]): string[];
