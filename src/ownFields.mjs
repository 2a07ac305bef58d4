// Fields of the page that are only ever our own, although the browser or a text has the same word: `rowIndex`, which a row of a
// table has too, or `planned`, which is also a status. By the word alone they would keep their names (`shortNames.mjs`).
// `tests/ownFields.test.ts` asks the compiler about every one, and says which to take out when that is no longer so. A
// name is worth adding when it stands in the page some ten times. What travels stays in full even when it stands here.

/** In alphabetical order. */
export const OWN_FIELDS = words(`
  added allowed amount answered areas back bare basis begin best bevelled beyond bound box buttons centre
  children chosen code column columns cosine cost covered current cut cuts difference directions distance
  doors draw drawing drawn edge element end ends events exact example face fail fault faults field fields
  finish finished first followed form found frame fromLeft fromNear front full gap given gives grid heading
  heard held hint index inverse isTrusted item label labels laid last later layout lengths levels limit
  limits lines listed lost lower marks materials missing move moved near nearest needed note numbers offcut
  opened otherDiagonal out outline over packs paper parent parts paths pattern pdf places plain planks
  planned pressed presses priced problems progress radial range read ready reason remark removed reopened
  reset rest results rolls rowIndex rule saved scale second share shared sharing short show shown side sizes
  source sources span state steps store stretch subject summary surface system tabs take takeoff tangential
  thread threshold through times timing token tokens told tongue total touched trial typed under unneeded
  used view waiting walk walked wanted ways weight what where windows word wrong zoom zoomed
`);

function words(text) {
  return text.trim().split(/\s+/);
}
