export interface NamedTexts {
  readonly code: string;
  readonly packages: readonly string[];
  readonly kept: readonly string[];
  readonly declarations: readonly string[];
}

/** Names of fields in a bundle that nothing outside its own core can meet. */
export function shortenableNames(texts: NamedTexts): string[];

/** Of the language that the sources are compiled against, and of the platform's services. */
export function knownDeclarations(projectFolder: string, where?: 'platform' | 'browser'): Promise<string[]>;

/** What an element's attributes may be called. */
export function attributeNames(declarations: readonly string[]): string[];
