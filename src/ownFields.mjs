// Fields of the page that are only ever our own, although the browser or a text has the same word: `rowIndex`, which a row of a
// table has too, or `planned`, which is also a status. By the word alone they would keep their names (`shortNames.mjs`).
// `tests/ownFields.test.ts` asks the compiler about every one, and says which to take out when that is no longer so. A
// name is worth adding when it stands in the page some ten times.

/** In alphabetical order. */
export const OWN_FIELDS = words(`
  added allowed amount back bare basis begin best bevelled bound buttons centre chosen code column columns
  cosine covered current cut cuts directions distance draw drawing edge element end events face fail faults
  field finish followed form found frame fromLeft fromNear front full gives grid heading held hint index
  inverse item label labels laid layout lengths levels limits lines lost marks missing moved near nearest
  numbers offcut opened otherDiagonal out outline over packs paper parent parts pattern places plain planks
  planned pressed priced progress radial range reason remark removed rolls rowIndex rule saved scale shared
  sharing short show shown side sizes source sources span state steps store subject summary surface system
  take tangential thread threshold through timing token tokens told tongue touched trial typed under used view
  waiting walk wanted ways weight what where windows zoomed
`);

function words(text) {
  return text.trim().split(/\s+/);
}
